/** The shear's cuts of a group as a person follows them, in words. */

import { type CutListRow, cutList, type Yield } from "../../calc/cutting/cut-list.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { kilograms } from "../../units/quantity.ts";
import { show, showOnTape, showPlain } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { liftOf } from "../lines/lifting.ts";
import type { Rates } from "../nouns/rates.ts";
import type { Offcut } from "./offcuts.ts";
import type { CutGroup } from "./plan-cutting.ts";

export interface CutInWords {
  readonly row: CutListRow;
  /** As it was named when it came off: "5 x strip 8 x 48", "piece 8 x 3 from cut 4" where another cut left one alike. */
  readonly piece: string;
  /** The nearest mark of an inch tape; "" in millimeters. */
  readonly onTape: string;
  /** "45 x DF-05", "5 x piece 3 x 8", "offcut R2 16 x 48", "scrap 0.5 x 48". */
  readonly drops: string;
  readonly onTable: string;
  /** What is taken up or turned for the cut and by whom: "307 lb, hoist"; "" where it lies on the table still. */
  readonly lift: string;
  /** "123 lb drops: catcher" of what one person should not pick up; "" of less (common practice). */
  readonly heavyDrop: string;
  /** "each through cut 4 before the next" of pieces in many copies that are not put down between cuts; "" of others. */
  readonly through: string;
  readonly note: string;
}

/** None for the waterjet. */
export function cutsInOrder(
  group: CutGroup,
  { system, rates }: { readonly system: UnitSystem; readonly rates: Rates },
  offcuts: readonly Offcut[],
): CutInWords[] {
  const { plan, uses } = group;
  if (!plan) return [];
  const own = offcuts.filter((offcut) => offcut.group === group);
  const tags = new Map(own.flatMap(({ pieces, tag }) => pieces.map((piece) => [piece, tag] as const)));
  const { weight, length, width } = firstOf(uses).sheet;
  const weightPerArea = weight / (length * width);
  const rows = cutList(plan);
  const left = leftBy(rows, system);
  const usable = usableSizes(rows, system);
  return rows.map((row, i) => {
    const words = (yields: readonly Yield[], part: string) =>
      yields.map((each) => called(each, part, { tags, usable: usable.get(row.pattern), system })).join(", ");
    const through = throughSays(rows, i);
    const heavyDrop = heavyDropSays(heaviest(row.drops) * weightPerArea, rates, system);
    return {
      row,
      piece: counted(row.count, takes(row, left, system)),
      onTape: system === "in" ? showOnTape(row.measure) : "",
      drops: words(row.drops, row.drops === row.falls ? FALLS[row.stage] : STAYS[row.stage]),
      onTable: words(row.onTable, row.drops === row.falls ? STAYS[row.stage] : FALLS[row.stage]),
      lift: row.isTakenUp || row.turn ? liftSays(row.w * row.h * weightPerArea, rates, system) : "",
      heavyDrop,
      through,
      note: [noteOf(row), through, heavyDrop].filter(Boolean).join("; "),
    };
  });
}

const counted = (count: number, words: string): string => (count === 1 ? words : `${count} x ${words}`);

/** The long side first, as on every paper. */
const sizeOf = ({ w, h }: Pick<Yield, "w" | "h">, system: UnitSystem): string =>
  `${showPlain(Math.max(w, h), system)} x ${showPlain(Math.min(w, h), system)}`;

interface Left {
  readonly noun: string;
  readonly size: string;
  readonly seq: number;
  readonly pattern: string;
}

/** What every cut leaves to be cut on, by the plan's name of it. */
const leftBy = (rows: readonly CutListRow[], system: UnitSystem): ReadonlyMap<string, Left> =>
  new Map(
    rows.flatMap(({ seq, pattern, stage, falls, stays }) =>
      [...falls.map((one) => [one, FALLS[stage]] as const), ...stays.map((one) => [one, STAYS[stage]] as const)]
        .filter(([{ kind }]) => kind === "part")
        .flatMap(([one, noun]) => one.pieces.map((id) => [id, { noun, size: sizeOf(one, system), seq, pattern }])),
    ),
  );

