/** The JSON of a bill by chance, held against what the cells of the same bill say. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planBill } from "../../src/bill/plan.ts";
import { currentMaterials } from "../../src/cells/parameters/read-data.ts";
import { readBill } from "../../src/cells/tables/bill.ts";
import { readShop } from "../../src/cells/tables/shop-arguments.ts";
import { billWords } from "../../src/hosts/command-line/bill-words.ts";
import { WIDTH } from "../../src/hosts/command-line/wrapped.ts";
import { billJson, partsJson } from "../../src/job/bill-json.ts";
import { BILL_JSON, type BillJson } from "../../src/job/bill-schema.ts";
import { billArbitrary, type RandomBill } from "../bill/random-bill.ts";
import { ask, type Row } from "../bill/views.ts";

const RUNS = { numRuns: 40, seed: 20261129 };
const LONG = 600_000;
const CONTEXT = { system: "in", materials: currentMaterials(), material: undefined } as const;

const planOf = ({ bill, tables }: RandomBill) => planBill(readShop(tables, CONTEXT), readBill(bill, "bill", CONTEXT));
const rowsOf = (name: string, bill: RandomBill): Row[] | undefined => {
  const answer = ask(name, bill);
  return typeof answer === "string" ? undefined : answer;
};
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
/** What is not known is null in JSON and "" in a cell. */
const cell = (value: unknown) => value ?? "";

function sums(made: BillJson): void {
  const quoted = made.lines.filter((line) => line.quoted);
  const { totals } = made;
  expect(totals.clear + totals.check + totals.stop).toBe(made.lines.length);
  expect(totals.quoted).toBe(quoted.length);
  expect(totals.pieces).toBe(sum(quoted.map(({ quantity }) => quantity!)));
  const prices = made.lines.flatMap(({ price }) => (price === null ? [] : [price]));
  if (totals.price !== null) {
    expect(totals.price).toBeCloseTo(sum(prices), 6);
    expect(totals.order).toBeCloseTo(totals.price + totals.minimum! + totals.rush!, 6);
  } else expect(prices).toEqual([]);
  if (!made.not_checked.includes("stock")) {
    const cut = new Map<number, number>();
    for (const { line, count } of made.sheets.flatMap(({ pieces }) => pieces))
      cut.set(line, (cut.get(line) ?? 0) + count);
    expect(Object.fromEntries(cut)).toEqual(Object.fromEntries(quoted.map(({ line, ordered }) => [line, ordered])));
  }
}

function sameAsCells(made: BillJson, bill: RandomBill): void {
  const checks = rowsOf("BILL.CHECK", bill)!;
  expect(
    made.lines.map((line) => ({
      Status: line.status,
      Sentence: line.findings.map(({ says }) => says).join(" "),
      Then: cell(line.findings[0]?.fix?.reaches),
      Notes: line.notes.join(" "),
      "Cut on": cell(line.cut_on),
      Die: cell(line.die),
      Punch: cell(line.punch),
      Brake: cell(line.brake),
      "Flat length": cell(line.flat?.length),
      "Flat width": cell(line.flat?.width),
      Radius: cell(line.radius),
      Deduction: cell(line.deduction),
      "Weight each": cell(line.weight),
      Quoted: line.quoted ? "yes" : "no",
    })),
  ).toEqual(checks.map(pick));
  const prices = rowsOf("BILL.PRICE", bill)?.filter((row) => row["Unit price"] !== "");
  if (prices)
    expect(
      made.lines.filter(({ price }) => price !== null).map(({ price, price_each }) => [price_each, price]),
    ).toEqual(prices.map((row) => [row["Unit price"], row["Price"]]));
  const bought = rowsOf("BILL.SHEETS", bill)?.filter((row) => row["Sheets"] !== "") ?? [];
  expect(made.sheets.map(({ stock, machine, count, price }) => [stock, machine, count, cell(price)])).toEqual(
    bought.map((row) => [row["Stock"], row["Cut on"], row["Sheets"], row["Price"]]),
  );
  const minutes = rowsOf("BILL.TIMES", bill)?.map((row) => Number(row["Total"]));
  if (minutes) expect(sum(made.lines.flatMap((line) => Object.values(line.minutes)))).toBeCloseTo(sum(minutes), 6);
  const dates = rowsOf("BILL.WHATIF", bill);
  if (dates) expect(made.totals.late).toBe(dates.filter((row) => row["Verdict"] === "breaks it").length);
}

const CHECKED = [
  "Status",
  "Sentence",
  "Then",
  "Notes",
  "Cut on",
  "Die",
  "Punch",
  "Brake",
  "Flat length",
  "Flat width",
  "Radius",
  "Deduction",
  "Weight each",
  "Quoted",
];
const pick = (row: Row) => Object.fromEntries(CHECKED.map((header) => [header, row[header]]));

describe("the JSON of random bills and shops", () => {
  it("is valid, adds up, and says what the cells say", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, (bill) => {
        const made = billJson(planOf(bill));
        expect(BILL_JSON.parse(JSON.parse(JSON.stringify(made)))).toEqual(made);
        expect(partsJson(planOf(bill)).map(({ row: _, ...line }) => line)).toEqual(made.lines);
        sums(made);
        sameAsCells(made, bill);
      }),
      RUNS,
    );
  });

  it("is said in 100 columns, every line of it with --all", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, fc.boolean(), (bill, all) => {
        const plan = planOf(bill);
        const said = billWords(plan, all).split("\n");
        for (const row of said) expect(row.length, row).toBeLessThanOrEqual(WIDTH);
        const entries = said.filter((row) => /^\S.*? (?:STOP |CHECK|CLEAR)/.test(row) && !row.startsWith("Lines "));
        if (all) expect(entries).toHaveLength(plan.lines.length);
      }),
      { ...RUNS, numRuns: 30 },
    );
  });
});
