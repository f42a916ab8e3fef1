/** What the brake operator has at the machine for one line: what to set, the flat, every hit, the first piece. */
import { lineName } from "../bill/line-name.ts";
import type { LinePlan } from "../bill/lines/plan-line.ts";
import { bentStrips } from "../bill/nouns/line.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import { type Release, releaseOf } from "../bill/release.ts";
import { notCheckedSays, notesSay } from "../bill/says.ts";
import { show, showForce, showMark, showNumber } from "../units/show.ts";
import { type UnitSystem, unitName } from "../units/system.ts";
import { backGauge } from "./back-gauge.ts";
import { cautionsOfLine, isCaution } from "./cautions.ts";
import type { Frame } from "./drawing/ink.ts";
import { firstPiece } from "./first-piece.ts";
import { bentDrawings, flatDrawing, gaugeDrawings, hitDrawings, type Picture } from "./line-drawings.ts";
import { lineProblems } from "./line-words.ts";
import { BLANK, BOX, heading, type KeyFigure, keyFigures, list, paragraph, text } from "./page.ts";

/** One string a sheet of paper. @param setUp which set-up of how many; "" for a line that stands in none. */
export function setUpSheets(line: LineAnswer, plan: BillPlan, setUp: string): string[] {
  const release = releaseOf(line);
  const planned = line.plan;
  if (release === "STOP" || !planned) return [stopSheet(line, plan)];
  const { system } = plan.shop;
  const head = [
    heading(lineName(line), release),
    paragraph(about(planned, system)),
    keyFigures(figuresOf(planned, system)),
    paragraph(where(line, planned, setUp)),
    list(lineProblems(line, plan), release === "HOLD" ? "held" : "findings"),
    WAITS[release],
  ].join("\n");
  const flat = gallery([flatDrawing(planned, system), ...bentDrawings(planned, system)]);
  const last = [firstPiece(planned, system), minding(line, planned, plan)].join("\n");
  if (bentStrips(planned.line).length === 0) return [[head, flat, "<p>No bends: cut only.</p>", last].join("\n")];
  const work = brakeWork(planned, plan);
  const pictures = hitPictures(planned, system, pictureFrame(line, planned, plan)).filter(
    ({ isLast, isAtGauge }) => isLast || isAtGauge,
  );
  if (pictures.length <= ON_ONE_SHEET) return [[head, flat, gallery(pictures), work, last].join("\n")];
  // Too much for one sheet: what is set and measured on the first, how it goes hit by hit on the next.
  const large = hitPictures(planned, system, LARGE_FRAME);
  const again = heading(`${lineName(line)}, hit by hit`, release);
  const sheets = Array.from({ length: Math.ceil(large.length / ON_NEXT_SHEET) }, (_, i) =>
    [again, gallery(large.slice(i * ON_NEXT_SHEET, (i + 1) * ON_NEXT_SHEET), "pairs")].join("\n"),
  );
  return [[head, flat, work, last].join("\n"), ...sheets];
}
const ON_ONE_SHEET = 3;
const ON_NEXT_SHEET = 8;

const WAITS: Readonly<Record<Exclude<Release, "STOP">, string>> = {
  HOLD: `<p><strong>Wait until somebody accepts this.</strong> Accepted by ${BLANK} date ${BLANK}</p>`,
  CHECK: "",
  CLEAR: "",
};

/** A hand's height says it, so that nobody at the machine reads past it. */
function stopSheet(line: LineAnswer, plan: BillPlan): string {
  const { system } = plan.shop;
  const planned = line.plan;
  const failing = planned?.strips.filter(({ order }) => !order.feasible) ?? [];
  return [
    heading(lineName(line), "STOP"),
    planned ? paragraph(about(planned, system)) : "",
    '<div class="beside"><div><p class="halt">STOP</p>',
    "<p><strong>Do not make this part before this is settled.</strong></p>",
    list(lineProblems(line, plan), "reasons"),
    `<p>Settled by ${BLANK} date ${BLANK} &nbsp; new papers printed ${BOX}</p></div>`,
    planned
      ? gallery([
          ...bentDrawings(planned, system),
          ...failing.flatMap((strip) => hitDrawings(planned, strip, system).slice(-1)),
        ])
      : "",
    "</div>",
  ].join("\n");
}

