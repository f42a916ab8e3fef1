/** The pictures of a line: bent, flat, and the tools at its bends. */

import { drawnSays } from "../bill/drawn-says.ts";
import { type BentStrip, hitsOf, turnedTo } from "../bill/lines/bent-strip.ts";
import type { LinePlan } from "../bill/lines/plan-line.ts";
import { bentStrips } from "../bill/nouns/line.ts";
import { type Hit, obstacleInWords } from "../bill/pictures.ts";
import { itemAt } from "../units/certain.ts";
import { degrees } from "../units/quantity.ts";
import type { UnitSystem } from "../units/system.ts";
import { gaugedOff } from "./back-gauge.ts";
import { drawBentProfile } from "./drawing/bent-profile.ts";
import { drawAtGauge, drawEndOfBend, type PicturedHit } from "./drawing/end-of-bend.ts";
import { drawFlat } from "./drawing/flat-blank.ts";
import type { Drawn, Frame } from "./drawing/ink.ts";
import type { FaultPlace } from "./fault-place.ts";
import { moveOf } from "./moves.ts";

export interface Picture extends Drawn {
  readonly name: string;
  /** How the sheet is laid for a hit. */
  readonly mark?: string;
  readonly kind: "bent" | "flat" | "hit";
  /** A hit that cannot be made. */
  readonly fails?: true;
  /** What is wrong with the line is marked on it. */
  readonly isMarked?: boolean;
}

/**
 * Bent, flat and the end of every hit in its order; where there is no order, the bend that fails.
 * @param fault what is marked, on the first direction.
 */
export function lineDrawings(plan: LinePlan, system: UnitSystem, fault?: FaultPlace): Picture[] {
  const flat = flatDrawing(plan, system, fault);
  const hits = (strip: BentStrip, i: number) => [
    ...hitsBefore(plan, strip, system),
    ...hitDrawings(plan, strip, system, undefined, i === 0 ? fault : undefined),
  ];
  const tools = plan.strips.flatMap((strip, i) => hits(strip, i).map(inDirection(i)));
  return [...bentDrawings(plan, system, fault), ...(flat ? [flat] : []), ...tools];
}

export const bentDrawings = ({ line, strips }: LinePlan, system: UnitSystem, fault?: FaultPlace): Picture[] =>
  strips.map(({ part }, i) => {
    const own = i === 0 && fault?.kind === "bent" ? fault : undefined;
    return {
      name: i === 0 ? "Bent" : "Bent, second direction",
      kind: "bent",
      ...drawBentProfile(part, system, line.part, undefined, own),
      ...(own && {
        isMarked: true,
        ...("holesFrom" in own && { words: ["keep holes out of the marked stretch"] }),
      }),
    };
  });

const inDirection =
  (direction: number) =>
  (picture: Picture): Picture =>
    direction === 0 ? picture : { ...picture, name: `Second direction: ${picture.name}` };

/** undefined where the bends are not known: the flat of a part that is bent would be taken for a plate. */
export function flatDrawing(
  { line, blank, strips }: LinePlan,
  system: UnitSystem,
  fault?: FaultPlace,
): Picture | undefined {
  if (strips.length !== bentStrips(line).length) return undefined;
  const [first, second] = strips;
  const plate = { thickness: line.thickness, flanges: [blank.length], bends: [] };
  // Bends of the cross strip alone run the other way over the blank, and so does the grain it is cut with.
  const isTurned = first !== undefined && bentStrips(line)[0] !== line.main;
  const side = fault?.kind === "flat" ? fault.side : undefined;
  const isAcross = (side === "length") !== isTurned;
  const drawn = drawFlat(first?.part ?? plate, isTurned ? blank.length : blank.width, system, {
    name: line.part,
    grain: blank.grain === "" ? "any" : (blank.grain === "length") === isTurned ? "along" : "across",
    gaugedEnd: first && hitsOf(first)[0]?.gaugedEnd,
    cross: second?.part,
    fault: side === undefined || side === "bend lines" ? side : isAcross ? "across" : "up",
  });
  return { name: "Flat", kind: "flat", ...drawn, ...(side && { isMarked: true }) };
}

/** The end of every bend in its order; where there is none, the bend that fails and what it meets. */
export function hitDrawings(
  { line }: LinePlan,
  strip: BentStrip,
  system: UnitSystem,
  frame?: Frame,
  fault?: FaultPlace,
): Picture[] {
  const { order } = strip;
  if (order.feasible)
    return picturedHits(strip, line.part).map((pictured, i) => {
      const own = fault?.kind === "hit" && fault.bend === pictured.hit.bend ? fault : undefined;
      const hit = own?.rests ? { ...pictured, obstacle: { words: undefined, isAtDie: true } } : pictured;
      return {
        name: `Hit ${i + 1}: end of bend ${hit.hit.bend}`,
        kind: "hit",
        ...drawEndOfBend(hit, system, frame),
        ...(own && { isMarked: true }),
      };
    });
  const [fails] = order.blocked;
  if (!fails) return [];
  const obstacle = { words: obstacleInWords(fails.obstacle), isAtDie: fails.obstacle.tool === "die opening" };
  const hit = pictured(strip, line.part, fails, { finished: order.finished, obstacle, stop: undefined });
  const picture = drawEndOfBend(hit, system, frame);
  return [{ name: `No order: bend ${fails.bend} fails`, kind: "hit", fails: true, ...picture }];
}

/** Where there is no order: the hits that can be made before the one that fails. */
const hitsBefore = ({ line }: LinePlan, strip: BentStrip, system: UnitSystem): Picture[] =>
  (strip.order.feasible ? [] : strip.order.finished).map((hit, i, all) => ({
    name: `Hit ${i + 1}: end of bend ${hit.bend}`,
    kind: "hit",
    ...drawEndOfBend(
      pictured(strip, line.part, hit, { finished: all.slice(0, i), obstacle: undefined, stop: undefined }),
      system,
    ),
  }));

/** How the sheet lies at the gauge before every hit; none where there is no order. */
export const gaugeDrawings = (
  { line }: LinePlan,
  strip: BentStrip,
  direction: number,
  system: UnitSystem,
  frame?: Frame,
): Picture[] =>
  picturedHits(strip, line.part).map((pictured, i) => {
    const hit = itemAt(hitsOf(strip), i);
    const { words, mark } = moveOf(hit, strip, { isFirst: i === 0, direction });
    return {
      name: `Hit ${i + 1}: at the gauge`,
      kind: "hit",
      ...drawAtGauge(pictured, system, frame),
      mark,
      words: [words, `${gaugedOff(hit, direction, system)} to the gauge`],
    };
  });

function picturedHits(strip: BentStrip, name: string): PicturedHit[] {
  const { order } = strip;
  if (!order.feasible) return [];
  return order.hits.map((hit, i) =>
    pictured(strip, name, hit, { finished: order.hits.slice(0, i), obstacle: undefined, stop: hit.stop }),
  );
}

const pictured = (
  strip: BentStrip,
  name: string,
  hit: Hit,
  { finished, ...rest }: Pick<PicturedHit, "obstacle" | "stop"> & { readonly finished: readonly Hit[] },
): PicturedHit => ({
  part: strip.part,
  press: strip.press,
  drawn: drawnSays(strip),
  name,
  hit,
  springback: strip.springback[hit.bend - 1] ?? degrees(0),
  turnedTo: turnedTo(strip, hit.bend),
  finished: finished.map(({ bend }) => bend),
  ...rest,
});
