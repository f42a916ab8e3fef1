/** The sheets of paper: one document of HTML, one page of it, and the few parts pages are made of. */
import { itemAt, missing } from "../units/certain.ts";
import { escapeMarkup } from "./drawing/svg.ts";

export interface Paper {
  /** Path below the folder, with "/". */
  readonly file: string;
  readonly title: string;
  /** One string a sheet of paper. */
  readonly pages: readonly string[];
  /** A page shares its sheet of paper with the next where both fit. */
  readonly shares?: boolean;
  /** Below every sheet that is printed, however many a page takes. */
  readonly foot?: string;
}

type Printed = Pick<Paper, "pages" | "shares" | "foot">;

/** What the papers were made from, beside the plan. */
export interface PaperFacts {
  /** The workbook's file name. */
  readonly name: string;
  readonly version: string;
  readonly edition: string;
  readonly date: string;
  /** Cells whose value may be out of date. */
  readonly stale: number;
  /** What is wrong with the workbook's tables, a sentence each. */
  readonly missing: readonly string[];
}

const GENERATOR = "Bracket Bill print";

const STYLE = `
:root { color-scheme: light; }
@page { size: letter; margin: 9mm 12mm 12mm; @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt system-ui, sans-serif; } @bottom-left { font: 8pt system-ui, sans-serif; text-align: left; width: 80%; } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 190mm; padding: 4mm; background: #fff; color: #000; font: 10.5pt/1.3 system-ui, sans-serif; overflow-wrap: anywhere; }
.page { break-before: page; display: flow-root; }
.page.shares { break-before: auto; break-inside: avoid; }
.page + .page { margin-top: 12mm; border-top: 1px solid #000; padding-top: 4mm; }
@media print { body { padding: 0; max-width: none; } .page + .page { margin-top: 0; border: 0; padding-top: 0; } .page.shares + .page.shares { padding-top: 3mm; } }
@media print { .foot-line { display: none !important; } }
@media screen and (max-width: 600px) { .facts { grid-template-columns: 1fr 1fr !important; } .measures { grid-template-columns: 1fr 1fr !important; } .page { overflow-x: auto; } }
h1 { margin: 0; font-size: 22pt; line-height: 1.1; }
h2 { margin: 2mm 0 0.5mm; font-size: 12pt; break-after: avoid; }
p { margin: 1mm 0; }
.small { font-size: 9pt; }
.head { display: flex; justify-content: space-between; align-items: baseline; gap: 6mm; border-bottom: 2px solid #000; padding-bottom: 1mm; }
.head .status { font-size: 14pt; font-weight: 700; white-space: nowrap; }
.stop .status, .hold .status { border: 2px solid #000; padding: 0 2mm; }
.facts { display: grid; grid-template-columns: repeat(5, 1fr); gap: 1mm 3mm; margin: 2mm 0; }
.facts dt { font-size: 9pt; }
.facts dd { margin: 0; font-size: 11pt; font-weight: 600; line-height: 1.15; }
.key { display: flex; flex-wrap: wrap; border-top: 2px solid #000; border-bottom: 2px solid #000; margin: 2mm 0; padding: 0; }
.key div { flex: 0 1 auto; padding: 1mm 2.5mm; border-left: 0.5px solid #000; }
.key div:first-child { padding-left: 0; border-left: 0; }
.key dt { font-size: 9pt; white-space: nowrap; }
.key dd { margin: 0; font-size: 16pt; font-weight: 700; line-height: 1.15; font-variant-numeric: tabular-nums; white-space: nowrap; }
.key small { display: block; white-space: nowrap; }
.key dd small, .stops small { font-size: 9.5pt; font-weight: 400; }
.gallery { display: flex; flex-wrap: wrap; gap: 2mm; margin: 2mm 0.4mm; }
.gallery figure { flex: 1 1 auto; margin: 0; border: 0.5px solid #000; border-radius: 1mm; padding: 2mm; break-inside: avoid; display: grid; grid-template-columns: minmax(0, 1fr); align-content: space-between; gap: 1mm; }
.gallery.pairs { display: grid; grid-template-columns: 1fr 1fr; }
.gallery svg { margin: 0 auto; max-width: 100%; height: auto; }
figcaption { font-size: 9pt; line-height: 1.2; width: 0; min-width: 100%; }
.first-piece { border: 1.5px solid #000; border-radius: 1mm; padding: 1.5mm 3mm; margin: 2mm 0.4mm; break-inside: avoid; }
.first-piece h2 { margin: 0 0 0.5mm; font-size: 10.5pt; }
.first-piece p { margin: 1mm 0 0; font-size: 9pt; }
.first-piece .box { width: 3.6mm; height: 3.6mm; vertical-align: -0.6mm; }
.measures { display: grid; grid-template-columns: repeat(10, 1fr); gap: 1mm 2.5mm; }
.measures div { display: flex; flex-direction: column; gap: 2.5mm; font-size: 9pt; line-height: 1.15; }
.measures .blank { min-width: 0; line-height: 1; }
.thirds { display: grid; grid-template-columns: 1fr 1fr 1fr; gap: 5mm; }
.thirds table, .tight { font-size: 9pt; line-height: 1.2; }
.thirds td, .thirds th { padding: 0.1mm 0.8mm; line-height: 1.12; white-space: nowrap; }
.tight td { padding: 0.3mm 1.5mm; }
.load td, .load th { padding-left: 0.8mm; padding-right: 0.8mm; }
.tight .box { width: 3.6mm; height: 3.6mm; vertical-align: -0.6mm; }
.band { display: grid; grid-template-columns: auto 1fr; gap: 4mm; align-items: center; border: 2px solid #000; border-width: 4px 0; margin: 1mm 0; }
.band .halt { font-size: 68pt; }
.move { display: inline-block; width: 8mm; height: 6.4mm; vertical-align: -1.6mm; }
.legend { font-size: 9.5pt; display: grid; grid-template-columns: auto auto 1fr; gap: 0.5mm 2mm; align-items: center; }
.stops td:nth-child(6), .stops td:nth-child(7) { font-size: 11pt; white-space: nowrap; }
.halt { font-size: 120pt; font-weight: 800; line-height: 1; letter-spacing: 1mm; margin: 0; }
.reasons { font-size: 12pt; line-height: 1.25; margin: 0.5mm 0; }
.held { font-size: 11pt; line-height: 1.15; margin: 0.5mm 0; }
.beside { display: grid; grid-template-columns: 1fr auto; gap: 4mm; align-items: start; }
.beside .gallery { flex-direction: column; }
svg { display: block; }
svg .paper { fill: #fff; }
.held-mark { display: inline-block; border: 1.5px solid #000; padding: 0 1mm; white-space: nowrap; }
.goes-on { display: table; width: 100%; table-layout: fixed; }
.goes-on > .again { display: table-header-group; break-inside: avoid; }
.cut-head h1 { font-size: 17pt; }
.goes-on > :last-child { display: table-row-group; }
.plan { margin: 1mm 0; break-inside: avoid; }
.plan svg { width: 100%; max-height: 106mm; }
.halves { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 4mm; align-items: start; }
@page across { size: letter landscape; }
.across { page: across; }
@media print {
  .plan.wide svg { max-height: 132mm; }
  .across .cuts { font-size: 10pt; line-height: 1.1; }
  .across .few .cuts { font-size: 12pt; }
  .across .few td { padding: 0.6mm 1mm; }
  .across .many .cuts { font-size: 9pt; }
  .across .next { break-before: page; }
}
.halves .cuts th, .halves .cuts td { white-space: normal; padding: 0.15mm 0.5mm; font-size: 8pt; }
.halves td.number { white-space: nowrap; }
.halves td.number + td.number { padding-left: 2mm; }
table { width: 100%; border-collapse: collapse; margin: 1mm 0; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; font-size: 9pt; border-bottom: 1.5px solid #000; padding: 0.6mm 1.5mm; vertical-align: bottom; }
td { border-bottom: 0.5px solid #777; padding: 0.8mm 1.5mm; vertical-align: top; }
th, td { overflow-wrap: normal; }
td.number, th.number { text-align: right; font-variant-numeric: tabular-nums; }
td.number { white-space: nowrap; }
td.short, th.short { white-space: nowrap; }
.stops td { font-size: 14pt; padding: 0.3mm 1.5mm; vertical-align: middle; }
.cautions { font-size: 9.5pt; line-height: 1.25; }
.cautions .box { width: 4mm; height: 4mm; }
.cuts, .strips { font-size: 8.5pt; line-height: 1.08; }
.cuts b:not(.held-mark) { font-size: 1.2em; }
.cuts td { padding: 0.15mm 1mm; }
.cuts tr:first-child td { padding-top: 0.6mm; }
.cuts th { white-space: nowrap; }
.cuts th.number { white-space: normal; }
td .blank { min-width: 15mm; }
.strips .blank { min-width: 12mm; }
.strips td { padding: 0.4mm 1.5mm; }
.cuts .box { width: 3mm; height: 3mm; vertical-align: -0.4mm; }
.box { display: inline-block; width: 5mm; height: 5mm; border: 1.5px solid #000; vertical-align: -1mm; }
.blank { display: inline-block; min-width: 22mm; border-bottom: 1px solid #000; }
ul { margin: 1mm 0; padding-left: 5mm; }
.findings { font-size: 9pt; line-height: 1.15; margin: 0.5mm 0; }
.cautions li { list-style: none; margin-left: -5mm; }
tfoot { display: table-row-group; }
tfoot td { border-top: 1px solid #000; font-weight: 700; }
.foot { font-size: 9pt; margin-top: 1.5mm; }
.foot-line { display: flex; justify-content: space-between; gap: 6mm; border-top: 0.5px solid #000; font-size: 8pt; margin-top: 2mm; padding-top: 0.5mm; }
.tag { border: 1.5px solid #000; padding: 1mm 2mm; font-size: 10pt; break-inside: avoid; }
`;

