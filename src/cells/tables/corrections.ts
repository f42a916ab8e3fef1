/** The shop's own correction, as STRIP.TABLE spills it and the AIR functions take it. */
import type { Regime, StripCorrection } from "../../data/materials/material.ts";
import { mm } from "../../units/quantity.ts";
import { message, Refusal } from "../../units/refusal.ts";
import { between, type Columns, notNegative, oneOf, positive, type Row } from "../parameters/read-table.ts";
import { anyTable, isEmptyRange } from "../parameters/shop-table.ts";
import { unreadColumns } from "../parameters/unread-columns.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";

export const CORRECTION_HEADERS = [
  "Material",
  "Contact",
  "Strips",
  "K offset",
  "Deviation",
  "Spread",
  "Slope per decade",
  "About radius over thickness",
  "Strength factor",
  "Springback factor",
  "Opening",
  "Thickness from",
  "Thickness to",
  "Message",
] as const;

const OFFSET = between(-0.42, 0.42); // beyond it the neutral axis would leave the sheet (derived)

const CORRECTION_COLUMNS = {
  material: { headers: [CORRECTION_HEADERS[0]], kind: "text" },
  contact: { headers: [CORRECTION_HEADERS[1]], kind: "text", rule: oneOf("point", "wrapped") },
  offset: { headers: [CORRECTION_HEADERS[3]], kind: "number", rule: OFFSET },
  slope: { headers: [CORRECTION_HEADERS[6]], kind: "number", optional: true },
  about: { headers: [CORRECTION_HEADERS[7]], kind: "number", optional: true, rule: positive },
  strength: { headers: [CORRECTION_HEADERS[8]], kind: "number", optional: true, rule: between(0.3, 3) },
  springback: { headers: [CORRECTION_HEADERS[9]], kind: "number", optional: true, rule: between(0.3, 3) },
  opening: { headers: [CORRECTION_HEADERS[10]], kind: "length", optional: true, rule: positive },
  thicknessFrom: { headers: [CORRECTION_HEADERS[11]], kind: "length", optional: true, rule: notNegative },
  thicknessTo: { headers: [CORRECTION_HEADERS[12]], kind: "length", optional: true, rule: positive },
} as const satisfies Columns;

const asCorrection = (
  row: Row<typeof CORRECTION_COLUMNS>,
  name: string,
  { materials }: ReadContext,
): StripCorrection => ({
  material: materials.find(row.material, `${name} row ${row.row} column "Material"`).name,
  regime: row.contact.toLowerCase() as Regime,
  offset: row.offset,
  slope: row.slope === undefined || row.about === undefined ? undefined : { perDecade: row.slope, about: row.about },
  strength: row.strength,
  springback: row.springback,
  opening: length(row.opening),
  thicknessFrom: length(row.thicknessFrom),
  thicknessTo: length(row.thicknessTo),
});

const length = (value: number | undefined) => (value === undefined ? undefined : mm(value));

const CORRECTIONS = anyTable(
  "correction table",
  "The shop's own correction from test strips, as STRIP.TABLE spills it; blank for none",
  CORRECTION_COLUMNS,
  asCorrection,
  true,
);

/**
 * In a table that nobody needs to type, a misspelled factor is refused: if it were left out, every bend would silently
 * go without it.
 */
export const corrections = (): TableParameter<StripCorrection[]> => ({
  ...CORRECTIONS,
  read: (given, name, context) => {
    const [unread] = unreadColumns(given, { ...CORRECTION_COLUMNS, ...WITHOUT_EFFECT });
    if (unread !== undefined && !isEmptyRange(given))
      throw new Refusal("#VALUE!", message(name, "a table of columns that STRIP.TABLE answers", unread));
    return CORRECTIONS.read(given, name, context);
  },
});

/** What STRIP.TABLE and people write beside the figures. */
const WITHOUT_EFFECT: Columns = {
  said: { headers: ["Strips"], kind: "cell" },
  deviation: { headers: ["Deviation"], kind: "cell" },
  spread: { headers: ["Spread"], kind: "cell" },
  message: { headers: ["Message"], kind: "cell" },
  note: { headers: ["Note", "Notes", "Source", "Date"], kind: "cell" },
};
