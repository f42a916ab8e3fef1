/** What the brake operator has at the machine for one line: what to set, the flat, every hit, the first piece. */
import { throatSays } from "../bill/drawn-says.ts";
import { turnedTo } from "../bill/lines/bent-strip.ts";
import type { LinePlan } from "../bill/lines/plan-line.ts";
import { bentStrips } from "../bill/nouns/line.ts";
import { openPlates, rowsOfLine } from "../bill/open-plates.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import { releaseOf } from "../bill/release.ts";
import { notCheckedSays, notesSay, notFromPlateSays } from "../bill/says.ts";
import { missing } from "../units/certain.ts";
import { show, showForce, showMark, showNumber, showThickness } from "../units/show.ts";
import { type UnitSystem, unitName } from "../units/system.ts";
import { backGauge } from "./back-gauge.ts";
import { cautionsOfLine, isCaution } from "./cautions.ts";
import { firstPiece } from "./first-piece.ts";
import {
  FAILING_FRAME,
  failingHits,
  hitPictures,
  largeFrame,
  ON_NEXT_SHEET,
  roomForHits,
  STOP_FRAME,
} from "./hit-pictures.ts";
import { holesSay } from "./holes.ts";
import { bentDrawings, flatDrawing, type Picture } from "./line-drawings.ts";
import { lineProblems, partSays } from "./line-words.ts";
import { BLANK, BOX, heading, type KeyFigure, keyFigures, list, paragraph, text } from "./page.ts";

/** One string a sheet of paper. @param setUp which set-up of how many; "" for a line that stands in none. */
export function setUpSheets(line: LineAnswer, plan: BillPlan, setUp: string): string[] {
  const release = releaseOf(line);
  const planned = line.plan;
  if (release === "STOP" || !planned) return [stopSheet(line, plan)];
  const { system } = plan.shop;
  const isHeld = release === "HOLD";
  const failing = isHeld ? failingHits(planned, system, FAILING_FRAME) : [];
  const problems = lineProblems(line, plan);
  const said = [
    about(planned, system),
    where(line, planned, setUp),
    [holesSay(planned.line, system), notFromPlateSays(openPlates(rowsOfLine(line)))].filter(Boolean).join(" · "),
  ] as const;
  const head = [
    heading(partSays(line), release),
    paragraph(said[0]),
    isHeld ? heldBand(line, plan) : list(problems, "findings"),
    keyFigures(figuresOf(planned, system)),
    ...said.slice(1).map((words) => paragraph(words)),
  ].join("\n");
  const shapes = [flatDrawing(planned, system), ...bentDrawings(planned, system)].filter((one) => one !== undefined);
  const flat = gallery(shapes);
  const last = [firstPiece(planned, system), minding(line, planned, plan)].join("\n");
  if (bentStrips(planned.line).length === 0) return [[head, flat, "<p>No bends: cut only.</p>", last].join("\n")];
  // A held line without an order has nothing to set: what is in the way stands where its hits would.
  if (failing.length > 0) return [[head, flat, NO_ORDER, gallery(failing), last].join("\n")];
  const work = brakeWork(planned, plan);
  const room = roomForHits(planned, {
    said,
    small: [...(isHeld ? [] : problems), ...notesOf(line, system), ...cautionsOfLine(planned, line, plan.shop)],
    held: isHeld ? problems : [],
    flat: Math.max(...shapes.map(({ height }) => height)),
  });
  const pictures = room
    ? hitPictures(planned, system, room).filter(({ isLast, isAtGauge }) => isLast || isAtGauge)
    : [];
  if (room && pictures.length <= ON_ONE_SHEET) return [[head, flat, gallery(pictures), work, last].join("\n")];
  // Too much for one sheet: the settings and measurements on the first, the hits one by one on the next.
  const large = hitPictures(planned, system, largeFrame(planned));
  const again = [
    heading(`${partSays(line)}, hit by hit`, release),
    paragraph(where(line, planned, setUp)),
    paragraph("Seen from the end of the bed, the back gauge to the right.", "small"),
  ].join("\n");
  const sheets = Array.from({ length: Math.ceil(large.length / ON_NEXT_SHEET) }, (_, i) =>
    [again, gallery(large.slice(i * ON_NEXT_SHEET, (i + 1) * ON_NEXT_SHEET), "pairs")].join("\n"),
  );
  return [[head, flat, work, last].join("\n"), ...sheets];
}
const ON_ONE_SHEET = 3;

