/** Reads worksheet and table parts for the lint: what stands where, as it is written. */
import { SaxesParser } from "saxes";

export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface ReadCell {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** The row element it stands in. */
  readonly inRow: number;
  readonly metadata: number | undefined;
  formula: string | undefined;
  /** Of an array formula. */
  ref: Area | undefined;
  hasValue: boolean;
  /** Of a text that stands in the cell. */
  text: string | undefined;
}

export interface ReadSheet {
  readonly rows: readonly number[];
  readonly cells: readonly ReadCell[];
}

export function readSheetXml(xml: string): ReadSheet {
  const rows: number[] = [];
  const cells: ReadCell[] = [];
  let text = "";
  const parser = new SaxesParser();
  parser.on("opentag", ({ name, attributes }) => {
    text = "";
    if (name === "row") rows.push(Number(attributes["r"]));
    else if (name === "c") {
      const { row, column } = place(attributes["r"]!);
      const metadata = attributes["cm"] === undefined ? undefined : Number(attributes["cm"]);
      cells.push({
        name: attributes["r"]!,
        row,
        column,
        inRow: rows.at(-1)!,
        metadata,
        formula: undefined,
        ref: undefined,
        hasValue: false,
        text: undefined,
      });
    } else if (name === "f" && attributes["t"] === "array") cells.at(-1)!.ref = areaOf(attributes["ref"]!);
  });
  parser.on("text", (piece) => {
    text += piece;
  });
  parser.on("closetag", ({ name }) => {
    const cell = cells.at(-1);
    if (name === "f") cell!.formula = text;
    if (name === "v" || name === "t") cell!.hasValue = true;
    if (name === "t") cell!.text = text;
  });
  parser.write(xml).close();
  return { rows, cells };
}

export function readTableXml(xml: string): { name: string; ref: Area; columns: string[] } | undefined {
  const table: { name: string; ref: Area | undefined; columns: string[] } = { name: "", ref: undefined, columns: [] };
  const parser = new SaxesParser();
  parser.on("opentag", ({ name, attributes }) => {
    if (name === "table") {
      table.name = attributes["name"]!;
      table.ref = areaOf(attributes["ref"]!);
    } else if (name === "tableColumn") table.columns.push(attributes["name"]!);
  });
  if (xml !== "") parser.write(xml).close();
  return table.ref && { ...table, ref: table.ref };
}

function place(name: string): { row: number; column: number } {
  const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)$/.exec(name) ?? [];
  return { row: Number(digits), column: [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) };
}

function areaOf(ref: string): Area {
  const [first = ref, last = first] = ref.split(":");
  const { row: top, column: left } = place(first);
  const { row: bottom, column: right } = place(last);
  return { top, left, bottom, right };
}
