/** A bill that is begun from a part list, by the code of `shop start`: what was understood of it, then its workbook. */
import { calculatedBytes } from "../../job/building/calculated.ts";
import { shopOf } from "../../job/job-plan.ts";
import { jobWorkbook } from "../../job/job-sheets/job-workbook.ts";
import { type MappedColumn, mapColumns, statedColumns } from "../../job/part-list/column-map.ts";
import { BILL_KEYS, titleOf } from "../../job/part-list/heading-words.ts";
import { rowsOfFile } from "../../job/part-list/list-file.ts";
import { faultWords } from "../../job/part-list/list-words.ts";
import { headingOf, type PartList, readPartList } from "../../job/part-list/part-list.ts";
import { bookOfTables, exampleShop } from "../../job/start/shop-tables.ts";
import { startedContents } from "../../job/start/started.ts";
import { serialNow } from "../../sheet/formula/serial-now.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";

export interface ListAsked {
  /** "" where it was pasted. */
  readonly name: string;
  /** Of a file or of what was pasted; none: a bill with one example line. */
  readonly bytes: Uint8Array;
  /** "A=Part; C=Material": what the person says of columns. */
  readonly columns: string;
}

export interface ListUnderstood {
  /** Why none of it can be read; "" where it can. */
  readonly refused: string;
  readonly lines: number;
  readonly columns: readonly ListColumn[];
  readonly words: readonly string[];
  /** What a column of a bill may be called. */
  readonly choices: readonly string[];
}
interface ListColumn {
  readonly letter: string;
  readonly title: string;
  /** The column of the bill that it is read as; "" where it is not read. */
  readonly read: string;
  readonly why: string;
}

const tables = exampleShop();
const shop = shopOf(bookOfTables(tables));

const read = ({ bytes, columns }: ListAsked): PartList =>
  readPartList(rowsOfFile(bytes).rows, { columns }, shop.context);

export function understood(asked: ListAsked): ListUnderstood {
  const choices = [...BILL_KEYS.map(titleOf), titleOf("legs")];
  const list = refusalOr(() => read(asked));
  const isRefused = list instanceof Refusal;
  // Where a column is missing the map is what shows which it could be.
  const columns = isRefused ? refusalOr(() => columnsOf(asked)) : list.columns;
  return {
    // A page does not need a command's options: the choice is made below.
    refused: isRefused
      ? list.message.replace(/say which it is, by heading or letter: --columns.*$/s, "say which it is below")
      : "",
    lines: isRefused ? 0 : list.lines,
    columns: (columns instanceof Refusal ? [] : columns).map(({ letter, title, read: as, why = "" }) => ({
      letter,
      title,
      read: as ? titleOf(as.key) : "",
      why: why.replace(/ \(--columns .*\)$/, ""),
    })),
    words: isRefused ? [] : faultWords(list.faults),
    choices,
  };
}

const columnsOf = ({ bytes, columns }: ListAsked): readonly MappedColumn[] =>
  mapColumns(headingOf(rowsOfFile(bytes).rows, {}), statedColumns(columns));

/** Throws Refusal where the list cannot be read. */
export function startedBytes(asked: ListAsked): Uint8Array {
  const list = asked.bytes.length === 0 ? undefined : read(asked);
  const facts = {
    name: asked.name.replace(/\.[^.]*$/, "") || "Job",
    today: Math.floor(serialNow(new Date())),
    partsFile: list && (asked.name || "what was pasted"),
    shopFile: undefined,
  };
  return calculatedBytes(jobWorkbook(startedContents(facts, tables, shop, list)));
}
