/** The `data` argument: blank, an edition's name, or a range of materials laid over the edition that it names. */

import { MaterialTable } from "../../bill/nouns/material-table.ts";
import { type Fact, fact } from "../../data/fact.ts";
import { QUALITY } from "../../data/jet-rules.ts";
import { CURRENT_EDITION, EDITIONS } from "../../data/materials/editions.ts";
import type { GaugeSeries, Material } from "../../data/materials/material.ts";
import { type CellMatrix, type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { entryOf, topLeft, widthOf } from "../../units/certain.ts";
import { message, noAnswer, Refusal, wrong } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import { type UnitSystem, unitName } from "../../units/system.ts";
import { PROPERTIES, type PropertyKey } from "./property.ts";
import { between, type Columns, notNegative, positive, readTable } from "./read-table.ts";
import { unreadColumns } from "./unread-columns.ts";

const GAUGE_SERIES: readonly GaugeSeries[] = ["steel", "galvanized", "stainless", "aluminum"];

const tables = new Map<string, MaterialTable>(EDITIONS.map((edition) => [edition.name, new MaterialTable(edition)]));
export const currentMaterials = (): MaterialTable => entryOf(tables, CURRENT_EDITION.name);

const EDITION_NAMES = EDITIONS.map((edition) => `"${edition.name}"`).join(", ");

export function readData(given: CellMatrix, name: string, system: UnitSystem): MaterialTable {
  const single = given.length === 1 && widthOf(given) === 1 ? topLeft(given) : undefined;
  if (single === undefined) return readRange(given, name, system);
  if (isBlank(single)) return currentMaterials();
  if (isCellError(single) || typeof single === "boolean")
    throw wrong(name, "an edition's name or a range with a header row", single);
  return editionNamed(single, name, ", or a range with a header row");
}

function editionNamed(given: string | number, label: string, orElse = ""): MaterialTable {
  const table = tables.get(String(given).trim());
  if (!table) throw noAnswer(label, `an edition of the materials, ${EDITION_NAMES}${orElse}`, showGiven(given));
  return table;
}

const EDITION_HEADER = "Materials edition";
/** Any of these in a header beside "Name" or "Material" makes a range one of materials. */
export const PROPERTY_HEADERS: readonly string[] = [
  EDITION_HEADER,
  "Least radius",
  ...PROPERTIES.map(({ name }) => name),
];

/** Ratios and strengths that no material can have are refused: a typing slip here would spoil a whole bill. */
const RULES: Partial<Record<PropertyKey, Columns[string]["rule"]>> = {
  poisson: between(0, 0.5),
  hardeningExponent: between(0, 1),
  knifeGap: between(0, 0.5),
  airRadiusLow: between(0, 1),
  airRadiusHigh: between(0, 1),
  usualRadius: notNegative,
  timedQuality: between(QUALITY.from, QUALITY.to),
};

const COLUMNS: Columns = {
  name: { headers: ["Name", "Material"], kind: "text", optional: "cell" },
  edition: { headers: [EDITION_HEADER], kind: "text", optional: true },
  source: { headers: ["Source"], kind: "text", optional: true },
  gaugeSeries: { headers: ["Gauge series"], kind: "text", optional: true },
  leastRadius: { headers: ["Least radius"], kind: "number", optional: true, rule: notNegative },
  ...Object.fromEntries(
    PROPERTIES.map(({ key, name, quantity }) => [
      key,
      { headers: [name], kind: quantity ?? "number", optional: true, rule: RULES[key] ?? positive } as const,
    ]),
  ),
};

/** What people write beside the figures. A misspelled property would silently drop its figures. */
const WITHOUT_EFFECT: Columns = {
  note: { headers: ["Note"], kind: "cell" },
  notes: { headers: ["Notes"], kind: "cell" },
  date: { headers: ["Date"], kind: "cell" },
  supplier: { headers: ["Supplier"], kind: "cell" },
  example: { headers: ["Example"], kind: "cell" },
};

type OwnRow = Record<string, string | number | undefined> & { row: number };

/** A row without a name only says which edition the others are laid over. */
function readRange(given: CellMatrix, name: string, system: UnitSystem): MaterialTable {
  const rows = readTable(given, COLUMNS, name, system) as unknown as OwnRow[];
  const [unread] = unreadColumns(given, { ...COLUMNS, ...WITHOUT_EFFECT });
  if (unread !== undefined)
    throw new Refusal("#VALUE!", message(name, "a table of materials and their properties", unread));
  let base = currentMaterials();
  let said: string | undefined;
  for (const { row, edition } of rows) {
    if (edition === undefined) continue;
    const label = `${name} row ${row} column "${EDITION_HEADER}"`;
    if (said !== undefined && said !== edition) throw wrong(label, `the same in all rows, "${said}"`, edition);
    said = String(edition);
    base = editionNamed(said, label);
  }
  return new MaterialTable(base.edition, readOverrides(rows, name, base));
}

function readOverrides(rows: readonly OwnRow[], table: string, base: MaterialTable): Material[] {
  return rows.flatMap((own) => {
    const name = own["name"] as string | undefined;
    if (name === undefined) {
      if (own["edition"] === undefined) throw wrong(`${table} row ${own.row} column "Name"`, "given", null);
      return [];
    }
    const known = base.get(name);
    const source = (own["source"] as string | undefined) ?? "the workbook's own row";
    const facts: Partial<Record<PropertyKey, Fact>> = {};
    for (const { key, quantity } of PROPERTIES) {
      const value = own[key];
      if (typeof value === "number")
        facts[key] = fact(value, quantity ? unitName(quantity, "mm") : "", "given", source);
    }
    const leastRadius = own["leastRadius"] as number | undefined;
    return {
      ...(base.edition.airMethod ? { airMethod: base.edition.airMethod } : {}),
      ...known,
      ...facts,
      name: known?.name ?? name,
      aliases: known?.aliases ?? [],
      ...(own["gaugeSeries"] === undefined
        ? {}
        : { gaugeSeries: readSeries(own["gaugeSeries"], `${table} row ${own.row} column "Gauge series"`) }),
      ...(leastRadius === undefined ? {} : { radiusRule: { table: "given", multiple: leastRadius, source } as const }),
      ...(facts.tensileHigh ? { tensileHighIs: "planning value" as const } : {}),
    };
  });
}

function readSeries(given: CellValue, label: string): GaugeSeries {
  const found = GAUGE_SERIES.find((series) => series === String(given).trim().toLowerCase());
  if (!found) throw wrong(label, `one of ${GAUGE_SERIES.join(", ")}`, given);
  return found;
}
