import type { Pivot, PivotAxis } from "../evaluate/pivot.ts";
import { parseArea } from "../formula/address.ts";
import type { Package } from "../package/package.ts";
import { parseXml, type Tag } from "../package/xml.ts";
import { decodeEscapes } from "./escapes.ts";
import { isoSerial } from "./iso-serial.ts";
import { MAIN } from "./names.ts";

/** The pivot tables of a sheet's part (ECMA-376 part 1, 18.10). */
export function readPivots(opened: Package, sheet: string): Pivot[] {
  return opened.relationships(sheet).flatMap(({ type, target }) => {
    if (type !== "pivotTable") return [];
    const cache = opened.relationships(target).find((relation) => relation.type === "pivotCacheDefinition");
    const text = opened.text(target);
    const source = cache && opened.text(cache.target);
    const pivot = text && source && readPivot(text, readCache(source));
    return pivot ? [pivot] : [];
  });
}

/** Elements of SpreadsheetML, each with the names of those around it. */
function walk(text: string, open: (tag: Tag, around: readonly string[]) => void): void {
  const around: string[] = [];
  parseXml(text, {
    open: (tag) => {
      if (tag.uri === MAIN) open(tag, around);
      around.push(tag.local);
    },
    close: () => around.pop(),
  });
}

interface Field {
  readonly name: string;
  /** Labels of its shared items. */
  readonly items: (string | undefined)[];
  isText: boolean;
}

interface Cache {
  readonly fields: Field[];
  strange: string | undefined;
}

const STRANGE: Readonly<Record<string, string>> = {
  cacheHierarchies: "of a cube",
  fieldGroup: "with grouped fields",
  calculatedItem: "with calculated items",
};

function readCache(text: string): Cache {
  const cache: Cache = { fields: [], strange: undefined };
  walk(text, ({ local, attributes: { name = "", v = "", refreshOnLoad = "0" } }, around) => {
    cache.strange ??= refreshOnLoad === "0" || refreshOnLoad === "false" ? STRANGE[local] : "refreshed on opening";
    const field = cache.fields.at(-1);
    if (local === "cacheField") cache.fields.push({ name: nameOf(name), items: [], isText: true });
    else if (around.at(-1) === "sharedItems" && field) {
      field.items.push(labelOf(local, v));
      field.isText &&= local === "s";
    }
  });
  return cache;
}

const nameOf = (text: string): string => decodeEscapes(text).toLowerCase();

/** An empty item stands as "(blank)" in the table. */
function labelOf(kind: string, v: string): string | undefined {
  if (kind === "s") return nameOf(v);
  if (kind === "n") return String(Number(v));
  if (kind === "d") return String(isoSerial(v));
  if (kind === "b") return v === "1" || v === "true" ? "true" : "false";
  return kind === "m" ? "(blank)" : undefined;
}

/** The "field" that parts several data fields. */
const VALUES = -2;

interface Line {
  readonly kind: string;
  readonly data: number;
  /** Places among the items of their fields, as many as there are fields or fewer. */
  readonly places: number[];
}

interface Side {
  readonly fields: number[];
  readonly lines: Line[];
}

function readPivot(text: string, { fields, strange }: Cache): Pivot | undefined {
  let location: Tag["attributes"] = {};
  let reason = strange;
  const [row, col]: [Side, Side] = [
    { fields: [], lines: [] },
    { fields: [], lines: [] },
  ];
  const sides: Readonly<Record<string, Side>> = { row, col };
  const labels: (string | undefined)[][] = [];
  const data: { name: string; source: string }[] = [];
  walk(text, ({ local, attributes: at }, around) => {
    const side = sides[/^(row|col)(?:Items|Fields)$/.exec(around[1] ?? "")?.[1] ?? ""];
    const line = side?.lines.at(-1);
    if (local === "location") location = at;
    else if (local === "pivotField") labels.push([]);
    else if (local === "item" && around.at(-1) === "items") {
      const field = fields[labels.length - 1];
      const renamed = at["n"] !== undefined;
      if (renamed && field) field.isText = false;
      labels.at(-1)?.push(renamed || at["x"] === undefined ? undefined : field?.items[Number(at["x"])]);
    } else if (local === "field") side?.fields.push(Number(at["x"]));
    else if (local === "i" && side) {
      const repeated = line?.places.slice(0, Number(at["r"] ?? 0)) ?? [];
      side.lines.push({ kind: at["t"] ?? "data", data: Number(at["i"] ?? 0), places: repeated });
    } else if (local === "x" && around[2] === "i") line?.places.push(Number(at["v"] ?? 0));
    else if (local === "dataField") {
      if ((at["showDataAs"] ?? "normal") !== "normal") reason ??= "that shows shares or differences";
      const source = fields[Number(at["fld"])]?.name ?? "";
      data.push({ name: nameOf(at["name"] ?? source), source });
    }
  });
  const area = parseArea(location["ref"] ?? "");
  if (!area) return undefined;
  const [dataTop, dataLeft] = [
    area.top + Number(location["firstDataRow"]),
    area.left + Number(location["firstDataCol"]),
  ];
  const [rows, columns] = [axisOf(row, labels), axisOf(col, labels)];
  if (Object.values(sides).some(({ lines }) => lines.some(({ kind }) => !(kind in READ))))
    reason ??= "with subtotals of its own";
  // A figure is told by its place: where the lines do not fill the area, nobody knows which is which.
  if (rows.lines.length !== area.bottom - dataTop + 1 || columns.lines.length !== area.right - dataLeft + 1)
    reason ??= "whose lines are not all said";
  return { ...area, dataTop, dataLeft, fields, data, rows, columns, strange: reason };
}

/** Kinds of lines that are read, and whether they name items. */
const READ: Readonly<Record<string, boolean>> = { data: true, default: true, grand: false, blank: false };

function axisOf({ fields, lines }: Side, labels: readonly (readonly (string | undefined)[])[]): PivotAxis {
  const itemsOf = ({ places }: Line) =>
    places.flatMap((place, depth) => {
      const field = fields[depth];
      return field === undefined || field === VALUES ? [] : [labels[field]?.[place]];
    });
  return {
    fields: fields.filter((field) => field !== VALUES),
    lines: lines.map((line) =>
      line.kind === "blank" ? undefined : { items: READ[line.kind] ? itemsOf(line) : [], data: line.data },
    ),
  };
}
