/** Everything that is printed for a workbook, as documents with their pages. */
import { statusOf } from "../calc/problem.ts";
import { isLine } from "../cells/tables/bill.ts";
import type { Book } from "../job/book.ts";
import { foldHeader } from "../job/find-table.ts";
import { type LineWork, workOf } from "../job/line-report.ts";
import { readShopBill, type ShopBill } from "../job/shop-bill.ts";
import { Refusal } from "../units/refusal.ts";
import { showNumber } from "../units/show.ts";
import { cutListPages } from "./cut-list.ts";
import { outlineTrueSize } from "./drawing/flat-blank.ts";
import { fileNames } from "./file-names.ts";
import { firstPiece } from "./first-piece.ts";
import { loadIn } from "./load-in.ts";
import { heading, list, type Paper, table, text } from "./page.ts";
import { quotePage } from "./quote.ts";
import { setUpSheet } from "./set-up-sheet.ts";
import { testStrips } from "./test-strip.ts";

export interface PaperFacts {
  /** The workbook's file name. */
  readonly name: string;
  readonly version: string;
  readonly edition: string;
  readonly date: string;
  /** Cells whose value may be out of date. */
  readonly stale: number;
  readonly tick?: ((words: string) => void) | undefined;
}

export interface Print {
  /** The first is the index. */
  readonly papers: readonly Paper[];
  /** The flat of each part at true size, for the waterjet's program. */
  readonly outlines: readonly { readonly file: string; readonly svg: string }[];
}

/** Undefined where the workbook holds no bill. */
export function printOf(book: Book, about: PaperFacts): Print | undefined {
  const bill = readShopBill(book);
  if (!bill) return undefined;
  const describe = descriptions(bill);
  const works = bill.rows.map((row) => {
    about.tick?.(row.part);
    return { row, work: workOf(row, bill) };
  });
  const names = fileNames(works.map(({ row }) => row.part));
  const done = works.flatMap(({ work }) => (work instanceof Refusal ? [] : [work]));
  const { system } = bill;
  const setups = works.map(
    ({ row, work }, i): Paper => ({
      file: `setup/${names[i]}.html`,
      title: `Set-up: ${row.part}`,
      pages: [
        work instanceof Refusal
          ? `${heading(row.part === "" ? `Row ${row.row}` : row.part, "unreadable")}<p>${text(work.message)}</p>`
          : setUpSheet(work, describe(row.part), system),
      ],
    }),
  );
  const others: Paper[] = [
    { file: "cutlist.html", title: "Cut list", pages: cutListPages(book, bill, done, { tick: about.tick }) },
    {
      file: "first-piece.html",
      title: "First pieces",
      pages: done.filter(({ bends }) => bends.length > 0).map((work) => firstPiece(work, system)),
    },
    { file: "test-strip.html", title: "Test strips", pages: [testStrips(done, system)] },
    { file: "load-in.html", title: "Load-in list", pages: [loadIn(done, ({ line }) => describe(line.part), system)] },
    { file: "quote.html", title: "Quote", pages: [quotePage(book, describe)] },
  ];
  const index: Paper = {
    file: "index.html",
    title: `Papers: ${about.name}`,
    pages: [indexPage(works, setups, others, bill, about)],
  };
  const outlines = works.flatMap(({ row, work }, i) =>
    work instanceof Refusal
      ? []
      : {
          file: `outline/${names[i]}.svg`,
          svg: outlineTrueSize(work.check.blank.length, work.check.blank.width, row.part),
        },
  );
  return { papers: [index, ...setups, ...others.filter(({ pages }) => pages.length > 0)], outlines };
}

function indexPage(
  works: readonly { readonly row: ShopBill["rows"][number]; readonly work: LineWork | Refusal }[],
  setups: readonly Paper[],
  others: readonly Paper[],
  bill: ShopBill,
  { name, version, edition, date, stale }: PaperFacts,
): string {
  const link = (paper: Paper, words: string) => ({ markup: `<a href="${text(paper.file)}">${text(words)}</a>` });
  const status = (work: LineWork | Refusal) => (work instanceof Refusal ? "unreadable" : statusOf(work.check.problems));
  return [
    heading(name),
    `<p>Bracket Bill ${text(version)}, materials of edition ${text(edition)}, ${text(date)}</p>`,
    stale > 0
      ? `<p><strong>${stale} cells of the workbook could not be calculated; their values may be old.</strong></p>`
      : "",
    list(bill.missing),
    `<p>${others
      .filter(({ pages }) => pages.length > 0)
      .map((paper) => link(paper, paper.title).markup)
      .join(" · ")}</p>`,
    table(
      [{ title: "Set-up sheet" }, { title: "Pieces", number: true }, { title: "Status" }],
      works.map(({ row, work }, i) => [
        link(setups[i]!, row.part === "" ? `row ${row.row}` : row.part),
        isLine(row) ? showNumber(row.quantity, 7) : "",
        status(work),
      ]),
    ),
    '<p class="foot">The plates of machines and tools, local codes and licensed practice decide. What a bracket carries is not checked.</p>',
  ].join("\n");
}

/** The bill's own column, where it has one: it takes no part in any calculation. */
function descriptions({ table: { matrix }, rows }: ShopBill): (part: string) => string {
  const column = (matrix[0] ?? []).findIndex((cell) => foldHeader(cell) === "description");
  const known = new Map(rows.map(({ part, row }) => [part, String(matrix[row - 1]?.[column] ?? "")]));
  return (part) => known.get(part) ?? "";
}
