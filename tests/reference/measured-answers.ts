/**
 * Published measured bends (measured-bends.json) and published rates, asked of the cell functions under edition 2026.2.
 * Every row of the file and its tolerances stand in measured-bends.test.ts; here each function they speak for.
 */
import measured from "./measured-bends.json" with { type: "json" };
import type { Published, PublishedFormula } from "./published.ts";

const EDITION = "2026.2";
const none = null;
const bend = (id: string) => measured.bends.find((each) => each.id === id)!;
const range = (id: string) => measured.ranges.find((each) => each.id === id)!;
const m1 = bend("m1");
const m5 = bend("m5");
const s1 = range("s1");
const steel = ["A1008 CS", m1.thickness_in] as const;
const over = [m1.die_in, m1.punch_nose_in] as const;
const soft = ["1100-O", m5.thickness_in] as const;
const rest = { source: m1.source, basis: "read" as const };

export const measuredAnswers: readonly Published[] = [
  {
    id: "measured deduction m1",
    call: ["AIR.DEDUCTION", ...steel, 90, ...over, none, none, none, none, none, none, none, "in", EDITION],
    expected: m1.deduction_in!,
    tolerance: 0.01,
    ...rest,
  },
  {
    id: "flat of a bend with the measured deduction m1",
    call: ["AIR.FLAT", ...steel, "2; 3", 90, ...over, none, none, none, none, none, none, none, "in", EDITION],
    expected: 5 - m1.deduction_in!,
    tolerance: 0.01,
    ...rest,
  },
  {
    id: "measured radius m5",
    call: ["AIR.RADIUS", ...soft, 90, m5.die_in, m5.punch_nose_in, none, none, none, none, "in", EDITION],
    expected: m5.radius_in!,
    tolerance: 0.03,
    source: m5.source,
    basis: "read",
  },
  {
    id: "springback of A572-50 plate, range s1",
    call: ["AIR.SPRINGBACK", "A572-50", 0.5, 90, 6.25, 1.25, none, none, none, none, "in", EDITION],
    expected: (s1.degrees[0]! + s1.degrees[1]!) / 2,
    tolerance: (s1.degrees[1]! - s1.degrees[0]!) / 2,
    source: s1.source,
    basis: "read",
  },
  {
    id: "304 on a 1/4 in mild-steel shear",
    call: ["SHEAR.MAXTHICKNESS", "304", 0.25, none, "in", EDITION],
    expected: (0.25 * 50) / (0.7 * 107),
    tolerance: 1e-9,
    source: "capacity booklet of a guillotine maker, reprint: equal shearing force, mild steel at most 50 ksi in shear",
    basis: "derived",
  },
  {
    id: "placing a load at arm's length",
    call: ["LIFT.PLACE", 10, 30, 0, 20, 40, 0, 0.2, "good", 1],
    expected: 51 * 0.5 * 0.925,
    tolerance: 1e-9,
    source: "NIOSH 94-110, Applications Manual: HM 10/20, VM 1 - 0.0075 x 10, DM 1 at the destination",
    basis: "derived",
  },
];

export const measuredFormulas: readonly PublishedFormula[] = [
  {
    id: "a drawing's radius of what was measured is accepted",
    formula: `=IF(INDEX(SHOP.AIR.ACCEPT(${m5.radius_in},0.03,"1100-O",${m5.thickness_in},${m5.die_in},${m5.punch_nose_in},"in","${EDITION}"),1,1)="accept",1,0)`,
    expected: 1,
    tolerance: 0,
    source: m5.source,
    basis: "read",
  },
  {
    id: "4 in aluminum: a rough cut is 5.8 times as fast as a fine finish",
    formula: '=SHOP.JET.FEED("6061-T6",4,1,60,0.014,1,0.04)/SHOP.JET.FEED("6061-T6",4,5,60,0.014,1,0.04)',
    expected: 5.8,
    tolerance: 0.7,
    source: "a machine maker's teaching page on nozzle and orifice: 4.2 and 0.72 in/min, an excerpt",
    basis: "read",
  },
];
