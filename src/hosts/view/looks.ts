/** How the workbook shows its cells: number format, bold letters, shading, column widths; read from its styles. */
import { parseXml } from "../../sheet/package/xml.ts";
import { MAIN } from "../../sheet/workbook/names.ts";
import type { Sheet } from "../../sheet/workbook/sheet.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import type { CellLook } from "./protocol.ts";

export interface Look extends CellLook {
  /** A format code, or undefined for General. */
  readonly format: string | undefined;
}
const PLAIN: Look = { format: undefined, bold: false, shaded: false };

/** Formats that a file names by number only (ECMA-376 part 1, 18.8.30, memory). */
const BUILT_IN: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  11: "0.00E+00",
  12: "# ?/?",
  13: "# ??/??",
  14: "m/d/yyyy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  18: "h:mm AM/PM",
  19: "h:mm:ss AM/PM",
  20: "h:mm",
  21: "h:mm:ss",
  22: "m/d/yyyy h:mm",
  49: "@",
};

/** One look for every style number of the workbook. */
export function readLooks({ package: opened }: Workbook): readonly Look[] {
  const main = opened.relationships("").find(({ type }) => type === "officeDocument")?.target ?? "xl/workbook.xml";
  const part = opened.relationships(main).find(({ type, external }) => type === "styles" && !external)?.target;
  const xml = part && opened.text(part);
  if (!xml) return [];
  const formats = new Map<number, string>();
  const bold: boolean[] = [];
  const filled: boolean[] = [];
  const looks: Look[] = [];
  const path: string[] = [];
  parseXml(xml, {
    open: ({ local, uri, attributes }) => {
      path.push(uri === MAIN ? local : "");
      const [parent, grandparent] = [path.at(-2), path.at(-3)];
      if (local === "numFmt" && parent === "numFmts")
        formats.set(Number(attributes["numFmtId"]), attributes["formatCode"] ?? "General");
      else if (local === "font" && parent === "fonts") bold.push(false);
      else if (local === "b" && parent === "font" && grandparent === "fonts")
        bold[bold.length - 1] = attributes["val"] !== "0";
      else if (local === "fill" && parent === "fills") filled.push(false);
      else if (local === "patternFill" && parent === "fill" && grandparent === "fills")
        filled[filled.length - 1] = attributes["patternType"] === "solid";
      else if (local === "xf" && parent === "cellXfs") {
        const id = Number(attributes["numFmtId"] ?? 0);
        looks.push({
          format: id === 0 ? undefined : (formats.get(id) ?? BUILT_IN[id]),
          bold: bold[Number(attributes["fontId"] ?? 0)] ?? false,
          shaded: filled[Number(attributes["fillId"] ?? 0)] ?? false,
        });
      }
    },
    text: () => undefined,
    close: () => {
      path.pop();
    },
  });
  return looks;
}

export interface SheetLooks {
  at(row: number, column: number): Look;
  /** In the workbook's unit, characters. */
  width(column: number): number;
}

const USUAL_WIDTH = 8.43;

export function sheetLooks(sheet: Sheet, xml: string | undefined, looks: readonly Look[]): SheetLooks {
  const byCell = new Map<number, number>();
  const columns: { from: number; to: number; width: number; style: number }[] = [];
  if (xml !== undefined) {
    const { layout } = sheet;
    for (let i = 0; i < layout.cellRow.length; i++) {
      const style = styleOf(xml, layout.cellStart.at(i));
      if (style > 0) byCell.set(layout.cellRow.at(i) * WIDTH + layout.cellColumn.at(i), style);
    }
    for (const [tag] of xml.slice(0, Math.max(0, layout.dataOpenEnd)).matchAll(/<(?:[\w.-]+:)?col\s[^>]*>/g)) {
      const number = (name: string, otherwise: number) =>
        Number(new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(tag)?.[1] ?? otherwise);
      columns.push({
        from: number("min", 1) - 1,
        to: number("max", 1) - 1,
        width: number("width", USUAL_WIDTH),
        style: number("style", 0),
      });
    }
  }
  const ofColumn = (column: number) => columns.find(({ from, to }) => column >= from && column <= to);
  return {
    at: (row, column) => looks[byCell.get(row * WIDTH + column) ?? ofColumn(column)?.style ?? 0] ?? PLAIN,
    width: (column) => ofColumn(column)?.width ?? USUAL_WIDTH,
  };
}

const WIDTH = 16_384; // columns of a sheet

function styleOf(xml: string, start: number): number {
  const tag = xml.slice(start, xml.indexOf(">", start));
  return Number(/\ss\s*=\s*["'](\d+)["']/.exec(tag)?.[1] ?? 0);
}
