import { describe, expect, it } from "vitest";
import * as invented from "../../../src/cells/example/invented-shop.ts";
import { bill } from "../../../src/hosts/command-line/bill.ts";
import { check } from "../../../src/hosts/command-line/check.ts";
import { UsageError } from "../../../src/hosts/command-line/usage.ts";
import { BILL_JSON, type BillJson } from "../../../src/job/bill-schema.ts";
import { csvRows } from "../../../src/job/part-list/csv.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";
import { HEADER, LIST, LIST_CELLS, ONE_DIE, RULE, run, testFolder, workbook } from "./shop-book.ts";

const file = testFolder();
const shop = file("shop.xlsx", workbook(...ONE_DIE, RULE));
const book = (name: string, ...tables: CellMatrix[]) => file(name, workbook(...tables));

async function jsonOf(...args: string[]): Promise<{ readonly exit: number; readonly made: BillJson }> {
  const { exit, text } = await run(bill, ...args, "--json");
  expect(text.endsWith("\n")).toBe(true);
  return { exit, made: BILL_JSON.parse(JSON.parse(text)) };
}
const line = ({ lines }: BillJson, part: string) => lines.find((each) => each.part === part)!;

describe("shop bill --json", async () => {
  const { exit, made } = await jsonOf(file("parts.csv", `${LIST}\n`), "--shop", shop);
  const quoted = made.lines.filter((each) => each.quoted);

  it("has every line of the list in its order, and says by its exit that one is stop", () => {
    expect(made.lines.map(({ line, part }) => `${line} ${part}`)).toEqual(
      LIST.split("\n")
        .slice(1)
        .map((row, i) => `${i + 1} ${row.split(",")[0]}`),
    );
    expect(exit).toBe(1);
    expect(made.units).toBe("in");
    expect(made.not_checked).toEqual([]);
  });

  it("understands a bracket, a Z, a hat, a tray, a flat plate, gauges and millimeters", () => {
    for (const part of ["L1", "Z1", "H1", "T1", "P1", "M1"]) {
      expect(line(made, part), part).toMatchObject({ quoted: true, cut_on: expect.any(String) });
      expect(line(made, part).status, part).not.toBe("stop");
    }
    // 15 U.S.C. 206 is another series; 11 ga of steel sheet is 0.1196 in, 3 mm is 3 / 25.4 in (manufacturers' standard gauge).
    expect(line(made, "L1").thickness).toBeCloseTo(0.1196, 4);
    expect(line(made, "M1").thickness).toBeCloseTo(3 / 25.4, 12);
  });

  it("counts: statuses, pieces and money add up", () => {
    const { totals } = made;
    expect(totals.lines).toBe(made.lines.length);
    expect(totals.clear + totals.check + totals.stop).toBe(totals.lines);
    expect(totals.quoted).toBe(quoted.length);
    expect(totals.pieces).toBe(quoted.reduce((sum, { quantity }) => sum + quantity!, 0));
    expect(totals.weight).toBeCloseTo(
      quoted.reduce((sum, { quantity, weight }) => sum + quantity! * weight!, 0),
      9,
    );
    expect(totals.price).toBeCloseTo(
      quoted.reduce((sum, { price }) => sum + price!, 0),
      6,
    );
    expect(totals.order).toBeCloseTo(totals.price! + totals.minimum! + totals.rush!, 6);
    for (const each of quoted) expect(each.price).toBeCloseTo(each.price_each! * each.quantity!, 6);
  });

  it("cuts every quoted piece and its extras once, and nothing else", () => {
    const cut = new Map<number, number>();
    for (const { pieces } of made.sheets)
      for (const { line: at, part, count } of pieces) {
        expect(made.lines[at - 1]!.part).toBe(part);
        cut.set(at, (cut.get(at) ?? 0) + count);
      }
    expect(Object.fromEntries(cut)).toEqual(Object.fromEntries(quoted.map((each) => [each.line, each.ordered])));
    for (const each of quoted) expect(each.ordered).toBeGreaterThanOrEqual(each.quantity!);
  });

  it("sets up the brake for every bent line that is quoted, once", () => {
    const set = made.setups.flatMap(({ lines }) => lines).sort((a, b) => a - b);
    expect(set).toEqual(quoted.filter(({ die }) => die !== null).map((each) => each.line));
    expect(made.setups).toEqual([{ brake: "Brake 2", die: "V 1", punch: "Plain", lines: expect.any(Array) }]);
  });

  it("gives the radius and deduction that the flat is made with", () => {
    const { flat, radius, deduction, thickness } = line(made, "Z1");
    // Bend deduction 2 (R + T) - pi/2 (R + k T), k = 0.42 to the neutral axis: Groover, Fundamentals of Modern Manufacturing.
    const expected = 2 * (radius! + thickness!) - (Math.PI / 2) * (radius! + 0.42 * thickness!);
    expect(deduction).toBeCloseTo(expected, 9);
    expect(flat!.length).toBeCloseTo(2 + 2.5 + 2 - 2 * expected, 9);
    expect(flat!.width).toBe(6);
    expect(line(made, "P1")).toMatchObject({
      flat: { length: 8, width: 6 },
      radius: null,
      deduction: null,
      order: null,
    });
  });

  it("orders the hits: a Z is flipped, a tray's directions come one after the other", () => {
    const z = line(made, "Z1").order!;
    expect(z.map(({ hit }) => hit)).toEqual([1, 2]);
    expect(z.map(({ bend, angle }) => [bend, angle]).sort()).toEqual([
      [1, 90],
      [2, -90],
    ]);
    expect(z[0]!.turn).toBe("none");
    expect(z[1]!.turn).toMatch(/flip/);
    const tray = line(made, "T1").order!;
    expect(tray.map(({ hit }) => hit)).toEqual([1, 2, 3, 4]);
    expect([tray.slice(0, 2), tray.slice(2)].map((half) => half.map(({ bend }) => bend).sort())).toEqual([
      [1, 2],
      [1, 2],
    ]);
    for (const { stop, depth } of [...z, ...tray]) expect(Math.min(stop, depth)).toBeGreaterThan(0);
  });

  it("names a line that cannot be read by line, row and column, and nothing else breaks", () => {
    const { findings, ...rest } = line(made, "B1");
    expect(findings).toEqual([
      {
        about: "input",
        status: "stop",
        figure: null,
        limit: null,
        unit: null,
        says: expect.stringMatching(/^line 7 \(sheet row 8\) column "Thickness" must be .*banana/),
        fix: null,
      },
    ]);
    expect(rest).toMatchObject({ status: "stop", quoted: false, flat: null, cut_on: null, minutes: {}, price: null });
    expect(line(made, "B2").findings[0]!.says).toMatch(/^line 8 \(sheet row 9\) column "Material" must be /);
  });

  it("proves the fix of the worst finding alone, and names the status it reaches", async () => {
    const { status, findings } = line(made, "F1");
    expect(status).toBe("stop");
    expect(findings[0]!.about).toBe("flange");
    expect(findings.slice(1).every(({ fix }) => fix === null)).toBe(true);
    const { says, reaches } = findings[0]!.fix!;
    // What is offered is done: the short flange as long as it says.
    const longer = /short flange ([\d.]+) in/.exec(says)![1];
    const again = await jsonOf(file("fixed.csv", `${HEADER}\nF1,A1011 CS,11 ga,4,6,${longer}; 3,90\n`), "--shop", shop);
    expect(again.made.lines[0]!.status).toBe(reaches);
  });

  it("says when it is due, done and late, of a job's own workbook", async () => {
    const own = (await jsonOf(book("dated.xlsx", LIST_CELLS, ...ONE_DIE, RULE))).made;
    expect(own.totals).toMatchObject({ late: 0, finish: expect.stringMatching(/^2026-03-\d\dT/) });
    expect(line(own, "L1").due).toBe("2026-03-20T12:00:00");
    const hurry = `${HEADER}\nL1,A1011 CS,11 ga,20,6,2; 3,90,,,2026-03-02 07:30\n`;
    const late = (await jsonOf(book("late.xlsx", [...csvRows(hurry, ",")], ...ONE_DIE, RULE))).made;
    expect(late.lines[0]!.due).toBe("2026-03-02T07:30:00");
    expect(late.totals.late).toBe(1);
    // The job of the shop's workbook is another one: its name and its dates are not those of a list.
    expect(made.totals).toMatchObject({ late: null, finish: null });
    expect(line(made, "L1").due).toBe(null);
  });

  it("is the same from a workbook that holds the bill, wherever its tables stand", async () => {
    const own = book("job.xlsx", LIST_CELLS, ...[...ONE_DIE, RULE].reverse());
    const found = await jsonOf(own);
    expect(found.exit).toBe(1);
    const unsaid = ({ plan: _, totals, ...rest }: BillJson) => ({
      ...rest,
      totals: { ...totals, late: null, finish: null },
      lines: rest.lines.map((each) => ({
        ...each,
        due: null,
        findings: each.findings.filter(({ about }) => about !== "input"),
      })),
    });
    expect(unsaid(found.made)).toEqual(unsaid(made));
    // Two rows and the title stand above it there.
    expect(line(found.made, "B1").findings[0]!.says).toMatch(/^line 7 \(sheet row 10\) column "Thickness"/);
    // And `check` calls it by that row.
    const checked = (await run(check, own, "--json")).text.split("\n").find((each) => each.includes('"B1"'));
    expect(JSON.parse(checked!)).toMatchObject({ row: 10, line: 7, part: "B1" });
  });

  it("speaks the shop's own system", async () => {
    const dies: CellMatrix = [
      ["Die", "Opening (mm)", "Angle (deg)", "Shoulder radius (mm)", "Rating (kN/m)", "Length (mm)"],
      ["V 25", 25.4, 80, 2.3, 700, 3000],
    ];
    const metric = book("metric.xlsx", dies, ...ONE_DIE.filter((table) => table[0]![0] !== "Die"));
    const parts = `${HEADER.replace("Width", "Width (in)").replace("Flanges", "Flanges (in)")}\n${LIST.split("\n")[1]}\n`;
    const inches = line(made, "L1");
    const found = (await jsonOf(file("mm.csv", parts), "--shop", metric)).made;
    expect(found.units).toBe("mm");
    expect(found.lines[0]!.flat!.width).toBeCloseTo(6 * 25.4, 9);
    expect(found.lines[0]!.thickness).toBeCloseTo(inches.thickness! * 25.4, 9);
    expect(found.lines[0]!.weight! / inches.weight!).toBeCloseTo(0.45359237, 2);
  });

  it("a shop without prices, stations or sheets says what was not looked at; nothing is priced", async () => {
    const tools = book("tools.xlsx", ...ONE_DIE.slice(0, 3), RULE);
    const found = (await jsonOf(file("parts.csv", `${LIST}\n`), "--shop", tools)).made;
    expect(found.not_checked).toEqual(["shears", "waterjets", "stations", "rates", "stock", "calendar"]);
    expect(found.totals).toMatchObject({ price: null, cost: null, order: null, finish: null, late: null });
    expect(line(found, "Z1").flat).toEqual(line(made, "Z1").flat);
  });

  it("check writes the same lines", async () => {
    const { text } = await run(check, file("parts.csv", `${LIST}\n`), "--shop", shop, "--json");
    const lines = text
      .trim()
      .split("\n")
      .map((row) => JSON.parse(row));
    expect(lines.slice(0, -1).map(({ row: _, ...rest }) => rest)).toEqual(made.lines);
    expect(lines.slice(0, -1).map(({ row }) => row)).toEqual(made.lines.map((each) => each.line + 1));
  });
});

