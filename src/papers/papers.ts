/** Everything that is printed for the plan of a bill, as documents with their pages. */
import { lineName } from "../bill/line-name.ts";
import { type BillPlan, isQuoted } from "../bill/plan.ts";
import { cutListPages } from "./cut-list.ts";
import { outlineTrueSize } from "./drawing/flat-blank.ts";
import { fileNames } from "./file-names.ts";
import { firstPiece } from "./first-piece.ts";
import { indexPage } from "./index-page.ts";
import { loadIn } from "./load-in.ts";
import { type Paper, type PaperFacts, paragraph } from "./page.ts";
import { quotePage } from "./quote.ts";
import { setUpSheet } from "./set-up-sheet.ts";
import { testStrips } from "./test-strip.ts";

export interface Print {
  /** The first is the index. */
  readonly papers: readonly Paper[];
  /** The flat of each quoted part at true size, for the waterjet's program. */
  readonly outlines: readonly { readonly file: string; readonly svg: string }[];
}

/** @param tick told the part whose sheet is drawn next. */
export function printOf(plan: BillPlan, about: PaperFacts, tick?: (part: string) => void): Print {
  const { system } = plan.shop;
  const names = fileNames(plan.lines.map(lineName));
  const setUps = plan.lines.map((line, i): Paper => {
    tick?.(lineName(line));
    return { file: `setup/${names[i]}.html`, title: `Set-up: ${lineName(line)}`, pages: [setUpSheet(line, plan)] };
  });
  const bent = plan.quoted.filter(({ plan: { strips } }) => strips.length > 0);
  const others: Paper[] = [
    { file: "cutlist.html", title: "Cut list", pages: cutListPages(plan) },
    { file: "first-piece.html", title: "First pieces", pages: bent.map((line) => firstPiece(line, system)) },
    { file: "test-strip.html", title: "Test strips", pages: [testStrips(bent, system)] },
    { file: "load-in.html", title: "Load-in list", pages: [loadIn(plan)] },
    { file: "quote.html", title: "Quote", pages: [quotePage(plan, about.date)] },
  ].filter(({ pages }) => pages.length > 0);
  const index: Paper = {
    file: "index.html",
    title: `Papers: ${about.name}`,
    pages: [indexPage(plan, about, setUps, others)],
  };
  const outlines = plan.lines.flatMap((line, i) =>
    isQuoted(line)
      ? {
          file: `outline/${names[i]}.svg`,
          svg: outlineTrueSize(line.plan.blank.length, line.plan.blank.width, line.part),
        }
      : [],
  );
  const mark = paragraph(`${about.name}, plan ${plan.number}, ${about.date}`, "number-of-plan");
  const marked = (paper: Paper): Paper => ({ ...paper, pages: paper.pages.map((page) => `${page}\n${mark}`) });
  return { papers: [index, ...setUps, ...others].map(marked), outlines };
}