/** Named as it was when it came off; a piece still on the table needs no origin. */
function takes(row: CutListRow, left: ReadonlyMap<string, Left>, system: UnitSystem): string {
  const from = row.cuts.flatMap(({ piece }) => left.get(piece) ?? []);
  const size = sizeOf(row, system);
  const name = `${from[0]?.noun ?? "sheet"} ${size}`;
  const seqs = [...new Set(from.map(({ seq }) => seq))];
  const isAlike = (other: Left) => other.pattern === row.pattern && other.size === size && !seqs.includes(other.seq);
  return row.isTakenUp && [...left.values()].some(isAlike) ? `${name} from cut ${seqs.join(" and ")}` : name;
}

/** Copies of a piece that is cut on while it lies there: each has all its cuts before the next is taken up. */
function throughSays(rows: readonly CutListRow[], i: number): string {
  const visitOf = (row: CutListRow | undefined) => row?.cuts.at(-1)?.visit;
  const row = itemAt(rows, i);
  const isCopies = row.cuts.length === 1 && firstOf(row.cuts).copies > 1;
  if (!isCopies || visitOf(rows[i - 1]) === visitOf(row)) return "";
  const last = rows.findLast((other) => visitOf(other) === visitOf(row)) ?? row;
  return last === row ? "" : `each through cut ${last.seq} before the next`;
}

/** Of each pattern, the sizes of its blanks and of what is cut on: scrap of the same size is easily taken for one. */
function usableSizes(rows: readonly CutListRow[], system: UnitSystem): ReadonlyMap<string, ReadonlySet<string>> {
  const sizes = new Map<string, Set<string>>();
  for (const { pattern, falls, stays } of rows) {
    const found = sizes.get(pattern) ?? new Set();
    sizes.set(pattern, found);
    for (const one of [...falls, ...stays])
      if (one.kind === "blank" || one.kind === "part") found.add(sizeOf(one, system));
  }
  return sizes;
}

interface Naming {
  readonly tags: ReadonlyMap<string, string>;
  readonly usable: ReadonlySet<string> | undefined;
  readonly system: UnitSystem;
}

function called(
  { kind, blank, count, pieces, ...size }: Yield,
  part: string,
  { tags, usable, system }: Naming,
): string {
  if (kind === "blank") return `${count} x ${blank}`;
  const measures = sizeOf(size, system);
  if (kind === "scrap") return counted(count, `scrap ${measures}${usable?.has(measures) ? " (not a blank)" : ""}`);
  if (kind === "remnant")
    return counted(count, `offcut ${[...new Set(pieces.map((piece) => tags.get(piece)))].join(", ")}, ${measures}`);
  return counted(count, `${part} ${measures}`);
}

/** Names a part that drops, and one that stays on the table to be cut further. */
const FALLS = { trim: "edge", strip: "strip", cross: "piece", size: "piece" } as const;
const STAYS = { trim: "sheet", strip: "rest of sheet", cross: "rest", size: "rest" } as const;

function liftSays(weight: number, rates: Rates, system: UnitSystem): string {
  const lift = liftOf(kilograms(weight), rates);
  const words = show(weight, "mass", system, 2);
  return lift === "one person" ? words : `${words}, ${lift}`;
}

const heaviest = (yields: readonly Yield[]): number => Math.max(0, ...yields.map(({ w, h }) => w * h));

function heavyDropSays(weight: number, rates: Rates, system: UnitSystem): string {
  const needsOne = liftOf(kilograms(weight), rates) !== "one person";
  return needsOne ? `${show(weight, "mass", system, 2)} drops: catcher` : "";
}

/** How it is measured, and on which side of the blade what is measured lies. */
function noteOf({ stage, by, measured, setting }: CutListRow): string {
  const what = { trim: "trim the edge", strip: "strip", cross: "crosscut", size: "to size" }[stage];
  if (by === "gauge") return `${what}, setting ${setting}`;
  return measured === "drops" ? `${what}, measure what drops` : `${what}, measure what stays on the table`;
}