describe("shop bill in words", () => {
  const widest = (text: string) => Math.max(...text.split("\n").map((row) => row.length));

  it("leads with totals, then one line per problem with its fix; 100 columns at most", async () => {
    const { exit, text } = await run(bill, file("parts.csv", `${LIST}\n`), "--shop", shop);
    expect(exit).toBe(1);
    expect(text.split("\n")[0]).toBe("parts");
    expect(text).toMatch(/^Lines {5}9: 3 STOP, \d CHECK, \d CLEAR\nQuoted {4}6 lines, without 3 lines\n/m);
    expect(text).toMatch(/^Price .*, without 3 lines$/m);
    expect(text).toContain("not confirmed from the plate: Brake 2, ");
    expect(text.replace(/\s+/g, " ")).toMatch(
      /F1 STOP A flange of 0\.400 in falls into die V 1; .* Fix: .*, then \w+\./,
    );
    expect(widest(text)).toBeLessThanOrEqual(100);
  });

  it("every part of the price, which they add up to", async () => {
    const charges: CellValue[][] = [
      ["Crate", 40.5, "total"],
      ["Truck", 120, "total"],
      ["Tax", 0.07, "share"],
    ];
    const charged = ONE_DIE.map((table) =>
      table[0]![0] === "Rate"
        ? [...table.filter(([name]) => !charges.some(([charge]) => charge === name)), ...charges]
        : table,
    );
    const own = book("charged.xlsx", ...charged, RULE);
    const { text } = await run(bill, file("parts.csv", `${LIST}\n`), "--shop", own);
    const [, price, , inside] = /^Price +([\d.,]+) (\(lines ([^)]+)\))/m.exec(text.replace(/\n {10}/g, " "))!;
    const money = (words: string) => Number(words.replace(/,(?=\d)/g, ""));
    expect(inside).toMatch(/crate 40\.50, truck 120\.00, tax /);
    const sum = inside!.split(", ").reduce((total, part) => total + money(/[\d.,]+$/.exec(part)![0]), 0);
    expect(sum).toBeCloseTo(money(price!), 6);
  });

  it("the same cause on three lines is said once with its parts", async () => {
    const rows = ["A", "B", "C"].map((part) => `${part},A1011 CS,11 ga,4,6,0.4; 3,90`);
    const { text } = await run(bill, file("same.csv", [HEADER, ...rows].join("\n")), "--shop", shop);
    expect(text.match(/falls into/g)).toHaveLength(1);
    expect(text).toContain("The same on B, C.");
    const all = await run(bill, file("same.csv", [HEADER, ...rows].join("\n")), "--shop", shop, "--all");
    expect(all.text.match(/falls into/g)).toHaveLength(3);
  });

  it("says that nothing was found, and with --all names the clear lines", async () => {
    const parts = file("clear.csv", `${HEADER}\n${LIST.split("\n")[1]}\n`);
    const { exit, text } = await run(bill, parts, "--shop", shop);
    expect(exit).toBe(0);
    expect(text).toContain("No problem found against the tables given; the machine's plate decides.");
    expect((await run(bill, parts, "--shop", shop, "--all")).text).toMatch(/^L1 +CLEAR/m);
  });

  it("names late lines with their hours, the latest first", async () => {
    const mondays = ["01-05", "01-12", "01-19", "01-26", "02-02", "02-09", "02-16"];
    const rows = mondays.map((day, i) => `L${i + 1},A1011 CS,11 ga,4,6,2; 3,90,,,2026-${day} 07:30`);
    const late = book("late.xlsx", [...csvRows([HEADER, ...rows].join("\n"), ",")], ...ONE_DIE, RULE);
    const said = (await run(bill, late)).text.replace(/\s+/g, " ");
    expect(said).toMatch(
      /Late 7 lines, in working hours: L1 by [\d.]+ h, L2 by [\d.]+ h, .* L6 by [\d.]+ h, \.\.\.; overtime, a second shift or sending out would save (?:none|(?:all|\d) of them; the price does not include it) Plan/,
    );
    expect((await run(bill, late, "--all")).text).toMatch(/L7 by/);
  });

  it("names who accepted a check", async () => {
    const rows = `${HEADER},Drawing radius,Accepted\nR1,A1011 CS,11 ga,4,6,2; 3,90,,,,0.5,M. Lee 3/2\n`;
    const { text } = await run(bill, file("accepted.csv", rows), "--shop", shop);
    expect(text.replace(/\s+/g, " ")).toMatch(/R1 CHECK .* Accepted: M\. Lee 3\/2\./);
  });
});

