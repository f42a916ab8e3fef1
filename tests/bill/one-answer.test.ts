/**
 * One bill, one answer: whatever shows a bill says the same about it. Bills and shops by chance; what each view says is
 * read as a person reads it, from its cells, and held against the others.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LONGEST_SENTENCE } from "../../src/bill/says.ts";
import { billArbitrary, type RandomBill } from "./random-bill.ts";
import { ask, NAMES, type Row } from "./views.ts";

const RUNS = { numRuns: 300, seed: 20261128 };
const LONG = 600_000;

const rows = (answer: Row[] | string): Row[] => (typeof answer === "string" ? [] : answer);
const figured = (answer: Row[] | string, header: string) => rows(answer).filter((row) => row[header] !== "");
const parts = (answer: readonly Row[]) => answer.map((row) => String(row["Part"])).sort();
const sum = (answer: readonly Row[], header: string) =>
  answer.reduce((total, row) => total + (typeof row[header] === "number" ? row[header] : 0), 0);

/** "A1 x 4; B2 x 2" on so many sheets, or "A1 x 8 in all". */
function cutPieces(plan: readonly Row[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const row of plan) {
    if (row["Pattern"] === "Total" || row["Blanks"] === "") continue;
    for (const item of String(row["Blanks"]).split("; ")) {
      const [, part, count, all] = /^(.*?)(?: \(\d+\))? x (\d+)( in all)?$/.exec(item)!;
      found.set(part!, (found.get(part!) ?? 0) + Number(count) * (all ? 1 : Number(row["Sheets"])));
    }
  }
  return found;
}

/** Every way in which the views of one bill contradict each other; none is what is wanted. */
function contradictions(bill: RandomBill): string[] {
  const said: string[] = [];
  const differ = (what: string, a: unknown, b: unknown) => {
    if (JSON.stringify(a) !== JSON.stringify(b)) said.push(`${what}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`);
  };
  const near = (what: string, a: number, b: number) => {
    if (Math.abs(a - b) > 1e-6 * Math.max(1, Math.abs(a))) said.push(`${what}: ${a} and ${b}`);
  };
  const view = Object.fromEntries(NAMES.map((name) => [name, ask(name, bill)])) as Record<
    (typeof NAMES)[number],
    Row[] | string
  >;
  const checks = rows(view["BILL.CHECK"]);
  differ("lines", checks.length, bill.bill.length - 1);
  const quoted = checks.filter((row) => row["Quoted"] === "yes");
  const hasStock = "stock" in bill.tables;
  for (const row of checks) {
    const { Part: part, Status: status, Sentence: sentence } = row;
    if ((status === "clear") !== (sentence === "")) said.push(`${part} is ${status} and says "${sentence}"`);
    if (status === "stop" && row["Quoted"] === "yes") said.push(`${part} is stopped and quoted`);
    if (row["Quoted"] === "yes" && row["Cut on"] === "") said.push(`${part} is quoted and nothing cuts it`);
  }
  // The same lines are cut, timed, routed, set up, loaded and priced.
  differ("blanks", parts(figured(view["BILL.BLANKS"], "Length")), parts(quoted));
  differ("load-in", parts(figured(view["BILL.LOADIN"], "Order")), parts(quoted));
  differ("set-ups", parts(figured(view["BILL.SETUPS"], "Run")), parts(quoted));
  if (typeof view["BILL.ROUTE"] !== "string") {
    differ("route", parts(figured(view["BILL.ROUTE"], "Route")), parts(quoted));
    differ(
      "route and checks",
      figured(view["BILL.ROUTE"], "Route").map((row) => [row["Part"], row["Route"]]),
      quoted.map((row) => [row["Part"], row["Cut on"]]),
    );
  }
  // A flat, a radius and a pair of tools are the same wherever they stand.
  const flats = (answer: readonly Row[], length: string, width: string) =>
    answer.map((row) => [row["Part"], row[length], row[width]]);
  differ(
    "flats",
    flats(figured(view["BILL.BLANKS"], "Length"), "Length", "Width"),
    flats(quoted, "Flat length", "Flat width"),
  );
  const tools = (answer: readonly Row[]) =>
    answer.map((row) => [row["Part"], row["Brake"], row["Die"], row["Punch"]].join(" ")).sort();
  differ("tools", tools(figured(view["BILL.SETUPS"], "Die")), tools(quoted.filter((row) => row["Die"] !== "")));
  if (hasStock) {
    // Every quoted piece, its extras among them, is cut exactly once, and nothing else.
    const wanted = new Map<string, number>();
    for (const row of figured(view["BILL.BLANKS"], "Length"))
      wanted.set(String(row["Part"]), (wanted.get(String(row["Part"])) ?? 0) + Number(row["Quantity"]));
    const plan = rows(view["CUT.PLAN"]);
    differ("pieces", [...cutPieces(plan)].sort(), [...wanted].sort());
    // The shear's plan and list hold only the shear's lines.
    const onShear = new Set(quoted.filter((row) => row["Cut on"] === "shear").map((row) => String(row["Part"])));
    for (const [part] of cutPieces(plan.filter((row) => row["Cut on"] !== "waterjet")))
      if (!onShear.has(part)) said.push(`${part} is sheared and not on the shear`);
    for (const row of rows(view["CUT.LIST"]))
      for (const [, part] of String(row["Drops"]).matchAll(/blank (\S+)/g))
        if (!onShear.has(part!)) said.push(`${part} is on the cut list and not on the shear`);
    // What is bought is what is planned.
    const patterns = plan.filter((row) => row["Pattern"] !== "Total");
    const bought = figured(view["BILL.SHEETS"], "Sheets");
    near("sheets bought", sum(bought, "Sheets"), sum(patterns, "Sheets"));
    near("weight bought", sum(bought, "Bundle weight"), sum(patterns, "Weight"));
    near("metal bought", sum(bought, "Price"), sum(patterns, "Price"));
    const summary = new Map(rows(view["BILL.SUMMARY"]).map((row) => [row["Item"], row]));
    near("sheets to pull", Number(summary.get("Sheets to pull")?.["Value"]), sum(bought, "Sheets"));
    near(
      "weight",
      Number(summary.get("Weight")?.["Value"]),
      rows(view["BILL.LOADIN"]).reduce((total, row) => total + Number(row["Quantity"]) * Number(row["Weight each"]), 0),
    );
    if (typeof view["BILL.PRICE"] !== "string") {
      const priced = figured(view["BILL.PRICE"], "Unit price");
      const extras = rows(view["BILL.PRICE"]).filter((row) => ["Minimum charge", "Rush"].includes(String(row["Part"])));
      const total = rows(view["BILL.PRICE"]).find((row) => row["Part"] === "Total")!;
      near("total price", Number(total["Price"]), sum(priced, "Price") + sum(extras, "Price"));
      differ("price of the job", summary.get("Price")?.["Value"], total["Price"]);
      for (const row of priced)
        if (!quoted.some((line) => line["Part"] === row["Part"])) said.push(`${row["Part"]} is priced and not quoted`);
    }
  }
  // A line that is not quoted says so in every view, with a reason.
  for (const name of ["BILL.BLANKS", "BILL.LOADIN", "BILL.SETUPS", "BILL.TIMES"] as const)
    for (const row of rows(view[name]))
      if (row["Message"] !== "" && !/^(?:no quote: .|.* must be )/.test(String(row["Message"])))
        said.push(`${name} says ${row["Message"]}`);
  return said;
}

