/** A job's workbook begun from a part list and a shop: what the sample has, with the person's own parts in it. */

import type { LineAnswer } from "../../bill/plan.ts";
import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";

import type { CellValue } from "../../units/cell.ts";
import { isBlank } from "../../units/cell.ts";
import { type BookShop, planIn } from "../job-plan.ts";
import type { JobContents, PartColumn, ShopSheetTable } from "../job-sheets/contents.ts";
import { MARK_PART_COLUMNS, PART_COLUMNS } from "../job-sheets/parts-sheet.ts";
import { BILL_KEYS, titleOf } from "../part-list/heading-words.ts";
import { type PartList, partRows } from "../part-list/part-list.ts";
import { EXAMPLE_MATERIAL } from "./shop-tables.ts";

interface StartFacts {
  /** What the job is called until somebody types another name. */
  readonly name: string;
  /** Day of the worksheet. */
  readonly today: number;
  /** "parts.csv", "our-shop.xlsx": where its contents come from; undefined where examples stand in their place. */
  readonly partsFile: string | undefined;
  readonly shopFile: string | undefined;
}

/** @param shop the shop that the tables hold, read. */
export function startedContents(
  facts: StartFacts,
  tables: readonly ShopSheetTable[],
  shop: BookShop,
  list: PartList | undefined,
): JobContents {
  const { partColumns, parts } = list ? partsOf(list) : EXAMPLE_PARTS;
  const areas = valuesOf("Area", partColumns, parts);
  return {
    system: shop.context.system,
    subject: facts.name,
    about: [
      facts.partsFile ? `Parts of ${facts.partsFile}` : "One example part: type over it",
      facts.shopFile
        ? `shop of ${facts.shopFile}.`
        : "an example shop: type your own machines over it, from their plates.",
    ].join("; "),
    shop: tables,
    shopNote: facts.shopFile
      ? `From ${facts.shopFile}. The unit of a column stands in its header; angles are included angles of the tool.`
      : "Examples, not your shop: type your own machines, tools, prices and times over them, from plates, papers and clocks, and clear the column Example. The unit of a column stands in its header. Angles are included angles of the tool.",
    shopName: "(the name of your shop)",
    quoteFoot: "",
    jobNote:
      "Type who asks, when work can begin and when it must leave: without these two there are no dates. Every function about the bill reads this table.",
    job: {
      job: facts.name,
      day: facts.today,
      areas: areas.length === 0 ? null : areas.join("; "),
      pace: "normal",
      profit: "margin",
    },
    // A time of its own for each, to be typed.
    areaDues: areas.map((area) => [area, null] as const),
    partColumns,
    parts,
    shown: list
      ? shownOf(planIn(shop, partRows(list, shop.context)).lines)
      : { flat: EXAMPLE, force: EXAMPLE, shear: EXAMPLE },
  };
}

const EXAMPLE = "EXAMPLE";
const EXAMPLE_ROW: Readonly<Record<string, CellValue>> = {
  Part: EXAMPLE,
  Description: "An example: type over it",
  Quantity: 10,
  Material: EXAMPLE_MATERIAL,
  Thickness: "11 ga",
  Flanges: "2; 3",
  "Bend angles": 90,
  "Bend length": 6,
};
const EXAMPLE_COLUMNS = [...PART_COLUMNS, ...MARK_PART_COLUMNS];
const EXAMPLE_PARTS = {
  partColumns: EXAMPLE_COLUMNS,
  parts: [EXAMPLE_COLUMNS.map(({ header }): CellValue => EXAMPLE_ROW[header] ?? null)],
};

/** The usual columns, and behind them what else the list has. */
function partsOf({ cells }: PartList): { partColumns: readonly PartColumn[]; parts: CellValue[][] } {
  const [header = [], ...rows] = cells;
  const names = (title: string): readonly string[] => {
    const key = BILL_KEYS.find((each) => titleOf(each) === title);
    return key ? BILL_COLUMNS[key].headers : [title];
  };
  const more = header
    .map(String)
    .filter((title) => !PART_COLUMNS.some((column) => names(title).includes(column.header)));
  const partColumns = [
    ...PART_COLUMNS,
    ...more.map((title): PartColumn => ({ header: title, width: 12, keepsText: true })),
    ...MARK_PART_COLUMNS.filter(({ header: mark }) => !more.includes(mark)),
  ];
  const from = partColumns.map((column) => header.findIndex((title) => names(String(title)).includes(column.header)));
  const parts = rows
    .filter((row) => !row.every(isBlank))
    .map((row) => from.map((index): CellValue => (index < 0 ? null : (row[index] ?? null))));
  return { partColumns, parts };
}

const valuesOf = (
  header: string,
  columns: readonly PartColumn[],
  rows: readonly (readonly CellValue[])[],
): string[] => {
  const at = columns.findIndex((column) => column.header === header);
  return [
    ...new Set(
      rows
        .map((row) => row[at] ?? null)
        .filter((cell) => !isBlank(cell))
        .map(String),
    ),
  ];
};

/** The first lines that have such an answer. */
function shownOf(lines: readonly LineAnswer[]): JobContents["shown"] {
  const planned = lines.filter(({ plan }) => plan !== undefined);
  const bent = planned.find(
    ({ plan }) => plan?.bend !== undefined && plan.tools?.punch !== undefined && plan.line.cross === undefined,
  );
  const first = planned[0];
  return {
    ...(bent ? { flat: bent.part, force: bent.part } : {}),
    ...(first ? { shear: first.part } : {}),
  };
}