function about({ line, blank, blanks }: LinePlan, system: UnitSystem): string {
  const extra = blanks - line.quantity;
  return [
    line.description,
    `${line.material.name} ${show(line.thickness, "length", system)}`,
    `${showNumber(line.quantity, 7)}${extra > 0 ? ` + ${showNumber(extra, 7)}` : ""} pieces`,
    `${show(blank.weight, "mass", system, 3)} each`,
  ]
    .filter((words) => words !== "")
    .join(" · ");
}

/** What is set by stands in large letters. */
function figuresOf({ blank, bend, force, strips }: LinePlan, system: UnitSystem): KeyFigure[] {
  const mark = (value: number): [string, string] => {
    const [decimal = "", fraction = ""] = showMark(value, system).split(" · ");
    return [decimal, fraction];
  };
  const [[length, lengthMark], [width, widthMark]] = [mark(blank.length), mark(blank.width)];
  const unit = unitName("length", system);
  const marks = [lengthMark, widthMark].some((words) => words !== "")
    ? `${lengthMark || length} x ${widthMark || width}`
    : "";
  return [
    { name: `Flat, ${unit}`, value: `${length} x ${width}`, beside: marks },
    ...(bend
      ? [{ name: `Inside radius, ${unit}`, value: showNumber(Number(mark(bend.radius)[0]), 3), beside: "" }]
      : []),
    ...bendTo(strips)
      .map((value) => ({ name: "Bend to (turned), then let back", ...value }))
      .slice(0, MOST_ANGLES),
    ...(force
      ? [
          {
            name: "Force",
            value: showForce(force.expected, system),
            beside: `${showForce(force.worst, system)} if it runs hard`,
          },
        ]
      : []),
  ];
}
const MOST_ANGLES = 1;

/** Angle under load and what is left of it; of several the one that most bends have. */
function bendTo(strips: LinePlan["strips"]): { readonly value: string; readonly beside: string }[] {
  const counts = new Map<string, { value: string; beside: string; count: number }>();
  for (const { part, springback } of strips)
    part.bends.forEach(({ angle }, i) => {
      const over = springback[i];
      if (over === undefined) return;
      const value = `${showNumber(halfDegrees(Math.abs(angle) + over), 4)}°`;
      const known = counts.get(value) ?? { value, beside: `to ${showNumber(Math.abs(angle))}°`, count: 0 };
      counts.set(value, { ...known, count: known.count + 1 });
    });
  const found = [...counts.values()].sort((a, b) => b.count - a.count);
  return found.map(({ value, beside }) => ({
    value,
    beside: found.length > 1 ? `${beside} (others: hits)` : beside,
  }));
}
const halfDegrees = (angle: number): number => Math.round(2 * angle) / 2;

function where({ cutter, plan }: LineAnswer, { tools, bend, line }: LinePlan, setUp: string): string {
  const cut = cutter === undefined ? "" : cutter === "shear" ? plan!.cutting.shear!.name : plan!.cutting.waterjet!.name;
  return [
    setUp,
    tools ? `${tools.brake.name}, die ${tools.die.name}${tools.punch ? `, punch ${tools.punch.name}` : ""}` : "",
    cut === "" ? "" : `cut on ${cut}`,
    bend ? `deduction by ${bend.method}` : "",
    line.accepted === "" ? "" : `accepted: ${line.accepted}`,
  ]
    .filter((words) => words !== "")
    .join(" · ");
}

interface HitPicture extends Picture {
  readonly isAtGauge: boolean;
  /** When the most metal stands about the punch. */
  readonly isLast: boolean;
}