describe("one bill, one answer", () => {
  it("holds in every view of 300 bills and shops by chance", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, (bill) => {
        expect(contradictions(bill)).toEqual([]);
      }),
      RUNS,
    );
  });

  it("does not depend on the order of lines and tables, nor on asking again", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, fc.infiniteStream(fc.nat()), (bill, chance) => {
        const shuffled = <T>(list: readonly T[]): T[] =>
          list
            .map((item) => ({ item, at: chance.next().value as number }))
            .sort((a, b) => a.at - b.at)
            .map(({ item }) => item);
        const { bill: lines, tables } = bill;
        const mixed: RandomBill = {
          bill: [lines[0]!, ...shuffled(lines.slice(1))],
          tables: Object.fromEntries(
            Object.entries(tables).map(([name, [header, ...rest]]) => [
              name,
              [header!, ...(name === "calendar" || name === "job" ? rest : shuffled(rest))],
            ]),
          ),
        };
        const said = (name: string, from: RandomBill) => {
          const answer = ask(name, from);
          // Lines of one content may stand in any order, and so may the rows about them.
          if (typeof answer === "string") return answer;
          return answer.map(({ Run: _, ...row }) => unplaced(JSON.stringify(row))).sort();
        };
        for (const name of ["BILL.CHECK", "BILL.PRICE", "BILL.TIMES", "BILL.SHEETS", "BILL.WHATIF"])
          expect(said(name, mixed), name).toEqual(said(name, bill));
        expect(said("BILL.PRICE", bill)).toEqual(said("BILL.PRICE", bill));
      }),
      { ...RUNS, numRuns: 60 },
    );
  });

  it("says each finding in one sentence of at most 120 characters", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, (bill) => {
        for (const row of rows(ask("BILL.CHECK", bill)))
          for (const sentence of String(row["Sentence"]).split(/(?<=\.) (?=[A-Z0-9])/))
            expect(sentence.length, sentence).toBeLessThanOrEqual(LONGEST_SENTENCE);
      }),
      { ...RUNS, numRuns: 40 },
    );
  });
});

/** A refusal names the line's place in the bill, which is another one when the lines stand otherwise. */
const unplaced = (row: string) => row.replace(/line \d+(?: \(row \d+ of the range\))?/g, "line");
