/** Papers of a workbook say what the workbook says: bills and shops by chance, each paper against the functions' own cells. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { jobPlan } from "../../src/job/job-plan.ts";
import { printOf } from "../../src/papers/papers.ts";
import { billArbitrary, type RandomBill } from "../bill/random-bill.ts";
import { ask, type Row } from "../bill/views.ts";
import { centsOf, rowsIn } from "./read-paper.ts";

const RUNS = { numRuns: 30, seed: 20261128 };
const ABOUT = { name: "by-chance.xlsx", version: "1", edition: "e", date: "2026-03-01", stale: 0 };
const RELEASED: Readonly<Record<string, readonly string[]>> = {
  stop: ["STOP"],
  check: ["HOLD", "CHECK"],
  clear: ["CLEAR"],
};

/** Every way in which papers and cells of one bill contradict each other. */
function contradictions(given: RandomBill): string[] {
  const said: string[] = [];
  const differ = (what: string, paper: unknown, cells: unknown) => {
    if (JSON.stringify(paper) !== JSON.stringify(cells))
      said.push(`${what}: paper ${JSON.stringify(paper)}, cells ${JSON.stringify(cells)}`);
  };
  const sheets = Object.entries(given.tables).map(([name, rows]) => ({ name, rows }));
  const { plan, missing } = jobPlan([{ name: "Parts", rows: given.bill }, ...sheets])!;
  const papers = new Map(printOf(plan, { ...ABOUT, missing }).papers.map((paper) => [paper.file, paper.pages]));
  const rows = (file: string, width: number) =>
    rowsIn(papers.get(file)!.join("\n")).filter((row) => row.length === width);
  const cells = (name: string, header: string): Row[] => {
    const answer = ask(name, given);
    return typeof answer === "string" ? [] : answer.filter((row) => row[header] !== "");
  };

  const checks = cells("BILL.CHECK", "Part");
  const index = rows("index.html", 4).filter(([, , , release]) => /^[A-Z]+$/.test(release!)); // not hours of a station
  differ("lines", index.length, checks.length);
  index.forEach(([part, , cutter, release], i) => {
    const { Status: status, "Cut on": cutOn, Quoted: isQuoted, Part: name } = checks[i]!;
    differ("part", [part, cutter?.replace(/ ?\d+$/, "")], [name, isQuoted === "yes" ? cutOn : "no quote"]);
    if (!RELEASED[String(status)]!.includes(release!)) said.push(`${part} prints ${release} and is ${status}`);
  });

  const blanks = cells("BILL.BLANKS", "Length").map((row) => `${row["Part"]} ${row["Quantity"]}`);
  const cut = rows("cutlist.html", 8)
    .filter(([, blank]) => blank!.includes(" x ") && !blank!.includes("lb"))
    .filter(([, , , , toCut]) => /^\d+$/.test(toCut!))
    .map(([part, , , , toCut]) => `${part} ${toCut}`);
  const isCut = "stock" in given.tables && ("shears" in given.tables || "waterjets" in given.tables);
  if (isCut) differ("pieces", cut.sort(), blanks.sort());
  const totals = cells("CUT.PLAN", "Pattern").filter((row) => row["Pattern"] === "Total");
  const pulled = papers
    .get("cutlist.html")!
    .flatMap((page) => [...page.matchAll(/Pull <strong>(\d+)</g)].map(([, n]) => +n!));
  differ(
    "sheets",
    pulled,
    totals.map((row) => row["Sheets"]),
  );
  differ(
    "cuts",
    rows("cutlist.html", 10).map(([cutNumber]) => Number(cutNumber)),
    cells("CUT.LIST", "Cut").map((row) => row["Cut"]),
  );

  const prices = cells("BILL.PRICE", "Price");
  const quoted = rows("quote.html", 5).filter(([, , , each]) => each !== "");
  const cents = (row: Row) => Math.round(Number(row["Price"]) * 100);
  differ(
    "prices",
    quoted.map(([part, , , , price]) => [part, centsOf(price!)]),
    prices.filter((row) => row["Unit price"] !== "").map((row) => [row["Part"], cents(row)]),
  );
  const total = rows("quote.html", 5).find(([words]) => words === "Total");
  const inCells = prices.find((row) => row["Part"] === "Total");
  differ("total", total && [centsOf(total[4]!), total[1]], inCells && [cents(inCells), inCells["Note"]]);

  differ(
    "load-in",
    rows("load-in.html", 11).map(([order, part, , , , , stacks]) => [Number(order), part, Number(stacks)]),
    cells("BILL.LOADIN", "Order").map((row) => [row["Order"], row["Part"], row["Stacks"]]),
  );
  for (const [file, pages] of papers)
    for (const page of pages) {
      if (!page.includes(plan.number)) said.push(`${file} has no number of the plan`);
      if (/\bNaN\b|Infinity|undefined|\[object/.test(page)) said.push(`${file} has a figure that is none`);
    }
  return said;
}

it("papers of a workbook say what the workbook says", () => {
  fc.assert(
    fc.property(billArbitrary, (given) => {
      expect(contradictions(given)).toEqual([]);
    }),
    RUNS,
  );
}, 600_000);
