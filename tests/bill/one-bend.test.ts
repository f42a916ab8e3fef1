/** A bill's radius, deduction, flat and depth are those of the AIR functions, and the shop's strips correct all of them. */
import { describe, expect, it } from "vitest";
import type { LinePlan } from "../../src/bill/lines/plan-line.ts";
import { BillPlan, type LineAnswer } from "../../src/bill/plan.ts";
import { notesSay } from "../../src/bill/says.ts";
import { callRecord } from "../../src/cells/call/call.ts";
import { RECORDS, shopFunctions } from "../../src/cells/catalogue.ts";
import { readData } from "../../src/cells/parameters/read-data.ts";
import { readBill } from "../../src/cells/tables/bill.ts";
import { readShop } from "../../src/cells/tables/shop-arguments.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../src/units/cell.ts";
import { bill, job, SHOP, type Tables } from "../cells/example/tables.ts";
import { oneDieBill } from "./one-die-bill.ts";

const EDITIONS = ["2026.1", "2026.2"] as const;
const LINES = oneDieBill.bill;

function planOf(edition: string, lines: CellMatrix, tables: Tables = SHOP): BillPlan {
  const context = { system: "in" as const, materials: readData([[edition]], "data", "in"), material: undefined };
  return new BillPlan(readShop(tables, context), readBill(lines, "bill", context));
}

function ask(name: string, given: Record<string, CellValue | CellMatrix | undefined>): CellValue {
  const record = RECORDS.find((each) => each.name === name)!;
  const { value } = callRecord(
    record,
    Object.keys(record.parameters).map((key) => given[key] ?? null),
  );
  if (isCellError(value)) throw new Error(`${name}: ${value.message}`);
  return value as CellValue;
}

/** The same bend as the AIR functions are asked about it: mm in, mm out. */
const asAsked = ({ line, tools }: LinePlan, edition: string) => ({
  material: line.material.name,
  thickness: line.thickness,
  bendAngle: Math.max(...[...line.main.angles, ...(line.cross?.angles ?? [])].map(Math.abs)),
  dieOpening: tools!.die.opening,
  punchNose: tools!.punch?.nose,
  dieShoulder: tools!.die.shoulder,
  // The bill judges the faces by findings; here the bend alone is asked for, over the die whose angle is usual.
  units: "mm",
  data: edition,
});

const bentLines = (plan: BillPlan): LinePlan[] =>
  plan.lines.flatMap(({ plan: planned }) => (planned?.bend ? [planned] : []));

describe.each(EDITIONS)("one bend, one answer, edition %s", (edition) => {
  // A die whose angle makes no face a limit: AIR functions refuse past the faces, a bill says so in a finding.
  const tables = {
    ...SHOP,
    dies: [["Die", "Opening (in)", "Angle (deg)"], ...[0.5, 1, 2].map((v) => [`V ${v}`, v, 30] as CellValue[])],
    punches: [
      ["Punch", "Nose radius (in)", "Angle (deg)"],
      ["Sharp", 0.03125, 28],
    ],
  } as Tables;
  const lines = bentLines(planOf(edition, LINES, tables));

  it("has lines to judge", () => expect(lines.length).toBeGreaterThan(30));

  it.each(lines.map((line) => [line.line.part, line] as const))("%s", (_, planned) => {
    const asked = { ...asAsked(planned, edition), dieAngle: 30, punchAngle: 28 };
    expect(planned.bend!.radius).toBeCloseTo(ask("AIR.RADIUS", asked) as number, 9);
    expect(planned.bend!.deduction).toBeCloseTo(ask("AIR.DEDUCTION", asked) as number, 9);
    const strip = planned.line.main;
    if (strip.angles.length === 0) return;
    const flat = ask("AIR.FLAT", {
      ...asked,
      flanges: strip.flanges.join("; "),
      bendAngles: strip.angles.map(Math.abs).join("; "),
    });
    expect(planned.blank.length).toBeCloseTo(flat as number, 9);
  });

  it("names its method: the rule under 2026.1, what the best method took under 2026.2", () => {
    const methods = new Set(lines.map(({ bend }) => bend!.method));
    if (edition === "2026.1") expect([...methods]).toEqual(["rule"]);
    else expect(methods).toContain("mechanics");
  });
});

describe("a bend that is like none compared", () => {
  const line = { Part: "wide", Material: "A36", Quantity: 1, Width: 6, Flanges: "8; 8", "Bend angles": 90, Die: "V 6" };
  const dies: CellMatrix = [
    ["Die", "Opening (in)", "Angle (deg)"],
    ["V 6", 6, 80],
  ];
  const notes = (edition: string, thickness: number, corrections?: CellMatrix) => {
    const tables = { ...SHOP, dies, ...(corrections ? { corrections } : {}) } as Tables;
    const plan = planOf(edition, bill({ ...line, Thickness: thickness }), tables);
    return notesSay(plan.lines[0]!.findings, "in").join(" ");
  };

  it("says in every view what to do first, under 2026.2", () => {
    expect(notes("2026.2", 0.125)).toContain("cut one, bend, measure");
    expect(notes("2026.2", 0.75)).not.toContain("measure");
    expect(notes("2026.1", 0.125)).not.toContain("measure");
  });

  it("says nothing where the shop has bent strips of it", () => {
    const own: CellMatrix = [
      ["Material", "Contact", "K offset", "Opening"],
      ["A36", "point", 0.01, 6],
    ];
    expect(notes("2026.2", 0.125, own)).not.toContain("measure");
  });
});