describe("shop bill refuses", () => {
  it.each([
    ["no file", []],
    ["two files", ["a.xlsx", "b.xlsx"]],
    ["an unknown option", ["a.xlsx", "--loud"]],
  ])("%s: exit 64 by the caller", async (_, args) => {
    await expect(run(bill, ...args)).rejects.toBeInstanceOf(UsageError);
  });

  const wrongDie: CellMatrix = [
    ["Die", "Opening (in)", "Angle (deg)"],
    ["V 1", "wide", 80],
  ];
  it.each<[string, string, RegExp]>([
    ["a file that is not there", "nowhere.xlsx", /nowhere\.xlsx must be a file that exists; got nothing of that name/],
    ["a file that is not a workbook", file("no.xlsx", "not a zip"), /no\.xlsx: ./],
    ["a workbook without a bill", shop, /must be a workbook with a bill, whose header has "Part" and "Material"/],
    [
      "a bill whose shop has no die",
      book("nodie.xlsx", LIST_CELLS, [[...invented.BRAKES.headers], [...invented.BRAKES.rows[0]!]]),
      /dies must be a table whose header has "Die"/,
    ],
  ])("%s: exit 2, nothing on standard output", async (_, path, message) => {
    const { exit, text, notes } = await run(bill, path, "--json");
    expect([exit, text]).toEqual([2, ""]);
    expect(notes).toMatch(message);
  });

  it("a wrong cell of the shop, named by its row and column", async () => {
    const tables = ONE_DIE.map((table) => (table[0]![0] === "Die" ? wrongDie : table));
    const { exit, text, notes } = await run(bill, book("wrong.xlsx", LIST_CELLS, ...tables), "--json");
    expect([exit, text]).toEqual([2, ""]);
    // Two rows and the title stand above the list, which ends in row 12; brakes from row 14, dies from 17.
    expect(notes).toMatch(/^.*: dies sheet row 18 column "Opening" must be .*; got "wide"/);
  });

  it("finished work that is not recorded yet waits, and is named once by the rows of the sheet", async () => {
    const finished = (recorded: (number | string | null)[]): CellMatrix => [
      ["Part", "Station", "Estimated (min)", "Recorded (min)"],
      ...recorded.map((minutes) => ["An earlier job", "Brake", 30, minutes] as CellMatrix[number]),
    ];
    const priced = async (name: string, minutes: (number | string | null)[]) =>
      await run(bill, book(name, finished(minutes), LIST_CELLS, ...ONE_DIE, RULE), "--json");
    const [whole, waiting] = [
      await priced("whole.xlsx", [40, 42, 44]),
      await priced("waits.xlsx", [40, null, 42, 44, null]),
    ];
    expect(whole.notes).not.toContain("finished");
    expect(waiting.notes.match(/finished/g)).toHaveLength(1);
    expect(waiting.notes).toContain("finished sheet rows 5, 8: not recorded yet, left out");
    expect(JSON.parse(waiting.text).totals).toEqual(JSON.parse(whole.text).totals);
    const wrong = await priced("wrong.xlsx", [40, "soon"]);
    expect([wrong.exit, wrong.text]).toEqual([2, ""]);
    expect(wrong.notes).toContain('finished sheet row 5 column "Recorded" must be');
  });
});
