/** One worksheet part. The elements stand in the order the schema wants. */
import { CellError, type CellValue } from "../../units/cell.ts";
import type { SheetModel, Validation } from "./model.ts";
import type { Placed, PlacedCell } from "./place.ts";
import { rowHeight } from "./row-height.ts";
import { EMPHASIS, styleIndex } from "./styles.ts";
import { areaName, cellName, escapeXml, MAIN, RELATIONS, XML } from "./xml.ts";

/** Narrow margins in inches, so that the letters stay large. */
const MARGINS = '<pageMargins left="0.4" right="0.4" top="0.5" bottom="0.6" header="0.3" footer="0.3"/>';
const FOOT = "Invented example. The machine's plate decides.";
/** Dynamic array: the first record of the metadata part. */
const DYNAMIC = ' cm="1"';

export function sheetXml(sheet: SheetModel, placed: Placed, isFirst: boolean, tableIds: readonly string[]): string {
  const { print, merges = [] } = sheet;
  return (
    `${XML}<worksheet xmlns="${MAIN}" xmlns:r="${RELATIONS}">` +
    `<sheetPr><pageSetUpPr fitToPage="${print.scale === undefined ? 1 : 0}"/></sheetPr>` +
    `<dimension ref="${usedArea(placed)}"/>` +
    sheetViews(sheet, isFirst) +
    '<sheetFormatPr defaultRowHeight="13.2"/>' +
    columns(sheet) +
    `<sheetData>${rows(sheet, placed)}</sheetData>` +
    (sheet.locked ? '<sheetProtection sheet="1" objects="1" scenarios="1" formatColumns="0" formatRows="0"/>' : "") +
    (merges.length > 0
      ? `<mergeCells count="${merges.length}">${merges.map((ref) => `<mergeCell ref="${ref}"/>`).join("")}</mergeCells>`
      : "") +
    emphasis(sheet) +
    validations(sheet.validations ?? []) +
    MARGINS +
    pageSetup(sheet) +
    `<headerFooter><oddFooter>${escapeXml(`&L&8${print.foot ?? FOOT}&C&8&A&R&8Page &P of &N`)}</oddFooter></headerFooter>` +
    breaks(sheet) +
    (tableIds.length > 0
      ? `<tableParts count="${tableIds.length}">${tableIds.map((id) => `<tablePart r:id="${id}"/>`).join("")}</tableParts>`
      : "") +
    "</worksheet>"
  );
}

/** In a loop: a long sheet has more cells than a call takes arguments. */
function usedArea(placed: Placed): string {
  const area = { top: Infinity, left: Infinity, bottom: 0, right: 0 };
  for (const [row, cells] of placed) {
    area.top = Math.min(area.top, row);
    area.bottom = Math.max(area.bottom, row);
    for (const column of cells.keys()) {
      area.left = Math.min(area.left, column);
      area.right = Math.max(area.right, column);
    }
  }
  return areaName(area.top, area.left, area.bottom, area.right);
}

function sheetViews({ frozen }: SheetModel, isFirst: boolean): string {
  const selected = isFirst ? ' tabSelected="1"' : "";
  if (!frozen) return `<sheetViews><sheetView showGridLines="0"${selected} workbookViewId="0"/></sheetViews>`;
  const { rows: down, columns: across } = frozen;
  const pane = across > 0 ? "bottomRight" : "bottomLeft";
  const split = `${across > 0 ? ` xSplit="${across}"` : ""} ySplit="${down}" topLeftCell="${cellName(down + 1, across + 1)}"`;
  return (
    `<sheetViews><sheetView showGridLines="0"${selected} workbookViewId="0">` +
    `<pane${split} activePane="${pane}" state="frozen"/><selection pane="${pane}"/></sheetView></sheetViews>`
  );
}

const columns = ({ widths, columnStyles = [] }: SheetModel): string =>
  `<cols>${widths
    .map((width, i) => {
      const style = columnStyles[i] ? ` style="${styleIndex(columnStyles[i])}"` : "";
      return `<col min="${i + 1}" max="${i + 1}" width="${width}"${style} customWidth="1"/>`;
    })
    .join("")}</cols>`;

