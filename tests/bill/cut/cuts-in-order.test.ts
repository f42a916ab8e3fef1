import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { cutsInOrder } from "../../../src/bill/cut/cuts-in-order.ts";
import { offcutsOf } from "../../../src/bill/cut/offcuts.ts";
import { jobPlan } from "../../../src/job/job-plan.ts";
import { bookOf } from "../../../src/job/workbook-book.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { SHOP, withCell } from "../../cells/example/tables.ts";
import { bracket, planned, shopOf } from "../shop.ts";

// By hand: a flat plate of 20 x 30 in off a sheet of 48 x 120, 1/4 in A36 (0.284 lb/in3): the sheet weighs 409 lb.
const plate = (changed: object) => bracket({ Flanges: "20", "Bend angles": null, Width: 30, Holes: 0, ...changed });
const listed = (shop = shopOf(), changed: object = {}) => {
  const plan = planned([plate({ Part: "CS-02", Quantity: 7, ...changed })], shop);
  const offcuts = offcutsOf(plan.groups);
  return { plan, offcuts, rows: plan.groups.flatMap((group) => cutsInOrder(group, plan.shop, offcuts)) };
};

test("a row says how many pieces, what is set, what drops and who lifts", () => {
  const { rows, plan } = listed();
  const blanks = rows.flatMap(({ drops, onTable }) => [drops, onTable]).join(", ");
  const count = [...blanks.matchAll(/(\d+) x CS-02/g)].reduce((sum, [, n]) => sum + Number(n), 0);
  expect(count).toBe(plan.quoted[0]!.plan.blanks);
  expect(rows[0]!.piece).toBe("sheet 120 x 48");
  expect(rows[0]!.lift).toBe("409 lb, hoist");
  expect(rows.map(({ onTape }) => onTape)).toContain("20");
  for (const { row, note } of rows) expect(note).toMatch(row.by === "gauge" ? /, setting \d+(;|$)/ : /, measure what /);
  // 48 x 30 x 0.25 x 0.284 is 102 lb and 48 x 20 is 68 lb; a piece of 30 x 20, 43 lb, one person catches.
  expect(rows.flatMap(({ drops, heavyDrop }) => (heavyDrop === "" ? [] : [[drops, heavyDrop]]))).toEqual([
    ["3 x strip 48 x 30", "102 lb drops: catcher"],
    ["strip 48 x 20", "68 lb drops: catcher"],
  ]);
});

test("a piece is taken by the name it fell with, and with its cut where another left one of its size", () => {
  const { plan } = jobPlan(bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx")))))!;
  const rows = plan.groups.flatMap((group) => cutsInOrder(group, plan.shop, offcutsOf(plan.groups)));
  const bare = (words: string) => words.replace(/^\d+ x /, "").replace(/ from cut .*/, "");
  let named = 0;
  rows.forEach(({ row, piece, drops, onTable }, k) => {
    if (row.isWhole) return;
    const before = rows.slice(0, k).filter((one) => one.row.pattern === row.pattern && one.row.seq < row.seq);
    const from = rows.filter(({ row: one }) =>
      [...one.falls, ...one.stays].some(({ pieces }) => row.cuts.some((cut) => pieces.includes(cut.piece))),
    );
    const says = (one: (typeof rows)[number]) => `${one.drops}; ${one.onTable}`;
    expect(
      before.some((one) => says(one).includes(bare(piece))),
      `${piece}; ${drops}; ${onTable}`,
    ).toBe(true);
    const said = / from cut (\d+)/.exec(piece)?.[1];
    if (said === undefined) return;
    named += 1;
    expect(from.map((one) => String(one.row.seq))).toContain(said);
  });
  expect(named).toBeGreaterThan(0);
});

const SAMPLE = jobPlan(bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx")))))!.plan;
const SAMPLE_ROWS = SAMPLE.groups.flatMap((group) => cutsInOrder(group, SAMPLE.shop, offcutsOf(SAMPLE.groups)));

test("where copies of a piece are not put down between cuts, the first of them says through which; no other cut does", () => {
  const rows = SAMPLE_ROWS;
  let said = 0;
  rows.forEach(({ row, through, note, lift }, k) => {
    const isOneVisit = (a: number) =>
      rows[a]?.row.cuts.some(({ visit }) => visit === row.cuts.at(-1)!.visit) &&
      row.cuts[0]!.copies > 1 &&
      row.cuts.length === 1;
    const [, last] = /^each through cut (\d+) before the next$/.exec(through) ?? [];
    if (!isOneVisit(k + 1) || isOneVisit(k - 1)) expect(through, `cut ${row.seq}`).toBe("");
    else {
      said++;
      const to = rows.findIndex((other, at) => at > k && String(other.row.seq) === last);
      for (let at = k + 1; at <= to; at++) expect(isOneVisit(at), `cut ${row.seq}`).toBe(true);
      expect(isOneVisit(to + 1)).toBeFalsy();
      expect(note).toContain(through);
      expect(lift).not.toBe("");
    }
  });
  expect(said).toBeGreaterThan(0);
});

test("scrap as large as a blank or a strip of its sheet is called no blank, other scrap is not", () => {
  // A strip of 48 in for 7.483 x 8 in: five fall, and 8 in are over, as large as a blank; of 3.242 in nine of 3 in leave 21.
  const said = SAMPLE_ROWS.flatMap(({ drops, onTable }) => [drops, onTable]);
  expect(said).toContain("3 x scrap 8 x 7.483 (not a blank)");
  expect(said).toContain("scrap 21 x 3.242");
});

test("an offcut bears a tag and comes back as a row of Stock, at what the job was credited", () => {
  const { offcuts, rows } = listed();
  const [first] = offcuts;
  expect(first).toBeDefined();
  expect(rows.map(({ drops, onTable }) => `${drops} ${onTable}`).join("; ")).toContain(`offcut ${first!.tag}, `);
  const { length, width, price, sheet } = first!;
  // Plate 1/4: 372 a sheet, remnants worth half.
  expect(price).toBeCloseTo((0.5 * 372 * (length * width)) / (sheet.length * sheet.width), 2);
  // What is as long as the sheet is wide was rolled across its length.
  expect(length).toBeCloseTo(48 * 25.4, 6);
  expect(first!.grain).toBe("width");
});

test("only what is taken up or turned is lifted, and only an inch tape is read", () => {
  const { rows, plan, offcuts } = listed();
  const lying = rows.filter(({ row }) => !row.isTakenUp && !row.turn);
  expect(lying.length).toBeGreaterThan(0);
  for (const { lift } of lying) expect(lift).toBe("");
  const [group] = plan.groups;
  for (const { onTape } of cutsInOrder(group!, { ...plan.shop, system: "mm" }, offcuts)) expect(onTape).toBe("");
});

test("what no back gauge reaches is set by the front stop, or by a mark where there is none", () => {
  const by = (reach: number, front: number) => {
    const shears = withCell(
      withCell(SHOP.shears, "Shear 1", "Gauge reach", reach),
      "Shear 1",
      "Front stop reach",
      front,
    );
    return new Set(listed(shopOf({ shears }), { Quantity: 3 }).rows.map(({ row }) => row.by));
  };
  expect(by(42, 60)).toEqual(new Set(["gauge"]));
  expect(by(12, 60)).toEqual(new Set(["front stop"]));
  expect(by(12, 0)).toEqual(new Set(["mark"]));
});