/** Every hit at the gauge and at the bottom. */
const hitPictures = (plan: LinePlan, system: UnitSystem, frame: Frame): HitPicture[] =>
  plan.strips.flatMap((strip, direction) => {
    const named = (picture: Picture): Picture =>
      direction === 0 ? picture : { ...picture, name: `Second direction: ${picture.name}` };
    const before = gaugeDrawings(plan, strip, system, frame);
    const after = hitDrawings(plan, strip, system, frame);
    return after.flatMap((picture, i): HitPicture[] => [
      ...(before[i] ? [{ ...named(before[i]), isAtGauge: true, isLast: false }] : []),
      { ...named(picture), isAtGauge: false, isLast: i === after.length - 1 },
    ]);
  });

/** Of two or three pictures side by side. */
const FRAME: Frame = { width: 57, height: 54 };
const WIDE_FRAME: Frame = { width: 88, height: 62 };
/** Two a row, four rows a sheet. */
const LARGE_FRAME: Frame = { width: 88, height: 42 };
const LEAST_HIGH = 20;
const MOST_HIGH = 52;
const LINE_HIGH = 4.2; // mm

function pictureFrame(line: LineAnswer, planned: LinePlan, plan: BillPlan): Frame {
  const base = planned.strips.some(({ part }) => part.bends.length > 1) ? FRAME : WIDE_FRAME;
  return {
    ...base,
    height: Math.min(MOST_HIGH, Math.max(LEAST_HIGH, base.height - LINE_HIGH * linesBeside(line, planned, plan))),
  };
}

/** What is written about a line takes its height from the pictures, so that one sheet of paper holds both. */
function linesBeside(line: LineAnswer, planned: LinePlan, plan: BillPlan): number {
  const { system } = plan.shop;
  const isHeld = releaseOf(line) === "HOLD";
  const problems = lineProblems(line, plan);
  const written = [
    ...problems,
    ...(isHeld ? problems : []), // in large letters
    ...notesOf(line, system),
    ...cautionsOfLine(planned, line, plan.shop),
    ...(isHeld ? ["", "", ""] : []),
  ];
  const measures = planned.strips.reduce((sum, { part }) => sum + 2 * part.bends.length + 1, MEASURES_BESIDE);
  return (
    written.reduce((sum, words) => sum + Math.ceil((words.length + 1) / LETTERS_A_LINE), 0) +
    planned.strips.reduce((sum, { part }) => sum + 1.5 * part.bends.length, 0) +
    3 * (Math.ceil(measures / MEASURES_A_ROW) - 1)
  );
}
const LETTERS_A_LINE = 105;
const MEASURES_A_ROW = 8;
const MEASURES_BESIDE = 4; // sheet, blank both ways, radius

const gallery = (pictures: readonly (Picture | undefined)[], kind = ""): string => {
  const figures = pictures
    .filter((picture) => picture !== undefined)
    .map(
      ({ name, svg, words }) =>
        `<figure>${svg}<figcaption><b>${text(name)}</b>${words.length > 0 ? `<br>${text(words.join(" · "))}` : ""}</figcaption></figure>`,
    );
  return figures.length === 0 ? "" : `<div class="gallery ${kind}">${figures.join("")}</div>`;
};

/** The back gauge of every direction, or why there is nothing to do at the brake. */
function brakeWork({ tools, strips }: LinePlan, plan: BillPlan): string {
  if (!tools) return paragraph(`No tools: ${notCheckedSays(plan.notChecked) || "none of the tables bends it."}`);
  if (strips.length === 0) return "<p>No back gauge: this part cannot be bent from a sheet as it is drawn.</p>";
  const both =
    strips.length > 1
      ? "<p>The part is bent in two directions: the flanges of the first must clear the tools in the second. Box ends are not seen by the order; try it by hand.</p>"
      : "";
  return strips.map((strip, i) => backGauge(strip, i, plan.shop.system)).join("\n") + both;
}

/** What this part adds to the cautions of its set-up, and what is worth knowing of it. */
function minding(line: LineAnswer, planned: LinePlan, plan: BillPlan): string {
  const notes = notesOf(line, plan.shop.system);
  return [list(cautionsOfLine(planned, line, plan.shop), "cautions"), list(notes, "findings")].join("\n");
}

/** Without what has a box to tick. */
const notesOf = ({ findings }: LineAnswer, system: UnitSystem): string[] =>
  notesSay(
    findings.filter((finding) => !isCaution(finding)),
    system,
  );
