import { shopCorrections } from "../../calc/strip/shop-correction.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { fromInternal } from "../../units/system.ts";
import { unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { strips } from "../strip/strips-table.ts";
import { CORRECTION_HEADERS } from "../tables/corrections.ts";

export const stripTable = defineFunction({
  name: "STRIP.TABLE",
  question: "What do the shop's own test strips say: by how much do its bends differ from the prediction?",
  parameters: { strips: strips(), ...unitsAndData() },
  long: true,
  result: { kind: "table", columns: CORRECTION_HEADERS },
  example: {
    formula:
      '=INDEX(SHOP.STRIP.TABLE({"Material","Thickness (in)","Blank (in)","Flange 1 (in)","Flange 2 (in)","Bend angle (deg)","Opening (in)";"A36",0.25,4.53,2,3,90,2}),2,2)',
    answer: "wrapped",
  },
  source:
    "K from blank, flanges and angle on the predicted radius; precision-weighted mean with prior N(0, 0.05^2) (derived)",
  calculate: ({ strips: { records, unread } }, { system, work }): CellMatrix => [
    [...CORRECTION_HEADERS],
    ...shopCorrections(records, work).map((row, i) => [
      row.material,
      row.regime,
      row.strips,
      row.offset,
      row.deviation,
      row.spread ?? "",
      row.slope?.perDecade ?? "",
      row.slope?.about ?? "",
      row.strength ?? "",
      row.springback ?? "",
      ...[row.opening, row.thicknessFrom, row.thicknessTo].map((value) => fromInternal(value, "length", system)),
      [
        ...(i === 0 ? unread : []),
        ...row.outliers.map(({ message }) => message),
        row.few ? "fewer than three strips: average more before you trust it" : "",
      ]
        .filter(Boolean)
        .join("; "),
    ]),
  ],
});
