/** 500 lines that no two are the same: good ones, and some of every kind of problem among them. All invented. */

import { KINDS } from "./kinds.ts";
import { type Chance, chance, type ListLine } from "./line.ts";

export const LINES = 500;
const SEED = 20260417;
/** Every third line is spoiled, the kinds in turn. */
const EVERY = 3;

interface PlantedLine extends ListLine {
  readonly part: string;
  /** The kind that was planted, or "none". */
  readonly planted: string;
}

/** Sheet and die that go together without a finding. */
const SHEETS: readonly (readonly [material: string, thickness: string, die: string])[] = [
  ["A1011 CS", "10 ga", "V 1"],
  ["A1011 CS", "12 ga", "V 3/4"],
  ["A36", "3/16", "V 1-1/2"],
  ["A36", "1/4", "V 2"],
  ["A653 CS", "16 ga", "V 5/8"],
  ["304", "14 ga", "V 5/8"],
  ["5052-H32", "1/8", "V 1"],
];
const FORMS = [1, 1, 2] as const; // bends of a line

function goodLine(by: Chance): ListLine {
  const [material, thickness, die] = by.one(SHEETS);
  const bends = by.one(FORMS);
  const flange = () => by.step(2, 6, 0.125);
  return {
    material,
    thickness,
    quantity: by.step(1, 240, 1),
    width: by.step(4, 40, 0.25),
    flanges: Array.from({ length: bends + 1 }, flange).join("; "),
    bendAngles: Array.from({ length: bends }, () => 90).join("; "),
    die,
    punch: "Plain",
    grain: "across",
    holeDistance: null,
    radius: null,
    radiusTolerance: null,
    tolerance: null,
  };
}

const key = ({ quantity: _, ...drawn }: ListLine): string => JSON.stringify(drawn);

export function plantedLines(): PlantedLine[] {
  const by = chance(SEED);
  const known = new Set<string>();
  return Array.from({ length: LINES }, (_, i): PlantedLine => {
    const kind = i % EVERY === 0 ? KINDS[(i / EVERY) % KINDS.length] : undefined;
    for (;;) {
      const line = { ...goodLine(by), ...kind?.spoil(by) };
      if (known.has(key(line))) continue;
      known.add(key(line));
      return { part: `P-${String(i + 1).padStart(3, "0")}`, ...line, planted: kind?.name ?? "none" };
    }
  });
}
