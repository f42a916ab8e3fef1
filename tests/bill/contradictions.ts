/** Every way in which the views of one bill contradict each other, read as a person reads them: from their cells. */
import type { NAMES, Row } from "./views.ts";

export type Views = Readonly<Record<(typeof NAMES)[number], Row[] | string>>;

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

/** None is what is wanted. @param lines rows of the bill; hasStock: whether the table Stock was given. */
export function contradictions(view: Views, { lines, hasStock }: { lines: number; hasStock: boolean }): string[] {
  const said: string[] = [];
  const differ = (what: string, a: unknown, b: unknown) => {
    if (JSON.stringify(a) !== JSON.stringify(b)) said.push(`${what}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`);
  };
  const near = (what: string, a: number, b: number) => {
    if (Math.abs(a - b) > 1e-6 * Math.max(1, Math.abs(a))) said.push(`${what}: ${a} and ${b}`);
  };
  const checks = rows(view["BILL.CHECK"]);
  differ("lines", checks.length, lines);
  const quoted = checks.filter((row) => row["Quoted"] === "yes");
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
    // And the list cuts as many of each as the plan says.
    const listed = rows(view["CUT.LIST"])
      .flatMap((row) => [row["Drops"], row["On table"]].join(", ").split(", "))
      .map((words) => words.replace(/ \(\d+\)$/, ""));
    for (const [part, count] of cutPieces(plan.filter((row) => row["Cut on"] !== "waterjet"))) {
      const cut = listed.filter((words) => words.endsWith(` x ${part}`)).map((words) => Number(words.split(" x ")[0]));
      // A blank that is the whole sheet needs no cut.
      if (cut.length > 0)
        near(
          `${part} on the cut list`,
          cut.reduce((all, one) => all + one, 0),
          count,
        );
    }
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
      differ("lines without a price", summary.get("Price")?.["Note"], total["Note"]);
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
