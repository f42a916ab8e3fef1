/** Lists of one part: a range with one value a cell, or one cell of text "2; 3.5; 2". */
import { type CellValue, isBlank } from "../../units/cell.ts";
import { firstOf } from "../../units/certain.ts";
import { type Degrees, degrees, type Millimeters } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import type { ListParameter, ReadContext } from "../record/record.ts";
import { readBendAngle, readSignedBendAngle } from "./angle.ts";
import { readChoice } from "./choice.ts";
import { readLength } from "./length.ts";
import { readNumber } from "./number.ts";

const MOST_ITEMS = 100; // no part of this trade has more bends; a larger range is a slip

/** The items of a list as cells: text is cut at its semicolons, blanks at the end of a range are left out. */
function items(given: readonly CellValue[], name: string, what: string): CellValue[] {
  const single = given.length === 1 ? given[0] : undefined;
  const cells = typeof single === "string" ? single.split(";").map((item) => item.trim()) : [...given];
  while (cells.length > 0 && isBlank(cells.at(-1))) cells.pop();
  if (cells.length === 0) throw wrong(name, "given", null);
  if (cells.length > MOST_ITEMS)
    throw wrong(name, `a list of at most ${MOST_ITEMS} ${what}`, `${cells.length} of them`);
  if (cells.some(isBlank))
    throw wrong(
      name,
      `a list of ${what} without gaps`,
      typeof single === "string" ? single : null,
      'write "2; 3.5; 2"',
    );
  return cells;
}

const list =
  <T>(
    what: string,
    quantity: "length" | "angle" | undefined,
    readItem: (cell: CellValue, name: string, context: ReadContext) => T,
  ) =>
  (description: string): ListParameter<T[]> => ({
    shape: "list",
    type: `list of ${what}`,
    ...(quantity ? { quantity } : {}),
    description,
    optional: false,
    default: null,
    read: (given, name, context) => items(given, name, what).map((cell) => readItem(cell, name, context)),
  });

export const lengths = list<Millimeters>("lengths", "length", (cell, name, context) => readLength(cell, name, context));
/** Places along a line, from 0. */
export const positions = list<Millimeters>("lengths", "length", (cell, name, context) =>
  readLength(cell, name, context, { zero: true }),
);
export const bendAngles = list<Degrees>("bend angles", "angle", (cell, name) => readBendAngle(cell, name));

/** A flat plate has no bends: blank cells are an empty list, which `anglePerBend` refuses of any other part. */
const orNone = <T>(parameter: ListParameter<T[]>): ListParameter<T[]> => ({
  ...parameter,
  description: `${parameter.description}; blank for a flat plate`,
  read: (given, name, context) => (given.every(isBlank) ? [] : parameter.read(given, name, context)),
});

/** Of the bends of one part, negative where one goes down. */
export const signedBendAngles = (description: string): ListParameter<Degrees[]> =>
  orNone(list<Degrees>("bend angles", "angle", (cell, name) => readSignedBendAngle(cell, name))(description));
export const bendSequence = (description: string): ListParameter<number[]> =>
  orNone(
    list<number>("bend numbers", undefined, (cell, name) =>
      readNumber(cell, name, { from: 1, to: MOST_ITEMS, whole: true }, "bend number"),
    )(description),
  );

const ENDS = ["first", "last"] as const;
/** Which end of the part is against the gauge, hit by hit. Blank: the first, every time. */
export const gaugedEnds = (description: string): ListParameter<(typeof ENDS)[number][]> => {
  const base = list<(typeof ENDS)[number]>('"first" or "last"', undefined, (cell, name) =>
    readChoice(cell, name, ENDS),
  )(description);
  return {
    ...base,
    optional: true,
    default: "first",
    read: (given, name, context) => (given.every(isBlank) ? ["first"] : base.read(given, name, context)),
  };
};

/** "2,3" is one length with a decimal comma. */
export const ONE_FLANGE = 'write "2; 3", since 2,3 is one length; a flat plate has no angle';

/** Bends are one fewer than flanges; one angle stands for all, and a part of one flange has none. */
export function anglePerBend(flanges: readonly Millimeters[], angles: readonly Degrees[]): Degrees[] {
  const bends = flanges.length - 1;
  if (bends === 0 && angles.some((angle) => angle !== 0))
    throw wrong("flanges", "two or more where a bend angle is given", "1 of them", ONE_FLANGE);
  if (angles.length === 1) return Array.from({ length: bends }, () => firstOf(angles));
  if (angles.length !== bends)
    throw wrong(
      "bend_angles",
      `one angle for all, or one fewer than the flanges (${bends})`,
      angles.length === 0 ? null : `${angles.length} of them`,
    );
  return [...angles];
}

/** The same without their signs: which way a bend goes changes no length. */
export const turnPerBend = (flanges: readonly Millimeters[], angles: readonly Degrees[]): Degrees[] =>
  anglePerBend(flanges, angles).map((angle) => degrees(Math.abs(angle)));

const MOST_PIECES = 1_000_000; // more than this trade orders of one part
export const quantities = list<number>("quantities", undefined, (cell, name) =>
  readNumber(cell, name, { from: 1, to: MOST_PIECES, whole: true }, "quantity"),
);