/** A paper with what stands below it, for a screen too. */
export const footed = (paper: Paper, foot: string): Paper => ({
  ...paper,
  foot,
  pages: paper.pages.map((page) => `${page}\n<p class="foot-line">${text(foot)}</p>`),
});

/** Papers as one document. */
export function document(title: string, papers: readonly Printed[]): string {
  const foots = [...new Set(papers.map(({ foot }) => foot ?? ""))];
  const styles = foots.map((foot, i) => footStyle(foot, i)).join("");
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="generator" content="${GENERATOR}"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"><title>${escapeMarkup(title)}</title><style>${STYLE}${styles}</style></head>
<body>${papers.flatMap((paper) => sections(paper, foots.indexOf(paper.foot ?? ""))).join("\n")}</body></html>
`;
}

/** @param foot of those of the document; the first is every page's. */
const sections = ({ pages, shares }: Printed, foot: number): string[] =>
  pages.map(
    (page) => `<section class="page${shares ? " shares" : ""}${foot > 0 ? ` foot-${foot}` : ""}">${page}</section>`,
  );

/** Keeps a number such as Q-0417 on one line of the foot. */
const UNBROKEN = "\u2011";

/** A text in CSS: quotes, backslashes and what ends a style element are written as their numbers. */
function footStyle(foot: string, i: number): string {
  if (foot === "") return "";
  const words = foot
    .replaceAll("-", UNBROKEN)
    .replace(/[^\w ,.;:()·#+-]/gu, (mark) => `\\${(mark.codePointAt(0) ?? missing()).toString(16)} `);
  const own = `{ @bottom-left { content: "${words}"; } }\n`;
  return i === 0 ? `@page ${own}` : `@page foot-${i} ${own}.foot-${i} { page: foot-${i}; }\n`;
}

export const text = escapeMarkup;
export const BOX = '<span class="box"></span>';
export const BLANK = '<span class="blank">&nbsp;</span>';

export interface Column {
  readonly title: string;
  readonly number?: boolean;
  /** Never broken into lines. */
  readonly short?: boolean;
}

/** Cells are text; what is markup already (a box to tick) is given as { markup }. */
export type Cell = string | { readonly markup: string };

/** A hold stands out in a list as it does on its sheet. */
export const releaseCell = (release = ""): Cell =>
  release === "HOLD" ? { markup: `<b class="held-mark">${release}</b>` } : release;

/** @param foot rows that sum up. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  kind = "",
  foot: readonly (readonly Cell[])[] = [],
): string {
  const attribute = ({ number, short }: Column) => (number ? ' class="number"' : short ? ' class="short"' : "");
  const cell = (content: Cell, i: number) =>
    `<td${attribute(itemAt(columns, i))}>${typeof content === "string" ? text(content) : content.markup}</td>`;
  const body = (some: readonly (readonly Cell[])[]) => some.map((row) => `<tr>${row.map(cell).join("")}</tr>`).join("");
  const head = columns.map((column) => `<th${attribute(column)} scope="col">${text(column.title)}</th>`).join("");
  const sums = foot.length > 0 ? `<tfoot>${body(foot)}</tfoot>` : "";
  return `<table class="${kind}"><thead><tr>${head}</tr></thead><tbody>${body(rows)}</tbody>${sums}</table>`;
}

export interface KeyFigure {
  readonly name: string;
  readonly value: string;
  /** Small, behind the figure. */
  readonly beside: string;
}

/** What is set by, in letters that are read at arm's length. */
export const keyFigures = (figures: readonly KeyFigure[]): string =>
  `<dl class="key">${figures.map(({ name, value, beside }) => `<div><dt>${text(name)}</dt><dd>${text(value)} <small>${text(beside)}</small></dd></div>`).join("")}</dl>`;

export const facts = (rows: readonly (readonly [string, string])[]): string =>
  `<dl class="facts">${rows.map(([name, value]) => `<div><dt>${text(name)}</dt><dd>${text(value)}</dd></div>`).join("")}</dl>`;

/** Nothing where there is nothing to list. */
export const list = (lines: readonly string[], kind = ""): string =>
  lines.length === 0
    ? ""
    : `<ul class="${kind}">${lines.map((line) => `<li>${kind === "cautions" ? `${BOX} ` : ""}${text(line)}</li>`).join("")}</ul>`;

/** What goes on on the next sheet of paper does so under its heading again. */
export const goesOn = (head: string, body: string): string =>
  `<div class="goes-on"><div class="again">${head}</div><div>${body}</div></div>`;

export const paragraph = (words: string, kind = ""): string =>
  words === "" ? "" : `<p${kind === "" ? "" : ` class="${kind}"`}>${text(words)}</p>`;

/** @param mark what stands out at its right: STOP, HOLD ... */
export const heading = (title: string, mark?: string): string =>
  `<div class="head ${mark?.toLowerCase() ?? ""}"><h1>${text(title)}</h1>${mark ? `<span class="status">${text(mark)}</span>` : ""}</div>`;
