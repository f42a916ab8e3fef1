/**
 * Air bends solved by finite elements (fe-cases.json, fe-cases-second.json), asked of the cell functions: those with the
 * friction of 0.1 that the functions take. Tolerances are what the mechanics claims against them.
 */
import first from "./fe-cases.json" with { type: "json" };
import second from "./fe-cases-second.json" with { type: "json" };
import type { Published, PublishedCell } from "./published.ts";

const none = null;
const FRICTION = 0.1;
const SOURCE = "independent finite-element solution made for this project (see the file's own words)";
const cases = [...first.cases, ...second.cases].filter(({ mu }) => mu === FRICTION);

type Case = (typeof cases)[number];

const sheetOf = (c: Case) => [
  ["Name", "Modulus (MPa)", "Poisson ratio", "Hardening strength (MPa)", "Hardening exponent"],
  ["the sheet", c.E_MPa, c.nu, c.K_MPa, c.n],
];
const tools = (c: Case) => [c.V_mm, c.punch_nose_mm] as const;
/** A case that ends past the faces of its die was solved without them: the cell functions are not told its angle. */
const faces = (c: Case) =>
  [
    c.final_bend_angle_deg + c.springback_deg < 180 - c.die_angle_deg ? c.die_angle_deg : none,
    c.die_shoulder_mm,
  ] as const;
const bend = (c: Case) => ["the sheet", c.t_mm, c.final_bend_angle_deg] as const;

const row = (c: Case, what: string, call: Published["call"], expected: number, tolerance: number): Published => ({
  id: `finite elements ${c.id}: ${what}`,
  call,
  expected,
  tolerance,
  source: SOURCE,
  basis: "derived",
});

export const airBends: readonly Published[] = cases.flatMap((c) => [
  row(
    c,
    "deduction",
    ["AIR.DEDUCTION", ...bend(c), ...tools(c), "mechanics", ...faces(c), none, none, none, none, "mm", sheetOf(c)],
    c.bend_deduction_mm,
    0.12 * c.t_mm,
  ),
  row(
    c,
    "springback",
    ["AIR.SPRINGBACK", ...bend(c), ...tools(c), ...faces(c), none, none, "mm", sheetOf(c)],
    c.springback_deg,
    0.3,
  ),
  row(
    c,
    "force of one meter",
    [
      "AIR.TONNAGE",
      "the sheet",
      c.t_mm,
      c.final_bend_angle_deg,
      1000,
      ...tools(c),
      ...faces(c),
      none,
      none,
      none,
      "mm",
      sheetOf(c),
    ],
    c.peak_force_N_per_mm,
    0.04 * c.peak_force_N_per_mm,
  ),
  row(
    c,
    "depth",
    ["AIR.DEPTH", ...bend(c), ...tools(c), ...faces(c), none, none, "mm", sheetOf(c)],
    c.stroke_mm,
    0.02 * c.V_mm,
  ),
]);

export const airBendCells: readonly PublishedCell[] = cases.map((c) => ({
  ...row(
    c,
    "deduction, with its band",
    ["AIR.BEND", ...bend(c), ...tools(c), ...faces(c), none, none, none, none, none, "mm", sheetOf(c)],
    c.bend_deduction_mm,
    0.12 * c.t_mm,
  ),
  column: "Value",
  row: 2,
}));