const rows = (sheet: SheetModel, placed: Placed): string =>
  [...placed]
    .map(([row, cells]) => {
      const height = rowHeight(sheet, row, cells);
      const inside = [...cells].map(([column, cell]) => cellXml(cellName(row, column), cell)).join("");
      // Not marked as custom: a spreadsheet program may fit the row again when its text changes.
      return `<row r="${row}"${height === undefined ? "" : ` ht="${height}"`}>${inside}</row>`;
    })
    .join("");

function cellXml(name: string, { style, value, formula }: PlacedCell): string {
  const head = `<c r="${name}" s="${styleIndex(style)}"`;
  if (!formula) return value === null ? `${head}/>` : `${head}${constant(value)}</c>`;
  const { text, ref } = formula;
  const f = ref ? `<f t="array" ref="${ref}">${escapeXml(text)}</f>` : `<f>${escapeXml(text)}</f>`;
  const [type, stored] = cached(value);
  return `${head}${type}${ref ? DYNAMIC : ""}>${f}${stored}</c>`;
}

function constant(value: CellValue): string {
  if (typeof value === "string") return ` t="inlineStr"><is><t xml:space="preserve">${escapeXml(value)}</t></is>`;
  const [type, stored] = cached(value);
  return `${type}>${stored}`;
}

/** Type attribute and value element of a formula's answer. */
function cached(value: CellValue): [type: string, stored: string] {
  if (value === null) return ["", ""];
  if (typeof value === "string") return [' t="str"', `<v>${escapeXml(value)}</v>`];
  if (typeof value === "boolean") return [' t="b"', `<v>${value ? 1 : 0}</v>`];
  if (value instanceof CellError) return [' t="e"', `<v>${escapeXml(value.code)}</v>`];
  return ["", `<v>${value}</v>`];
}

const emphasis = ({ emphasis: found = [] }: SheetModel): string =>
  found
    .map(
      ({ area, formula, look }, i) =>
        `<conditionalFormatting sqref="${area}"><cfRule type="expression" dxfId="${EMPHASIS.indexOf(look)}" priority="${i + 1}">` +
        `<formula>${escapeXml(formula)}</formula></cfRule></conditionalFormatting>`,
    )
    .join("");

function validations(found: readonly Validation[]): string {
  if (found.length === 0) return "";
  const inside = found.map(({ area, type, formula, prompt, refusal }) => {
    const operator = type === "list" ? "" : ' operator="greaterThan"';
    const shows = refusal ? ` showErrorMessage="1" error="${escapeXml(refusal)}"` : "";
    return (
      `<dataValidation type="${type}"${operator} allowBlank="1" showInputMessage="1"${shows} ` +
      `prompt="${escapeXml(prompt)}" sqref="${area}"><formula1>${escapeXml(formula)}</formula1></dataValidation>`
    );
  });
  return `<dataValidations count="${found.length}">${inside.join("")}</dataValidations>`;
}

function pageSetup({ print }: SheetModel): string {
  const orientation = print.landscape ? "landscape" : "portrait";
  // Paper 1 is letter. One page wide and as many long as it takes, unless a scale is given.
  return print.scale === undefined
    ? `<pageSetup paperSize="1" orientation="${orientation}" fitToWidth="${print.pagesWide ?? 1}" fitToHeight="0"/>`
    : `<pageSetup paperSize="1" scale="${print.scale}" orientation="${orientation}"/>`;
}

function breaks({ print: { breaksBefore = [] } }: SheetModel): string {
  if (breaksBefore.length === 0) return "";
  const inside = breaksBefore.map((row) => `<brk id="${row - 1}" max="16383" man="1"/>`).join("");
  return `<rowBreaks count="${breaksBefore.length}" manualBreakCount="${breaksBefore.length}">${inside}</rowBreaks>`;
}
