/** What the shop's own test strips and its bed say. */
import { headed, value } from "../../../../job/building/cells.ts";
import { shop } from "../../../../job/building/formulas.ts";
import type { SheetCell, SheetModel } from "../../../../job/xlsx/model.ts";
import type { StyleName } from "../../../../job/xlsx/styles.ts";

const HEADER_ROW = 4;
const of = (header: string): string => `Strips[${header}]`;
export const CORRECTION = `_xlfn.ANCHORARRAY(Correction!A${HEADER_ROW})`;

const heads = (styles: readonly StyleName[]): StyleName[] =>
  styles.map((style) => (style === "figure" || style === "count" ? "headerRight" : "header"));

export function correctionSheet(): SheetModel {
  const spills: StyleName[] = [
    "label",
    "wrapped",
    "count",
    "figure",
    "figure",
    "figure",
    "figure",
    "figure",
    "figure",
    "figure",
    "wrapped",
  ];
  return {
    name: "Correction",
    widths: [13, 11, 8, 10, 10, 10, 10, 12, 10, 11, 52],
    cells: [
      ...headed(
        "Correction",
        "By how much the shop's bends differ from the prediction, from the sheet Strips; the sheet Air bends uses it. Locked.",
      ),
      {
        row: HEADER_ROW,
        column: 1,
        heads: heads(spills),
        spills,
        formula: shop("STRIP.TABLE", { strips: "Strips[#All]" }),
      },
    ],
    merges: ["A2:K2"],
    locked: true,
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true },
  };
}

export function stripCheckSheet(): SheetModel {
  const copies: readonly (readonly [string, StyleName])[] = [
    ["Material", "label"],
    ["Thickness", "text"],
    ["Bend angle (deg)", "figure"],
  ];
  const answers: readonly (readonly [string, StyleName])[] = [
    ["Deduction (in)", "figure"],
    ["Predicted (in)", "figure"],
    ["K, predicted radius", "figure"],
    ["Deviation of K", "figure"],
    ["Contact", "text"],
  ];
  return {
    name: "Strip check",
    widths: [13, 11, 11, 12, 12, 12, 12, 12],
    cells: [
      ...headed(
        "Strip check",
        "Every strip of the sheet Strips against its prediction. A deviation far from its neighbors calls for another look at the strip. Locked.",
      ),
      ...[...copies, ...answers].map(([header, style], i) =>
        value(HEADER_ROW, i + 1, style === "figure" ? "headerRight" : "header", header),
      ),
      ...copies.map(
        ([header, style], i): SheetCell => ({
          row: HEADER_ROW + 1,
          column: i + 1,
          formula: of(header),
          spills: [style],
        }),
      ),
      {
        row: HEADER_ROW + 1,
        column: copies.length + 1,
        spills: answers.map(([, style]) => style),
        formula: shop("STRIP.DEDUCTION", {
          material: of("Material"),
          thickness: of("Thickness"),
          blank: of("Blank (in)"),
          flanges: `${of("Flange 1 (in)")}&"; "&${of("Flange 2 (in)")}`,
          bend_angle: of("Bend angle (deg)"),
          die_opening: of("Opening (in)"),
          punch_nose: of("Punch nose (in)"),
        }),
      },
    ],
    merges: ["A2:H2"],
    locked: true,
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true },
  };
}

export const evennessSheet = (): SheetModel => ({
  name: "Evenness",
  widths: [18, 12, 8, 60],
  cells: [
    ...headed(
      "Evenness",
      "Is the brake true along its bed? From the strips of the sheet Bed, all bent in one stroke setting over the die chosen here. Shaded cells are inputs. Correct ram or crowning only as the machine's manual says.",
    ),
    value(4, 1, "label", "Die opening (in)"),
    value(4, 2, "inputNumber", 1),
    value(5, 1, "label", "Parts need (deg)"),
    value(5, 2, "inputNumber", 0.5),
    {
      row: 7,
      column: 1,
      heads: ["header", "headerRight", "header", "header"],
      spills: ["label", "figure", "text", "wrapped"],
      formula: shop("STRIP.EVENNESS", {
        along: "Bed[Along (in)]",
        bend_angles: "Bed[Bend angle (deg)]",
        die_opening: "B4",
        tolerance: "B5",
      }),
    },
  ],
  merges: ["A2:D2"],
  locked: true,
  print: { landscape: false },
});
