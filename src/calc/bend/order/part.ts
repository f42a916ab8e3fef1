import { type Degrees, type Millimetres, mm, radians } from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";

/** A bend as it is on the finished part. */
export interface Bend {
  /** Signed: positive towards the face that is up when the blank lies face up, negative away from it. 0 < |angle| < 180. */
  readonly angle: Degrees;
  /** Mold-line deduction of this bend, taken from the sum of its two outside flanges. */
  readonly deduction: Millimetres;
  /** Radius of the round that is tangent to both flanges, on the inside. */
  readonly insideRadius: Millimetres;
}

/** A strip with parallel bends, seen from its end: flange 1, bend 1, flange 2, ... bend n, flange n + 1. */
export interface BentPart {
  readonly thickness: Millimetres;
  /** Outside lengths to the mold lines (the corners the outside faces would make without rounds); one more than bends. */
  readonly flanges: readonly Millimetres[];
  readonly bends: readonly Bend[];
}

export const MOST_BENDS = 10;

/** Outside setback: from the tangent line to the mold line, (r + t) tan(A / 2) (FAA-H-8083-31 vol. 1 ch. 4, read). */
export const setback = (part: BentPart, bend: Bend): Millimetres =>
  mm((bend.insideRadius + part.thickness) * Math.tan(radians(bend.angle) / 2) * Math.sign(bend.angle));

/** Flat length of the bend zone, from BD = 2 SB - BA (derived). */
export const allowance = (part: BentPart, bend: Bend): Millimetres => mm(2 * setback(part, bend) - bend.deduction);

/** Straight length of every leg between the tangent lines of its bends: the outside flange less its setbacks. */
export const straightLengths = (part: BentPart): Millimetres[] =>
  part.flanges.map((flange, leg) => {
    const before = part.bends[leg - 1];
    const after = part.bends[leg];
    return mm(flange - (before ? setback(part, before) : 0) - (after ? setback(part, after) : 0));
  });

/**
 * Where every bend line lies on the flat blank, from the first edge. A bend line is the middle of its bend zone:
 * flanges before it less the deductions before it less half its own (derived; exact whatever way the bends turn).
 */
export function bendLines(part: BentPart): Millimetres[] {
  let edge = 0;
  return part.bends.map((bend, i) => {
    const line = edge + part.flanges[i]! - bend.deduction / 2;
    edge += part.flanges[i]! - bend.deduction;
    return mm(line);
  });
}

export const flatLength = (part: BentPart): Millimetres =>
  mm(part.flanges.reduce((sum, f) => sum + f, 0) - part.bends.reduce((sum, b) => sum + b.deduction, 0));

const refuse = (parameter: string, rule: string, got: unknown, hint = ""): never => {
  throw new Refusal("#VALUE!", `${parameter} must be ${rule}; got ${got}${hint && `; ${hint}`}`);
};
const short = (value: number) => Number(value.toPrecision(4));

/** Refuses a part that no sheet can be. Numbers in messages are millimetres and degrees. */
export function checkPart(part: BentPart): void {
  const { thickness, flanges, bends } = part;
  if (!(thickness > 0 && thickness < Infinity)) refuse("thickness", "above 0 mm", thickness);
  if (bends.length < 1 || bends.length > MOST_BENDS)
    refuse("bend_angles", `1 to ${MOST_BENDS} parallel bends`, bends.length);
  if (flanges.length !== bends.length + 1)
    refuse("flanges", `one more than the bends (${bends.length + 1})`, flanges.length);
  bends.forEach(({ angle, deduction, insideRadius }, i) => {
    const name = `of bend ${i + 1}`;
    if (!(Math.abs(angle) > 0 && Math.abs(angle) < 180))
      refuse(`angle ${name}`, "above 0 and below 180 degrees, negative for a bend the other way", angle);
    if (!(insideRadius >= 0 && insideRadius < Infinity)) refuse(`inside radius ${name}`, "0 mm or more", insideRadius);
    // The neutral fibre lies inside the sheet, so the zone is as long as some fibre between inner and outer face.
    const turned = Math.abs(radians(angle));
    const [most, least] = [0, thickness].map((depth) => 2 * setback(part, bends[i]!) - turned * (insideRadius + depth));
    if (!(deduction >= least! - 1e-9 && deduction <= most! + 1e-9 && allowance(part, bends[i]!) > 0))
      refuse(
        `deduction ${name}`,
        `${short(least!)} to ${short(most!)} mm for its angle, radius and thickness`,
        short(deduction),
        "deduction and inside radius must describe the same bend",
      );
  });
  straightLengths(part).forEach((straight, leg) => {
    if (!(straight >= -1e-9 && straight < Infinity))
      refuse(
        `flange ${leg + 1}`,
        `an outside length of at least its setbacks (${short(flanges[leg]! - straight)} mm)`,
        short(flanges[leg]!),
      );
  });
}
