/** The shear's sheets, one pattern after another as they are cut: drawing, cuts in order, what comes off, tags of the offcuts. */

import { type CutInWords, cutsInOrder } from "../bill/cut/cuts-in-order.ts";
import type { Offcut } from "../bill/cut/offcuts.ts";
import type { CutGroup } from "../bill/cut/plan-cutting.ts";
import type { LinePlan } from "../bill/lines/plan-line.ts";
import type { StockSheet } from "../bill/nouns/stock.ts";
import { openPlates } from "../bill/open-plates.ts";
import type { PlannedPattern } from "../bill/pictures.ts";
import type { BillPlan } from "../bill/plan.ts";
import { releaseToCut } from "../bill/release.ts";
import { notFromPlateSays } from "../bill/says.ts";
import { entryOf, itemAt, missing } from "../units/certain.ts";
import { show, showNumber, showPlain, showReading, showThickness } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { drawPattern, type Room, type SheetDrawn } from "./drawing/cut-plan.ts";
import { holesCounted } from "./holes.ts";
import { AT_THE_CUT, sayOnce } from "./line-words.ts";
import { BLANK, BOX, type Cell, goesOn, heading, list, paragraph, releaseCell, table, text } from "./page.ts";

/** One sheet a page, two where the cuts are few; where they are many, the drawing has a page of its own and their list the next. */
export function shearPages(group: CutGroup, plan: BillPlan, offcuts: readonly Offcut[]): string[] {
  const { patterns, warnings } = group.plan ?? missing();
  const all = cutsInOrder(group, plan.shop, offcuts);
  return patterns.map((pattern, i) => {
    const rows = all.filter(({ row }) => row.pattern === pattern.id);
    const own = offcuts.filter((offcut) => offcut.group === group && offcut.pattern === pattern.id);
    const room = rows.length <= FEW_CUTS ? "half" : rows.length < MANY_CUTS ? "whole" : "wide";
    const markup = onePattern(pattern, { group, plan, own, rows, room });
    const page = goesOn(
      cutHeading(i, patterns, sheetOf(group, plan)),
      [markup, i === 0 ? list(warnings) : "", room === "wide" ? "" : FOOT].join("\n"),
    );
    return room === "wide" ? `<div class="across">${page}</div>` : page;
  });
}

/** "Pattern 1 of 2, 2 sheets: A36 0.250 in (1/4), Shear 1": the same layout is cut from so many. */
export const cutHeading = (i: number, all: readonly { readonly repeats: number }[], of: string): string =>
  `<div class="cut-head">${heading(`Pattern ${i + 1} of ${all.length}, ${itemAt(all, i).repeats} ${itemAt(all, i).repeats === 1 ? "sheet" : "sheets"}: ${of}`)}</div>`;

const FOOT =
  '<p class="foot">Shear guards in place; hands and the drop clear; nobody behind the blade. First piece: check it square, both diagonals.</p>';

const FEW_CUTS = 8;
const MANY_CUTS = 18;
/** Rows that a wide page holds in letters of 12 and of 10 pt; more are set in 9. */
const ROOMY = 18;
const FULL = 31;

interface OnPage {
  readonly group: CutGroup;
  readonly plan: BillPlan;
  readonly own: readonly Offcut[];
  readonly rows: readonly CutInWords[];
  readonly room: Room;
}

function onePattern(pattern: PlannedPattern, { group, plan, own, rows, room }: OnPage): string {
  const { system } = plan.shop;
  const sheet = entryOf(group.sheetOf, pattern.stock);
  const drawn = { ...sheetDrawn(pattern, group, own, rows), room };
  const { keys } = drawn;
  const cuts = rows.map(({ row }) => row);
  const weight = show(sheet.weight, "mass", system, 4);
  const releases = releasesOf(plan);
  const { svg, scale } = drawPattern(pattern, cuts, drawn, system);
  const size = `${showPlain(sheet.length, system)} x ${showReading(sheet.width, system)}`;
  const cutsInTable = cutTable(rows, waitingAmong(group, releases), system);
  const pieces = piecesTable(pattern, group, keys, { system, releases });
  const tags = own.map((offcut) => tagOf(offcut, plan, system));
  const cutHere = plan.lines.filter((line) =>
    pattern.yields.some(({ blank }) => group.lineOf.get(blank) === line.plan),
  );
  const mind = list(
    sayOnce(cutHere, system, ({ about }) => AT_THE_CUT.includes(about)),
    "findings",
  );
  const datum = paragraph(`Datum corner: ${drawn.edges}.`, "small");
  const figure = `<figure class="plan ${room}">${svg}</figure>`;
  const body = {
    half: [`<div class="halves">${figure}<div>${[pieces, ...tags, datum].join("\n")}</div></div>`, cutsInTable],
    whole: [figure, cutsInTable, pieces, ...tags],
    wide: [
      figure,
      pieces,
      ...tags,
      FOOT,
      `<div class="next ${rows.length <= ROOMY ? "few" : rows.length > FULL ? "many" : ""}">${cutsInTable}</div>`,
    ],
  }[room];
  return [
    `<p><strong>${text(sheet.name)}</strong>, ${text(`${size}, ${weight} each; drawn ${scale}. ${notFromPlateSays(openPlates([group.shear]))}`)}</p>`,
    mind,
    paragraph(drawn.edges === MILL_EDGES ? notSquaredSays(group.shear?.name) : "", "small"),
    heldSays(rows, waitingIn(group, releases), isAllWaiting(pattern, group, releases)),
    ...body,
  ].join("\n");
}