/** Why a line waits, and who releases it. */
const heldBand = (line: LineAnswer, plan: BillPlan): string =>
  `<div class="band"><p class="halt">HOLD</p><div>${list(lineProblems(line, plan), "held")}<p><strong>Wait until somebody who may accept this has signed here.</strong> Accepted by ${BLANK} date ${BLANK}</p></div></div>`;

const NO_ORDER =
  "<p><strong>No order of the bends was found on these tools:</strong> no hits, stops or depths are given.</p>";

/** The word is a hand high, so that nobody at the machine overlooks it. */
function stopSheet(line: LineAnswer, plan: BillPlan): string {
  const { system } = plan.shop;
  const planned = line.plan;
  return [
    heading(partSays(line), "STOP"),
    planned ? paragraph(about(planned, system)) : "",
    '<div class="beside"><div><p class="halt">STOP</p>',
    "<p><strong>Do not make this part until this is settled.</strong></p>",
    list(lineProblems(line, plan), "reasons"),
    `<p>Settled by ${BLANK} date ${BLANK} &nbsp; new papers printed ${BOX}</p></div>`,
    planned ? gallery([...bentDrawings(planned, system), ...failingHits(planned, system, STOP_FRAME)]) : "",
    "</div>",
  ].join("\n");
}

function about({ line, blank, blanks }: LinePlan, system: UnitSystem): string {
  const extra = blanks - line.quantity;
  return [
    line.description,
    `${line.material.name} ${showThickness(line.thickness, system)}`,
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
  for (const strip of strips)
    strip.part.bends.forEach(({ angle }, i) => {
      const turned = turnedTo(strip, i + 1);
      if (turned === undefined) return;
      const value = `${showNumber(turned)}°`;
      const known = counts.get(value) ?? { value, beside: `to ${showNumber(Math.abs(angle))}°`, count: 0 };
      counts.set(value, { ...known, count: known.count + 1 });
    });
  const found = [...counts.values()].sort((a, b) => b.count - a.count);
  return found.map(({ value, beside }) => ({
    value,
    beside: found.length > 1 ? `${beside} (others: hits)` : beside,
  }));
}

function where({ cutter, plan }: LineAnswer, { tools, bend, line, strips }: LinePlan, setUp: string): string {
  const cut = cutter === undefined ? "" : ((plan ?? missing()).cutting[cutter] ?? missing()).name;
  return [
    setUp,
    tools ? `${tools.brake.name}, die ${tools.die.name}${tools.punch ? `, punch ${tools.punch.name}` : ""}` : "",
    throatSays(strips[0], tools?.punch),
    cut === "" ? "" : `cut on ${cut}`,
    bend ? `deduction by ${bend.method}` : "",
    line.accepted === "" ? "" : `accepted: ${line.accepted}`,
  ]
    .filter((words) => words !== "")
    .join(" · ");
}

const gallery = (pictures: readonly (Picture | undefined)[], kind = ""): string => {
  const figures = pictures
    .filter((picture) => picture !== undefined)
    .map(
      ({ name, svg, words, scale, mark }) =>
        `<figure>${svg}<figcaption><b>${text(name)}</b>${mark ? ` ${mark}` : ""}<br>${text([...words, scale].join(" · "))}</figcaption></figure>`,
    );
  return figures.length === 0 ? "" : `<div class="gallery ${kind}">${figures.join("")}</div>`;
};

/** The back gauge of every direction, or why there is nothing to do at the brake. */
function brakeWork({ tools, strips }: LinePlan, plan: BillPlan): string {
  if (!tools) return paragraph(`No tools: ${notCheckedSays(plan.notChecked) || "no tools in the tables bend it."}`);
  if (strips.length === 0) return "<p>No back gauge: this part cannot be bent from a sheet as it is drawn.</p>";
  const both =
    strips.length > 1
      ? "<p>The part is bent in two directions: the flanges of the first must clear the tools in the second. The bend order does not see box ends; try it by hand.</p>"
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
