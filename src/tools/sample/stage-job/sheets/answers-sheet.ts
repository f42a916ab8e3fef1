import { value } from "../../building/cells.ts";
import { lookUp, shop, spillOf } from "../../building/formulas.ts";
import { READ_ME, STATE_CELL } from "../../building/read-me.ts";
import type { SheetCell, SheetModel } from "../../xlsx/model.ts";
import type { StyleName } from "../../xlsx/styles.ts";
import { cellName, columnName } from "../../xlsx/xml.ts";
import { JOB } from "../bill/job.ts";

const HEADER_ROW = 8;
const FIRST = HEADER_ROW + 1;
/** Rows that the emphasis covers: room for a longer bill. */
const LAST_EMPHASIS = 400;

interface Column {
  readonly key: string;
  readonly header: string;
  readonly width: number;
  readonly style: StyleName;
  /** Undefined: filled by the spill of the column before. */
  readonly formula?: string;
}

const part = (column: string): string => `Parts[${column}]`;
const sheet = { material: part("Material"), thickness: part("Thickness") };

const COLUMNS: readonly Column[] = [
  { key: "part", header: "Part", width: 8, style: "label", formula: part("Part") },
  { key: "description", header: "Description", width: 27, style: "wrapped", formula: part("Description") },
  { key: "quantity", header: "Quantity", width: 10, style: "count", formula: part("Quantity") },
  { key: "material", header: "Material", width: 12, style: "text", formula: part("Material") },
  { key: "thickness", header: "Thickness", width: 11, style: "text", formula: part("Thickness") },
  { key: "die", header: "Die", width: 10, style: "text", formula: part("Die") },
  {
    key: "flat",
    header: "Flat length (in)",
    width: 9,
    style: "inch",
    formula: shop("AIR.FLAT", {
      ...sheet,
      flanges: part("Flanges"),
      bend_angles: part("Bend angles"),
      die_opening: "{opening}",
      punch_nose: "{nose}",
    }),
  },
  { key: "width", header: "Blank width (in)", width: 9, style: "inch", formula: part("Bend length") },
  {
    key: "radius",
    header: "Inside radius (in)",
    width: 8,
    style: "inchShort",
    formula: shop("AIR.RADIUS", { ...sheet, bend_angle: "90", die_opening: "{opening}", punch_nose: "{nose}" }),
  },
  {
    key: "tons",
    header: "Force (US ton)",
    width: 8,
    style: "tenth",
    formula: shop("BEND.TONNAGE", { ...sheet, bend_length: part("Bend length"), die_opening: "{opening}" }),
  },
  {
    key: "weight",
    header: "Weight, all (lb)",
    width: 12,
    style: "tenth",
    formula: shop("BLANK.WEIGHT", { ...sheet, length: "{flat}", width: "{width}", quantity: part("Quantity") }),
  },
  {
    key: "status",
    header: "Status",
    width: 11,
    style: "status",
    formula:
      'IFERROR(IF((INDEX({bend},0,1)="stop")+(INDEX({shear},0,1)="stop")>0,"stop",' +
      'IF((INDEX({bend},0,1)="check")+(INDEX({shear},0,1)="check")>0,"check","clear")),"unreadable")',
  },
  {
    key: "sentence",
    header: "What the checks say",
    width: 78,
    style: "wrapped",
    formula:
      'IF(INDEX({shear},0,1)="clear",INDEX({bend},0,2),' +
      'IF(INDEX({bend},0,1)="clear",INDEX({shear},0,2),INDEX({bend},0,2)&" "&INDEX({shear},0,2)))',
  },
  { key: "gap", header: "", width: 3, style: "plain" },
  {
    key: "opening",
    header: "Die opening (in)",
    width: 11,
    style: "inch",
    formula: lookUp(part("Die"), "Dies[Die]", "Dies[Opening (in)]"),
  },
  {
    key: "nose",
    header: "Punch nose (in)",
    width: 11,
    style: "inch",
    formula: lookUp(part("Punch"), "Punches[Punch]", "Punches[Nose radius (in)]"),
  },
  {
    key: "bend",
    header: "Bend: status",
    width: 9,
    style: "status",
    formula: shop("BEND.CHECK", {
      ...sheet,
      bend_length: part("Bend length"),
      flanges: part("Flanges"),
      bend_angles: part("Bend angles"),
      die: part("Die"),
      brake: "Brakes[#All]",
      dies: "Dies[#All]",
      punches: "Punches[#All]",
      punch: part("Punch"),
      grain: part("Grain"),
      hole_distance: part("Hole distance"),
    }),
  },
  { key: "bend sentence", header: "Bend: sentence", width: 60, style: "text" },
  {
    key: "shear",
    header: "Shear: status",
    width: 9,
    style: "status",
    formula: shop("SHEAR.CHECK", {
      ...sheet,
      cut_length: "IF({flat}>{width},{flat},{width})",
      strip_width: "IF({flat}<{width},{flat},{width})",
      shears: "Shears[#All]",
    }),
  },
  { key: "shear sentence", header: "Shear: sentence", width: 60, style: "text" },
];

