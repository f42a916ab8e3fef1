/** What comes out of the bends of the sheet Bends, with the shop's own correction. */
import { headed, value } from "../../../../job/building/cells.ts";
import { lookUp, shop, spillOf } from "../../../../job/building/formulas.ts";
import type { SheetCell, SheetModel } from "../../../../job/xlsx/model.ts";
import type { StyleName } from "../../../../job/xlsx/styles.ts";
import { cellName } from "../../../../job/xlsx/xml.ts";
import { cellAt } from "../../../../units/certain.ts";
import { BENDS } from "../bill/catalogue-parts.ts";
import { CORRECTION } from "./strip-sheets.ts";

const HEADER_ROW = 4;
const FIRST = HEADER_ROW + 1;
const of = (header: string): string => `Bends[${header}]`;
const OPENING = spillOf(cellName(FIRST, 2));
const NOSE = spillOf(cellName(FIRST, 3));
const SHEET = { material: of("Material"), thickness: of("Thickness") };
const BEND = { ...SHEET, bend_angle: of("Bend angle (deg)"), die_opening: OPENING, punch_nose: NOSE };
const CORRECTED = { ...BEND, correction: CORRECTION };

const COLUMNS: readonly (readonly [header: string, width: number, style: StyleName, formula: string | undefined])[] = [
  ["Bend", 14, "label", of("Bend")],
  ["Die opening (in)", 9, "inch", lookUp(of("Die"), "Dies[Die]", "Dies[Opening (in)]")],
  ["Punch nose (in)", 9, "inch", lookUp(of("Punch"), "Punches[Punch]", "Punches[Nose radius (in)]")],
  ["Radius (in)", 9, "inch", shop("AIR.RADIUS", BEND)],
  ["Deduction, rule (in)", 10, "inch", shop("AIR.DEDUCTION", { ...BEND, method: '"rule"' })],
  ["Deduction, mechanics (in)", 10, "inch", shop("AIR.DEDUCTION", { ...BEND, method: '"mechanics"' })],
  ["Deduction, corrected (in)", 10, "inch", shop("AIR.DEDUCTION", CORRECTED)],
  [
    "Flat, corrected (in)",
    10,
    "inch",
    shop("AIR.FLAT", {
      ...SHEET,
      flanges: of("Flanges"),
      bend_angles: of("Bend angle (deg)"),
      die_opening: OPENING,
      punch_nose: NOSE,
      correction: CORRECTION,
    }),
  ],
  ["Travel from pinch (in)", 9, "inch", shop("AIR.DEPTH", CORRECTED)],
  ["Springback (deg)", 13, "tenth", shop("AIR.SPRINGBACK", CORRECTED)],
  ["Force (US ton)", 9, "tenth", shop("AIR.TONNAGE", { ...CORRECTED, bend_length: of("Bend length (in)") })],
  [
    "Drawing radius",
    10,
    "wrapped",
    shop("AIR.ACCEPT", {
      drawing_radius: of("Drawing radius (in)"),
      tolerance: of("Radius tolerance (in)"),
      ...SHEET,
      die_opening: OPENING,
      punch_nose: NOSE,
    }),
  ],
  ["What to say", 56, "wrapped", undefined],
];

export const airBendsSheet = (): SheetModel => ({
  name: "Air bends",
  widths: COLUMNS.map(([, width]) => width),
  cells: [
    ...headed(
      "Air bends",
      "The bends of the sheet Bends over our dies, three deductions side by side. Rule: as shops figure it; mechanics: solved from strength and hardening; corrected: the best of both with our own strips (sheet Correction). Depth is a first setting: go short on the first hit. Locked.",
    ),
    ...COLUMNS.flatMap(([header, , style, formula], i): SheetCell[] => [
      value(HEADER_ROW, i + 1, ["inch", "tenth"].includes(style) ? "headerRight" : "header", header),
      ...(formula === undefined
        ? []
        : [
            {
              row: FIRST,
              column: i + 1,
              formula,
              spills: [style, ...(COLUMNS[i + 1]?.[3] === undefined ? (["wrapped"] as const) : [])],
            },
          ]),
    ]),
  ],
  merges: ["A2:M2"],
  locked: true,
  frozen: { rows: HEADER_ROW, columns: 1 },
  print: { landscape: true },
});

/** One bend with its bands. */
export function oneBendSheet(): SheetModel {
  const bend = (header: string): string => lookUp("$B$4", of("Bend"), of(header));
  const inputs: readonly (readonly [string, string])[] = [
    ["Material", bend("Material")],
    ["Thickness", bend("Thickness")],
    ["Bend angle (deg)", bend("Bend angle (deg)")],
    ["Die opening (in)", lookUp(bend("Die"), "Dies[Die]", "Dies[Opening (in)]")],
    ["Punch nose (in)", lookUp(bend("Punch"), "Punches[Punch]", "Punches[Nose radius (in)]")],
  ];
  return {
    name: "One bend",
    widths: [42, 13, 11, 11, 13, 48],
    cells: [
      ...headed(
        "One bend",
        "Everything about one bend, each figure with its band from sheets and dies. Choose another in the shaded cell.",
      ),
      value(4, 1, "label", "Bend"),
      value(4, 2, "inputText", String(cellAt(BENDS, 1, 0))),
      ...inputs.flatMap(([label, formula], i): SheetCell[] => [
        value(5 + i, 1, "label", label),
        { row: 5 + i, column: 2, style: "text", formula },
      ]),
      {
        row: 11,
        column: 1,
        heads: ["header", "headerRight", "headerRight", "headerRight", "header", "header"],
        spills: ["label", "figure", "figure", "figure", "text", "wrapped"],
        formula: shop("AIR.BEND", {
          material: "B5",
          thickness: "B6",
          bend_angle: "B7",
          die_opening: "B8",
          punch_nose: "B9",
        }),
      },
    ],
    validations: [
      { area: "B4", type: "list", formula: `Bends!$A$5:$A$${4 + BENDS.length}`, prompt: "A bend of the sheet Bends" },
    ],
    merges: ["A2:F2"],
    locked: true,
    print: { landscape: true },
  };
}