/** @param own the offcuts of this pattern, and the rows of its cuts. */
export function sheetDrawn(
  pattern: PlannedPattern,
  group: CutGroup,
  own: readonly Offcut[],
  rows: readonly CutInWords[],
): SheetDrawn {
  const sheet = entryOf(group.sheetOf, pattern.stock);
  return {
    name: sheet.name,
    grain: sheet.grain === "long" ? "w" : "h",
    edges: edgesOf(sheet, rows),
    keys: new Map(pattern.yields.map(({ blank }, i) => [blank, letterOf(i)])),
    tags: new Map(own.flatMap(({ pieces, tag }) => pieces.map((piece) => [piece, tag] as const))),
  };
}

/** What everything is measured from: nobody takes an edge for square that the mill left. */
function edgesOf({ edgesSheared }: StockSheet, rows: readonly CutInWords[]): string {
  const trims = rows.filter(({ row }) => row.stage === "trim").map(({ row }) => row.seq);
  if (trims.length > 0) return `trimmed edges, cut ${trims.join(" and ")}`;
  return edgesSheared ? "sheared edges" : MILL_EDGES;
}

const MILL_EDGES = "mill edges, nothing trimmed";

/** Squaring takes metal off: none is planned for it. */
const notSquaredSays = (shear = "the shear"): string =>
  `Mill edges: the first cuts gauge off them, no trim is planned. Check the datum corner square before the first cut. Out of square by more than the parts allow: do not trim it; set Edge trim of ${shear} under Shears and plan again.`;

type Releases = ReadonlyMap<LinePlan, ReturnType<typeof releaseToCut>>;

export const releasesOf = ({ lines }: BillPlan): Releases =>
  new Map(lines.flatMap((line) => (line.plan ? [[line.plan, releaseToCut(line)] as const] : [])));

/** A to Z, then AA and so on. */
export const letterOf = (i: number): string =>
  i < ALPHABET.length
    ? itemAt(ALPHABET, i)
    : `${letterOf(Math.floor(i / ALPHABET.length) - 1)}${ALPHABET[i % ALPHABET.length]}`;
const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/** "A36 0.25 in, Shear 1": which pages of the list belong together. */
export const sheetOf = ({ material, thickness, shear, cutter }: CutGroup, { shop: { system } }: BillPlan): string =>
  `${material.name} ${showThickness(thickness, system)}, ${shear?.name ?? cutter}`;

type Parts = CutInWords["row"]["drops"];

/** Which of the blanks wait for somebody to accept their checks. */
const waitingAmong =
  ({ lineOf }: CutGroup, releases: Releases) =>
  (parts: Parts): string[] => [
    ...new Set(
      parts.flatMap(({ blank }) =>
        blank !== undefined && releases.get(entryOf(lineOf, blank)) === "HOLD" ? [blank] : [],
      ),
    ),
  ];

const waitingIn =
  (group: CutGroup, releases: Releases) =>
  ({ row }: CutInWords): string[] =>
    waitingAmong(group, releases)([...row.drops, ...row.onTable]);

export const heldIn =
  (group: CutGroup, releases: Releases) =>
  (cut: CutInWords): string =>
    waitingIn(
      group,
      releases,
    )(cut)
      .map((blank) => `HOLD ${blank}`)
      .join(", ");

/** Nothing else comes off the sheet: it is not even cut into strips. */
const isAllWaiting = ({ yields }: PlannedPattern, { lineOf }: CutGroup, releases: Releases): boolean =>
  yields.every(({ blank }) => releases.get(entryOf(lineOf, blank)) === "HOLD");

/** What is done about blanks that wait, to be signed where they are cut. */
function heldSays(
  rows: readonly CutInWords[],
  waiting: (cut: CutInWords) => readonly string[],
  isSheetWaiting: boolean,
): string {
  const held = rows.filter((cut) => waiting(cut).length > 0);
  if (held.length === 0) return "";
  const blanks = [...new Set(held.flatMap(waiting))].join(", ");
  if (isSheetWaiting) return onlyReleased(blanks, "leave the sheet whole, make none of these cuts");
  // What a waiting cut leaves is not there yet.
  const later = new Set(held.flatMap(({ row }) => [...row.falls, ...row.stays].flatMap(({ pieces }) => pieces)));
  const first = held.filter(({ row }) => !row.cuts.every(({ piece }) => later.has(piece)));
  const whole = first.map(({ row, piece }) => `${piece} (cut ${row.seq})`).join(", ");
  return onlyReleased(blanks, `leave whole, to wait with this sheet: ${unbroken(whole)}`);
}

