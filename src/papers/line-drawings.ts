/** The pictures of a line: bent, flat, and the tools at the end of its bends. */
import { drawnSays } from "../bill/drawn-says.ts";
import { type BentStrip, hitsOf } from "../bill/lines/bent-strip.ts";
import type { LinePlan } from "../bill/lines/plan-line.ts";
import { bentStrips } from "../bill/nouns/line.ts";
import { type Hit, obstacleInWords } from "../bill/pictures.ts";
import { degrees } from "../units/quantity.ts";
import type { UnitSystem } from "../units/system.ts";
import { drawBentProfile } from "./drawing/bent-profile.ts";
import { drawEndOfBend } from "./drawing/end-of-bend.ts";
import { drawFlat } from "./drawing/flat-blank.ts";

export interface Picture {
  readonly name: string;
  readonly svg: string;
}

/** @param hits which pictures of the tools: of every bend, or of the last of each direction. Where there is no order, the bend that fails. */
export function lineDrawings(plan: LinePlan, system: UnitSystem, hits: "every" | "last"): Picture[] {
  const { line, strips } = plan;
  const bent = strips.map(({ part }, i) => ({
    name: i === 0 ? "Bent" : "Bent, second direction",
    svg: drawBentProfile(part, system, line.part),
  }));
  const tools = strips.flatMap((strip, i) =>
    hitPictures(strip, line.part, system)
      .slice(hits === "every" ? 0 : -1)
      .map(({ name, svg }) => ({ name: i === 0 ? name : `Second direction: ${name}`, svg })),
  );
  // Without its bend lines the flat of a part that is bent would be taken for a plate.
  const isWhole = strips.length === bentStrips(line).length;
  return [...bent, ...(isWhole ? [{ name: "Flat", svg: flat(plan, system) }] : []), ...tools];
}

function flat({ line, blank, strips }: LinePlan, system: UnitSystem): string {
  const [first, second] = strips;
  const plate = { thickness: line.thickness, flanges: [blank.length], bends: [] };
  // Bends of the cross strip alone run the other way over the blank, and so does their grain.
  const isTurned = first !== undefined && bentStrips(line)[0] !== line.main;
  const turned = line.grain === "across" ? "along" : line.grain === "along" ? "across" : undefined;
  return drawFlat(first?.part ?? plate, isTurned ? blank.length : blank.width, system, {
    name: line.part,
    grain: isTurned ? turned : line.grain,
    gaugedEnd: first && hitsOf(first)[0]?.gaugedEnd,
    cross: second?.part,
  });
}

/** The end of every bend in its order; where there is none, the bend that fails and what it meets. */
function hitPictures(strip: BentStrip, name: string, system: UnitSystem): Picture[] {
  const { part, press, order } = strip;
  const drawn = drawnSays(strip);
  const draw = (hit: Hit, finished: readonly Hit[], obstacle: string | undefined) => {
    const springback = strip.springback[hit.bend - 1] ?? degrees(0);
    const made = finished.map(({ bend }) => bend);
    return drawEndOfBend({ part, press, finished: made, hit, springback, name, drawn, obstacle }, system);
  };
  if (order.feasible)
    return order.hits.map((hit, i) => ({
      name: `Hit ${i + 1}: end of bend ${hit.bend}`,
      svg: draw(hit, order.hits.slice(0, i), undefined),
    }));
  const [fails] = order.blocked;
  if (!fails) return [];
  const svg = draw(fails, order.finished, obstacleInWords(fails.obstacle));
  return [{ name: `No order: bend ${fails.bend} fails`, svg }];
}
