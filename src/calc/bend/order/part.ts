import { itemAt } from "../../../units/certain.ts";
import { type Degrees, type Millimeters, mm, radians } from "../../../units/quantity.ts";
import { message, Refusal, wrong } from "../../../units/refusal.ts";
import { showBoth } from "../../../units/show.ts";

/** A bend as it is on the finished part. */
export interface Bend {
  /** Signed: positive towards the face that is up when the blank lies face up, negative away from it. 0 < |angle| < 180. */
  readonly angle: Degrees;
  /** Mold-line deduction of this bend, taken from the sum of its two outside flanges. */
  readonly deduction: Millimeters;
  /** Radius of the round that is tangent to both flanges, on the inside. */
  readonly insideRadius: Millimeters;
}

/** A strip with parallel bends, seen from its end: flange 1, bend 1, flange 2, ... bend n, flange n + 1. */
export interface BentPart {
  readonly thickness: Millimeters;
  /** Outside lengths to the mold lines (the corners the outside faces would make without rounds); one more than bends. */
  readonly flanges: readonly Millimeters[];
  readonly bends: readonly Bend[];
}

/** Bends are counted from 1. */
export const bendOf = ({ bends }: BentPart, number: number): Bend => itemAt(bends, number - 1);

export const MOST_BENDS = 10;

/** Outside setback: from the tangent line to the mold line, (r + t) tan(A / 2) (FAA-H-8083-31 vol. 1 ch. 4, read). */
export const setback = (part: BentPart, bend: Bend): Millimeters =>
  mm((bend.insideRadius + part.thickness) * Math.tan(radians(bend.angle) / 2) * Math.sign(bend.angle));

/** Flat length of the bend zone, from BD = 2 SB - BA (derived). */
export const allowance = (part: BentPart, bend: Bend): Millimeters => mm(2 * setback(part, bend) - bend.deduction);

/** Straight length of every leg between the tangent lines of its bends: the outside flange less its setbacks. */
export const straightLengths = (part: BentPart): Millimeters[] =>
  part.flanges.map((flange, leg) => {
    const before = part.bends[leg - 1];
    const after = part.bends[leg];
    return mm(flange - (before ? setback(part, before) : 0) - (after ? setback(part, after) : 0));
  });

/**
 * Where every bend line lies on the flat blank, from the first edge. A bend line is the middle of its bend zone:
 * flanges before it less the deductions before it less half its own (derived; exact whatever way the bends turn).
 */
export function bendLines(part: BentPart): Millimeters[] {
  let edge = 0;
  return part.bends.map((bend, i) => {
    const line = edge + itemAt(part.flanges, i) - bend.deduction / 2;
    edge += itemAt(part.flanges, i) - bend.deduction;
    return mm(line);
  });
}

export const flatOfPart = (part: BentPart): Millimeters =>
  mm(part.flanges.reduce((sum, f) => sum + f, 0) - part.bends.reduce((sum, b) => sum + b.deduction, 0));

const length = (value: number) => showBoth(value, "length");

/** @throws Refusal on a part that no sheet can be. */
export function checkPart(part: BentPart): void {
  const { thickness, flanges, bends } = part;
  if (!(thickness > 0 && thickness < Infinity)) throw wrong("thickness", "above 0", thickness);
  if (bends.length < 1 || bends.length > MOST_BENDS)
    throw wrong("bend_angles", `1 to ${MOST_BENDS} parallel bends`, bends.length);
  if (flanges.length !== bends.length + 1)
    throw wrong("flanges", `one more than the bends (${bends.length + 1})`, flanges.length);
  bends.forEach((bend, i) => {
    checkBend(part, bend, `of bend ${i + 1}`);
  });
  straightLengths(part).forEach((straight, leg) => {
    if (straight >= -1e-9 && straight < Infinity) return;
    const least = length(itemAt(flanges, leg) - straight);
    const rule = `an outside length of at least its setbacks, ${least}`;
    throw new Refusal("#VALUE!", message(`flange ${leg + 1}`, rule, length(itemAt(flanges, leg))));
  });
}

function checkBend(part: BentPart, bend: Bend, name: string): void {
  const { angle, deduction, insideRadius } = bend;
  if (!(Math.abs(angle) > 0 && Math.abs(angle) < 180))
    throw wrong(`angle ${name}`, "above 0 and below 180 degrees, negative for a bend the other way", angle);
  if (!(insideRadius >= 0 && insideRadius < Infinity)) throw wrong(`inside radius ${name}`, "0 or more", insideRadius);
  // The neutral fiber lies inside the sheet, so the zone is as long as some fiber between inner and outer face.
  const turned = Math.abs(radians(angle));
  const zone = allowance(part, bend);
  const [shortest, longest] = [turned * insideRadius, turned * (insideRadius + part.thickness)];
  if (zone > 0 && zone >= shortest - 1e-9 && zone <= longest + 1e-9) return;
  const setbacks = 2 * setback(part, bend);
  const rule = `${length(setbacks - longest)} to ${length(setbacks - shortest)} for its angle, radius and thickness`;
  const hint = "deduction and inside radius must describe the same bend";
  throw new Refusal("#VALUE!", message(`deduction ${name}`, rule, length(deduction), hint));
}