/** @param otherwise what is done until then. */
export const onlyReleased = (blanks: string, otherwise: string): string =>
  `<p class="small"><b class="held-mark">HOLD ${text(blanks)}</b> ${text(`Cut only when released; until then ${otherwise}.`)} Released by ${BLANK} date ${BLANK}</p>`;

/** The mark stands beside the pieces that wait, which fall or stay on the table. */
const withMark = (words: string, waiting: readonly string[]): Cell => ({
  markup: text(unbroken(words)) + waiting.map((blank) => ` <b class="held-mark">HOLD ${text(blank)}</b>`).join(""),
});

const cutTable = (
  rows: readonly CutInWords[],
  waitingAmong: (parts: Parts) => readonly string[],
  system: UnitSystem,
): string =>
  table(
    [
      { title: "Cut", number: true },
      { title: system === "in" ? "Set (in)" : "Set (mm)", number: true },
      { title: system === "in" ? "1/64" : "", short: true },
      { title: "By", short: true },
      { title: "Piece" },
      { title: "Drops" },
      { title: "On table" },
      { title: "Strokes", number: true },
      { title: "Turn, lift" },
      { title: "Done" },
    ],
    rows.map((cut): Cell[] => {
      const { row, piece, onTape, drops, onTable } = cut;
      return [
        String(row.seq),
        { markup: `<b>${fixed(row.measure, system)}</b>` },
        onTape,
        measuredBy(cut),
        unbroken(piece),
        withMark(drops, waitingAmong(row.drops)),
        withMark(onTable, waitingAmong(row.onTable)),
        showNumber(row.strokes, 7),
        turnAndLift(cut),
        { markup: BOX },
      ];
    }),
    "cuts",
  );

/** "11.643 x 36" stays on one line. */
const unbroken = (words: string): string => words.replace(/(?<=[\d.]) x (?=[\d.])/g, "\u00a0x\u00a0");

/** Back gauge, front stop or a mark, and then from which edge it is scribed: that of what stays on the table is the near one. */
export const measuredBy = ({ row: { by, measured } }: CutInWords): string =>
  by === "mark" ? `mark: ${measured === "drops" ? "far" : "near"} edge` : by;

/** What is done with the piece before it is cut, and with what drops where it is heavy. */
export const turnAndLift = ({ row, lift, heavyDrop, through }: CutInWords): string =>
  [row.turn ? "turn" : "", lift, through, heavyDrop].filter((word) => word !== "").join("; ");

/** Decimals a gauge is set to, all of them printed so that they stand below each other. */
const fixed = (value: number, system: UnitSystem): string => {
  const [whole = "", part = ""] = showPlain(value, system).split(".");
  return `${whole}.${part.padEnd(system === "in" ? 3 : 2, "0")}`;
};

interface PiecesOf {
  readonly system: UnitSystem;
  readonly releases: Releases;
}

const piecesTable = (
  { yields, repeats }: PlannedPattern,
  { lineOf }: CutGroup,
  keys: ReadonlyMap<string, string>,
  { system, releases }: PiecesOf,
): string =>
  table(
    [
      { title: "Key", short: true },
      { title: "Off this sheet" },
      { title: repeats === 1 ? "Count" : "Count, all sheets", number: true },
      { title: `Size (${system})`, number: true },
      { title: "Each", number: true },
      { title: "Holes, by the drawing" },
      { title: "Release" },
    ],
    yields.map(({ blank, count }) => {
      const line = entryOf(lineOf, blank);
      const { length, width } = line.blank;
      return [
        entryOf(keys, blank),
        blank,
        showNumber(count * repeats, 7),
        unbroken(`${showPlain(length, system)} x ${showPlain(width, system)}`),
        show(line.blank.weight, "mass", system, 3),
        holesCounted(line.line, system),
        releaseCell(releases.get(line)),
      ];
    }),
    "cuts",
  );

/** What is written on the metal before it goes back. */
function tagOf({ tag, count, length, width, grain, sheet }: Offcut, plan: BillPlan, system: UnitSystem): string {
  const along = showPlain(grain === "length" ? length : width, system);
  const size = `${showPlain(length, system)} x ${showReading(width, system)}`;
  const copies = count === 1 ? "Tag for the rack" : `${count} tags for the rack`;
  return `<p class="tag"><strong>${copies}: ${tag}</strong> ${text(
    `${sheet.material.name} ${showThickness(sheet.thickness, system)}, ${size}, grain along ${along}, from plan ${plan.number}`,
  )}</p>`;
}