const columnOf = (key: string): number => COLUMNS.findIndex((column) => column.key === key) + 1;
const anchor = (key: string): string => cellName(FIRST, columnOf(key));
/** "{flat}" is everything the flat lengths spill. */
const linked = (formula: string): string => formula.replace(/\{(\w+)\}/g, (_, key: string) => spillOf(anchor(key)));

const NUMBERS: readonly StyleName[] = ["count", "inch", "inchShort", "tenth"];

function column({ key, header, style, formula }: Column, index: number): SheetCell[] {
  if (key === "gap") return [];
  const head = value(HEADER_ROW, index + 1, NUMBERS.includes(style) ? "headerRight" : "header", header);
  if (formula === undefined) return [head];
  const neighbour = COLUMNS[index + 1];
  const spills =
    neighbour && neighbour.formula === undefined && neighbour.key !== "gap" ? [style, neighbour.style] : [style];
  return [head, { row: FIRST, column: index + 1, formula: linked(formula), spills }];
}

const TOTALS: readonly (readonly [label: string, formula: string, style: StyleName])[] = [
  ["Lines", "COUNTA({part})", "totalCount"],
  ["Pieces", "SUM({quantity})", "totalCount"],
  ["Weight (lb)", "SUM({weight})", "totalTenth"],
];
const WORDS = ["stop", "check", "clear", "unreadable"] as const;

export function answersSheet(): SheetModel {
  const total = (row: number, at: number, label: string, formula: string, style: StyleName): SheetCell[] => [
    value(row, at, "totalLabel", label),
    { row, column: at + 1, style, formula: linked(formula) },
  ];
  const status = columnName(columnOf("status"));
  const area = `${status}${FIRST}:${status}${LAST_EMPHASIS}`;
  return {
    name: "Answers",
    widths: COLUMNS.map(({ width }) => width),
    cells: [
      value(1, 1, "title", "Answers"),
      value(1, columnOf("sentence"), "heading", JOB),
      { row: 2, column: 1, style: "plain", formula: `'${READ_ME}'!${STATE_CELL}` },
      value(2, columnOf("opening"), "aside", "Steps towards the columns on the left; not printed."),
      ...TOTALS.flatMap(([label, formula, style], i) => total(3 + i, columnOf("description"), label, formula, style)),
      ...WORDS.flatMap((word, i) =>
        total(3 + i, columnOf("weight"), word, `COUNTIF({status},"${word}")`, "totalCount"),
      ),
      ...COLUMNS.flatMap(column),
    ],
    emphasis: [
      { area, formula: `${status}${FIRST}="stop"`, look: "stop" },
      { area, formula: `OR(${status}${FIRST}="check",${status}${FIRST}="unreadable")`, look: "check" },
    ],
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: {
      landscape: true,
      area: `A:${columnName(columnOf("sentence"))}`,
      titleRows: `${HEADER_ROW}:${HEADER_ROW}`,
    },
  };
}
