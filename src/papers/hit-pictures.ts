/** The pictures of the hits on a set-up sheet, as large as the rest of the sheet leaves room for. */
import type { LinePlan } from "../bill/lines/plan-line.ts";
import type { UnitSystem } from "../units/system.ts";
import type { Frame } from "./drawing/ink.ts";
import { gaugeDrawings, hitDrawings, type Picture } from "./line-drawings.ts";

interface HitPicture extends Picture {
  readonly isAtGauge: boolean;
  /** When the most metal stands about the punch. */
  readonly isLast: boolean;
}

/** Every hit at the gauge and at the bottom. */
export const hitPictures = (plan: LinePlan, system: UnitSystem, frame: Frame): HitPicture[] =>
  plan.strips.flatMap((strip, direction) => {
    const named = (picture: Picture): Picture =>
      direction === 0 ? picture : { ...picture, name: `Second direction: ${picture.name}` };
    const before = gaugeDrawings(plan, strip, direction, system, frame);
    const after = hitDrawings(plan, strip, system, frame);
    return after.flatMap((picture, i): HitPicture[] => [
      ...(before[i] ? [{ ...named(before[i]), isAtGauge: true, isLast: false }] : []),
      { ...named(picture), isAtGauge: false, isLast: i === after.length - 1 },
    ]);
  });

/** The bends that fail where no order was found. */
export const failingHits = (plan: LinePlan, system: UnitSystem, frame: Frame): Picture[] =>
  plan.strips
    .filter(({ order }) => !order.feasible)
    .flatMap((strip) => hitDrawings(plan, strip, system, frame).slice(-1));
/** Below what a held line says of its flat, and beside the words of a stop. */
export const FAILING_FRAME: Frame = { width: 150, height: 34, largest: 4 };
export const STOP_FRAME: Frame = { width: 57, height: 57, largest: 3 };

/** Two a row, a row a hit, four rows a sheet. */
export const ON_NEXT_SHEET = 8;
export const largeFrame = (plan: LinePlan): Frame => ({
  width: 88,
  height: ROWS_HIGH / Math.min(hitsIn(plan), ON_NEXT_SHEET / 2) - CAPTION,
});
const ROWS_HIGH = 222;

const hitsIn = ({ strips }: LinePlan): number => strips.reduce((sum, { part }) => sum + part.bends.length, 0);

interface BesideHits {
  /** Paragraphs, what is said small, why a line waits, and how high the flat is drawn, mm. */
  readonly said: readonly string[];
  readonly small: readonly string[];
  readonly held: readonly string[];
  readonly flat: number;
}

/** What is written about a line takes its height from the pictures; undefined where they need a sheet of their own. */
export function roomForHits(plan: LinePlan, { said, small, held, flat }: BesideHits): Frame | undefined {
  const hits = hitsIn(plan);
  const taken =
    HEAD +
    PARAGRAPH * linesOf(said, LETTERS_A_LINE) +
    SMALL * linesOf(small, LETTERS_A_LINE) +
    (held.length === 0 ? 0 : Math.max(BAND, HELD * (linesOf(held, LETTERS_BESIDE_HOLD) + 3))) +
    flat +
    TABLE_ROW * hits +
    MEASURES * Math.ceil((2 * hits + plan.strips.length + MEASURES_BESIDE) / MEASURES_A_ROW);
  const height = SHEET - taken - CAPTION;
  return height < LEAST_HIGH ? undefined : { width: hits > 1 ? 57 : 88, height: Math.min(MOST_HIGH, height) };
}
const linesOf = (texts: readonly string[], letters: number): number =>
  texts.reduce((sum, words) => sum + Math.ceil(words.length / letters), 0);

/** Heights on paper, mm: the sheet, its heading and figures with the frames of flat, table and first piece, a line of each. */
const SHEET = 256;
const HEAD = 86;
const PARAGRAPH = 5.6;
const SMALL = 4.2;
const BAND = 27;
const HELD = 4.7;
const TABLE_ROW = 7.6;
const MEASURES = 13.5;
const CAPTION = 16;
const LEAST_HIGH = 13;
const MOST_HIGH = 70;
const LETTERS_A_LINE = 100;
const LETTERS_BESIDE_HOLD = 46;
const MEASURES_A_ROW = 10;
const MEASURES_BESIDE = 4; // sheet, blank both ways, radius
