/**
 * The ways strips can be laid: per sheet kind and direction of the first cuts, and which pieces lie how in them. Views
 * whose pieces lie the same way share one group, since one sweep over the pieces prices the strips of all of them.
 */
import { itemAt } from "../../units/certain.ts";
import { mustStayInFront } from "./gauge-rule.ts";
import { ALONG_Y, type Direction, type Problem } from "./problem.ts";

/** A piece, or a few of it stacked across the strip, lying one way. */
export interface StripOption {
  readonly item: number;
  readonly along: number;
  readonly across: number;
  readonly stack: number;
}

/** One way to lay strips on one sheet kind. */
export interface StripView {
  readonly sheet: number;
  /** Direction in which the strips follow each other. */
  readonly direction: Direction;
  readonly length: number;
  readonly height: number;
}

export interface ViewGroup {
  /** By rising width of the strip they need. */
  readonly options: readonly StripOption[];
  readonly views: readonly StripView[];
}

export function viewGroups(problem: Problem, mostStacked: number): ViewGroup[] {
  const groups = new Map<string, { options: StripOption[]; views: StripView[] }>();
  problem.sheets.forEach((sheet, s) => {
    for (const direction of sheet.roots) {
      const options = optionsOf(problem, s, direction, mostStacked);
      // Same key, same options: only which side lies along matters, not the name of the turn.
      const key = options.map(({ item, along, stack }) => `${item}:${along}x${stack}`).join();
      const group = groups.get(key) ?? { options, views: [] };
      groups.set(key, group);
      const [length, height] = direction === ALONG_Y ? [sheet.w, sheet.h] : [sheet.h, sheet.w];
      group.views.push({ sheet: s, direction, length, height });
    }
  });
  return [...groups.values()];
}

function optionsOf(problem: Problem, sheet: number, direction: Direction, mostStacked: number): StripOption[] {
  const options: StripOption[] = [];
  problem.items.forEach(({ w, h, quantity }, item) => {
    for (const turned of [false, true]) {
      const allowed = itemAt(turned ? problem.turned : problem.plain, sheet)[item] === 1;
      if (!allowed || (turned && w === h)) continue;
      const [along, across] = turned === (direction === ALONG_Y) ? [h, w] : [w, h];
      for (let stack = 1; stack <= Math.min(mostStacked, quantity); stack++) {
        if (stack > 1 && !canStack(problem, across)) break;
        options.push({ item, along, across: across * stack, stack });
      }
    }
  });
  return options.sort((a, b) => a.across - b.across || a.along - b.along || a.item - b.item || a.stack - b.stack);
}

const canStack = ({ rule }: Problem, across: number): boolean =>
  !mustStayInFront(across, rule) && across >= rule.leastHold;