describe("the shop's strips correct the whole bill", () => {
  const ANSWER = (...rows: readonly CellValue[][]): CellMatrix => [
    [
      "Material",
      "Contact",
      "Strips",
      "K offset",
      "Strength factor",
      "Springback factor",
      "Opening",
      "Thickness from",
      "Thickness to",
    ],
    ...rows,
  ];
  const contacts = (material: string, opening: number, from: number, to: number) =>
    ["point", "wrapped"].map((contact): CellValue[] => [material, contact, 3, -0.05, 1.15, 1.3, opening, from, to]);
  const lines = bill(
    {
      Part: "over 2",
      Material: "A36",
      Thickness: 0.25,
      Quantity: 10,
      Width: 6,
      Flanges: "3; 4",
      "Bend angles": 90,
      Die: "V 2",
    },
    {
      Part: "thinner",
      Material: "A36",
      Thickness: 0.1875,
      Quantity: 10,
      Width: 6,
      Flanges: "3; 4",
      "Bend angles": 90,
      Die: "V 2",
    },
    {
      Part: "over 1.5",
      Material: "A36",
      Thickness: 0.25,
      Quantity: 10,
      Width: 6,
      Flanges: "3; 4",
      "Bend angles": 90,
      Die: "V 1.5",
    },
    {
      Part: "304",
      Material: "304",
      Thickness: 0.25,
      Quantity: 10,
      Width: 6,
      Flanges: "3; 4",
      "Bend angles": 90,
      Die: "V 2",
    },
    {
      Part: "flat",
      Material: "A36",
      Thickness: 0.25,
      Quantity: 10,
      Width: 6,
      Flanges: "3",
      "Bend angles": null,
      Die: null,
    },
  );
  const dies: CellMatrix = [
    ["Die", "Opening (in)", "Angle (deg)"],
    ["V 2", 2, 80],
    ["V 1.5", 1.5, 80],
  ];
  const SHARP: CellMatrix = [
    ["Punch", "Nose radius (in)", "Angle (deg)"],
    ["Sharp", 0.03125, 75],
  ];
  const shop = { ...SHOP, job: job(), dies } as Tables;
  const corrections = ANSWER(...contacts("A36", 2, 0.225, 0.275));
  const figures = ({ plan, status }: LineAnswer) => ({
    status,
    bend: plan?.bend,
    blank: plan?.blank,
    force: plan?.force,
    springback: plan?.strips.map((strip) => strip.springback),
    depths: plan?.strips.map((strip) => strip.depths),
    order: plan?.strips.map((strip) => strip.order),
  });

  it.each(EDITIONS)(
    "of their own die, thickness and material alone (%s): flat, stop, force, springback, depth",
    (edition) => {
      const plain = planOf(edition, lines, shop).lines;
      const own = planOf(edition, lines, { ...shop, corrections }).lines;
      for (const i of [1, 2, 3, 4]) expect(figures(own[i]!), own[i]!.part).toEqual(figures(plain[i]!));
      const [before, after] = [plain[0]!.plan!, own[0]!.plan!];
      expect(after.bend!.method).toBe("test strips");
      expect(after.force!.expected / before.force!.expected).toBeCloseTo(1.15, 9);
      expect(after.strips[0]!.springback[0]! / before.strips[0]!.springback[0]!).toBeCloseTo(1.3, 1);
      expect(after.strips[0]!.depths[0]).toBeGreaterThan(before.strips[0]!.depths[0]!);
      expect(after.blank.length).not.toBe(before.blank.length);
      const stops = [before, after].map(({ strips: [strip] }) =>
        strip!.order.feasible ? strip!.order.hits[0]!.stop : 0,
      );
      expect(stops[0]).toBeGreaterThan(0);
      expect(stops[1]).not.toBe(stops[0]);
      if (edition === "2026.1") return;
      // K less by 0.05: the deduction grows by A t 0.05 (derived), the flat shrinks by it.
      const by = (Math.PI / 2) * before.line.thickness * 0.05;
      expect(after.bend!.deduction - before.bend!.deduction).toBeCloseTo(by, 9);
      expect(before.blank.length - after.blank.length).toBeCloseTo(by, 9);
      expect(after.bend!.radius).toBe(before.bend!.radius);
    },
  );

  it("deleting them restores every digit of every answer", () => {
    const asked = (tables: Tables, name: string) =>
      shopFunctions.call(name, [lines, ...Object.values(tables)] as CellMatrix[]).value;
    for (const name of ["BILL.CHECK", "BILL.BLANKS", "BILL.PRICE"]) {
      const before = asked(shop, name);
      expect(asked({ ...shop, corrections }, name), name).not.toEqual(before);
      expect(asked({ ...shop, corrections: [corrections[0]!] }, name), name).toEqual(before);
      expect(asked(shop, name), name).toEqual(before);
    }
  });

  it("are taken as STRIP.TABLE answers them, and named in the working", () => {
    const measured: CellMatrix = [
      [
        "Material",
        "Thickness (in)",
        "Blank (in)",
        "Flange 1 (in)",
        "Flange 2 (in)",
        "Bend angle (deg)",
        "Opening (in)",
        "Punch nose (in)",
      ],
      ["A36", 0.25, 4.53, 2, 3, 90, 2, 0.03125],
    ];
    const table = ask("STRIP.TABLE", { strips: measured, data: "2026.2" }) as unknown as CellMatrix;
    const { value } = shopFunctions.call("WORKING", [
      "BILL.BLANKS",
      lines,
      ...(Object.values({ ...shop, punches: SHARP, corrections: table }) as CellMatrix[]),
    ] as CellMatrix[]);
    const steps = (value as CellMatrix).filter(([symbol]) => symbol === "strips");
    expect(steps.length).toBeGreaterThan(0);
    for (const [, , words] of steps)
      expect(words).toMatch(/^A36, (?:point|wrapped) contact, 0\.225 in to 0\.275 in over 2 in$/);
  });
});
