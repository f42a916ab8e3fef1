/** Punch, die and sheet at the end of a bend, with the least gap between the sheet and what is above it. */
import { type BentPart, type Hit, type Outline, type Press, poseAtHit } from "../../bill/pictures.ts";
import type { Degrees } from "../../units/quantity.ts";
import { show, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { boxOf, drawing, LETTERS, line, type Point, polygon, text } from "./svg.ts";

export interface EndOfBend {
  readonly part: BentPart;
  readonly press: Press;
  /** Numbers of the bends made before. */
  readonly finished: readonly number[];
  readonly hit: Hit;
  /** Overbend under load, degrees. */
  readonly springback: Degrees;
  readonly name: string;
  /** How the tools are known, in words; "" by their real outlines. */
  readonly drawn: string;
  /** What the plan found in the way; undefined where the hit can be made. */
  readonly obstacle: string | undefined;
}

/** Height of letters as a share of the drawing. */
const LETTER = 1 / 17;

/** Throws Refusal on an impossible part, tools or bend numbers. */
export function drawEndOfBend(
  { part, press, finished, hit, springback, name, drawn, obstacle }: EndOfBend,
  system: UnitSystem,
): string {
  const { part: sheet, tools } = poseAtHit(part, press, finished, hit, springback, "loaded");
  // A screen's y grows downward.
  const flip = (outline: Outline): Point[] => outline.map(([x, y]): Point => [x, -y]);
  const [metal, punch, die, ram] = [flip(sheet), flip(tools.punch), flip(tools.die), flip(tools.ram)];
  const around = boxOf([...metal, ...die]);
  const size = Math.max(around.right - around.left, around.bottom - around.top);
  const letter = size * LETTER;
  const tip = Math.max(...punch.map(([, y]) => y));
  // The punch reaches out of the picture: enough of it is shown to know it by.
  const top = Math.min(around.top, tip - size / 2) - letter;
  const least = leastGap(metal, [punch, ram], tip, part.thickness);
  const length = (value: number) => show(value, "length", system, 3);
  const { angle } = part.bends[hit.bend - 1]!;
  const words = [
    `bend ${hit.bend} to ${showNumber(Math.abs(angle))}°, under load ${showNumber(Math.abs(angle) + springback, 3)}°`,
    obstacle ?? (least ? `least gap above the sheet ${length(least.gap)}` : "nothing rises beside the punch"),
    ...drawn.split("; ").filter((words) => words !== ""),
  ];
  const box = {
    left: around.left,
    right: around.right,
    top,
    bottom: around.bottom + letter * (1.5 * words.length + 0.7),
  };
  const hatched = { "stroke-width": letter / 8 };
  return drawing(
    {
      title: `${name}: end of bend ${hit.bend}`,
      description: `Seen from the end of the bed, the back gauge to the right. ${words.join("; ")}.`,
      box,
      margin: letter,
      letter,
    },
    polygon(clipped(punch, top), hatched),
    polygon(clipped(ram, top), hatched),
    polygon(die, hatched),
    polygon(metal, { fill: "currentColor", "fill-opacity": 0.3, "stroke-width": letter / 12 }),
    least && obstacle === undefined
      ? line(least.from, least.to, { "stroke-width": letter / 10, "stroke-dasharray": `${letter / 4} ${letter / 6}` })
      : "",
    text([(box.left + box.right) / 2, box.bottom - letter * (1.5 * words.length - 1)], words[0]!, LETTERS),
    ...words.slice(1).map((word, i) =>
      text([(box.left + box.right) / 2, box.bottom - letter * (1.5 * (words.length - 1 - i) - 1)], word, {
        ...LETTERS,
        "font-size": letter * 0.85,
      }),
    ),
  );
}

/** What lies above the picture is cut off along its upper edge. */
const clipped = (outline: readonly Point[], top: number): Point[] =>
  outline.map(([x, y]): Point => [x, Math.max(y, top)]);

interface Gap {
  readonly gap: number;
  readonly from: Point;
  readonly to: Point;
}

/** From the corners of the sheet's ends and legs, away from the nose, to the nearest edge of the tools. */
function leastGap(
  sheet: readonly Point[],
  tools: readonly (readonly Point[])[],
  tip: number,
  thickness: number,
): Gap | undefined {
  let least: Gap | undefined;
  const risen = sheet.filter(([, y]) => y < tip - 3 * thickness);
  for (const from of risen)
    for (const tool of tools)
      tool.forEach((a, i) => {
        const to = nearestOn(a, tool[(i + 1) % tool.length]!, from);
        const gap = Math.hypot(to[0] - from[0], to[1] - from[1]);
        if (!least || gap < least.gap) least = { gap, from, to };
      });
  return least;
}

function nearestOn([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): Point {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square));
  return [ax + share * dx, ay + share * dy];
}
