/** Sheet and tools at a hit, seen from the end of the bed, the back gauge to the right: at the gauge, and at the bottom. */

import { type BentPart, type Hit, type Outline, type Press, poseAtHit } from "../../bill/pictures.ts";
import { itemAt } from "../../units/certain.ts";
import type { Degrees, Millimeters } from "../../units/quantity.ts";
import { show, showMark, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { dimension } from "./dimension.ts";
import { type Drawn, type Frame, fitted, Ink, scaleSays, THICK, THIN } from "./ink.ts";
import { ring } from "./ring.ts";
import { boxOf, type Point } from "./svg.ts";

export interface PicturedHit {
  readonly part: BentPart;
  readonly press: Press;
  /** Numbers of the bends made before. */
  readonly finished: readonly number[];
  readonly hit: Hit;
  /** Overbend under load, degrees, and the angle that is read at the machine; undefined where nothing is known of it. */
  readonly springback: Degrees;
  readonly turnedTo: Degrees | undefined;
  readonly name: string;
  /** How the tools are known, in words; "" by their real outlines. */
  readonly drawn: string;
  /** What the plan found in the way, or, without words, where it is wrong though the hit can be made. */
  readonly obstacle: { readonly words: string | undefined; readonly isAtDie: boolean } | undefined;
  /** Where the back gauge stands; undefined where the plan sets none. */
  readonly stop: Millimeters | undefined;
}

const FRAME: Frame = { width: 57, height: 37 };
const LARGEST = 1.2; // times true size
const PUNCH_SHOWN = 0.6; // of the height of the rest: enough of the punch to know it by

/** Before the stroke: how the sheet lies at the gauge. Throws Refusal on an impossible part, tools or bend numbers. */
export function drawAtGauge(pictured: PicturedHit, system: UnitSystem, frame = FRAME): Drawn {
  const { part, press, finished, hit, springback, name, stop } = pictured;
  const { part: sheet, tools } = poseAtHit({ part, press, finished, hit, springback }, "flat");
  const { ink, scale } = fitted(frame, frame.largest ?? LARGEST, (scale) => {
    const { ink, die, tip } = drawTools({ sheet, tools, scale, isGaugeShown: true });
    if (stop !== undefined) {
      const [x, low] = [Math.min(...tools.finger.map(([fx]) => fx)) * scale, die.bottom];
      ink.line([0, tip], [0, low + 3], THIN, "3 0.8 0.6 0.8");
      if (x > 1) dimension(ink, { from: [x, low], to: [0, low], words: showMark(stop, system), bold: true });
    }
    return ink;
  });
  const setTo = stop === undefined ? "" : ` The gauge stands ${showMark(stop, system)} from the middle of the die.`;
  return {
    svg: ink.svg(`${name}: bend ${hit.bend} at the gauge`, `${SEEN}${setTo}`),
    words: [],
    height: ink.height,
    scale: scaleSays(scale),
  };
}

/** At the bottom of the stroke, with the least gap between the sheet and what is above it. Throws as the other one. */
export function drawEndOfBend(pictured: PicturedHit, system: UnitSystem, frame = FRAME): Drawn {
  const { part, press, finished, hit, springback, turnedTo, name, drawn, obstacle } = pictured;
  const { part: sheet, tools } = poseAtHit({ part, press, finished, hit, springback }, "loaded");
  const tip = Math.min(...tools.punch.map(([, y]) => y));
  const least = leastGap(sheet, [tools.punch, tools.ram], tip, part.thickness);
  const { angle } = itemAt(part.bends, hit.bend - 1);
  const { ink, scale } = fitted(frame, frame.largest ?? LARGEST, (scale) => {
    const { ink } = drawTools({ sheet, tools, scale, isGaugeShown: false });
    if (obstacle !== undefined) ring(ink, toPaper(obstacle.isAtDie || !least ? shorterEnd(sheet) : least.from, scale));
    else if (least) ink.line(toPaper(least.from, scale), toPaper(least.to, scale), THIN * 1.5, "1 0.6");
    return ink;
  });
  const words = [
    `to ${showNumber(Math.abs(angle))}°${turnedTo === undefined ? "" : `, under load ${showNumber(turnedTo)}°`}`,
    obstacle?.words ?? (least ? `least gap ${show(least.gap, "length", system, 3)}` : "nothing rises beside the punch"),
  ];
  const known = drawn === "" ? "" : `; ${drawn}`;
  return {
    svg: ink.svg(`${name}: end of bend ${hit.bend}`, `${SEEN} Bend ${hit.bend} ${words.join("; ")}${known}.`),
    words,
    height: ink.height,
    scale: scaleSays(scale),
  };
}

/** Where the leg ends that lies on the die the shorter way. */
function shorterEnd(sheet: Outline): Point {
  const left = sheet.reduce((a, b) => (b[0] < a[0] ? b : a));
  const right = sheet.reduce((a, b) => (b[0] > a[0] ? b : a));
  return -left[0] < right[0] ? left : right;
}

const SEEN = "Seen from the end of the bed, the back gauge to the right.";

const toPaper = ([x, y]: readonly [number, number], scale: number): Point => [x * scale, -y * scale];

interface ToDraw {
  readonly sheet: Outline;
  readonly tools: Readonly<Record<"punch" | "ram" | "die" | "bed" | "finger", Outline>>;
  readonly scale: number;
  readonly isGaugeShown: boolean;
}

/** Tools light with a thin edge, the sheet dark: the eye finds the part first. */
function drawTools({ sheet, tools, scale, isGaugeShown }: ToDraw) {
  const ink = new Ink();
  // A screen's y grows downward.
  const flip = (outline: Outline): Point[] => outline.map((corner) => toPaper(corner, scale));
  const [metal, punch, ram] = [flip(sheet), flip(tools.punch), flip(tools.ram)];
  const around = boxOf([...metal, ...flip(tools.die)]);
  const tip = Math.max(...punch.map(([, y]) => y));
  const size = Math.max(around.right - around.left, around.bottom - around.top);
  const top = Math.min(around.top, tip - size * PUNCH_SHOWN) - 2;
  // A deep die block is cut off below as the punch is above.
  const bottom = Math.min(around.bottom, boxOf(metal).bottom + size * DIE_SHOWN);
  const cut = (outline: readonly Point[]) => outline.map(([x, y]): Point => [x, Math.min(Math.max(y, top), bottom)]);
  for (const tool of [punch, ram]) if (tool.some(([, y]) => y > top)) ink.polygon(cut(tool), THIN * 1.5, 0.06);
  ink.polygon(cut(flip(tools.die)), THIN * 1.5, 0.06);
  if (isGaugeShown) ink.polygon(flip(tools.finger), THIN, 0.9);
  ink.polygon(metal, THICK / 2, 0.75);
  return { ink, die: { bottom }, tip };
}
const DIE_SHOWN = 0.5;

interface Gap {
  readonly gap: number;
  readonly from: Point;
  readonly to: Point;
}

/** From the corners of the sheet's ends and legs, away from the nose, to the nearest edge of the tools. */
function leastGap(sheet: Outline, tools: readonly Outline[], tip: number, thickness: number): Gap | undefined {
  let least: Gap | undefined;
  const risen = sheet.filter(([, y]) => y > tip + 3 * thickness);
  for (const from of risen)
    for (const tool of tools)
      tool.forEach((a, i) => {
        const to = nearestOn(a, itemAt(tool, (i + 1) % tool.length), from);
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
