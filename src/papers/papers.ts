/** Everything that is printed for the plan of a bill, as documents with their pages. */

import { lineName } from "../bill/line-name.ts";
import { bentStrips } from "../bill/nouns/line.ts";
import { type BillPlan, isQuoted, type LineAnswer } from "../bill/plan.ts";
import { releaseOf } from "../bill/release.ts";
import { planSetUps } from "../bill/setups/plan-setups.ts";
import { entryOf } from "../units/certain.ts";
import { cutListPages } from "./cut-list.ts";
import { outlineTrueSize } from "./drawing/flat-blank.ts";
import { fileNames } from "./file-names.ts";
import { indexPage } from "./index-page.ts";
import { partSays } from "./line-words.ts";
import { loadIn } from "./load-in.ts";
import { footed, type Paper, type PaperFacts } from "./page.ts";
import { quotePage } from "./quote.ts";
import { setUpPage } from "./set-up-page.ts";
import { setUpSheets } from "./set-up-sheet.ts";
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
  const setUps = planSetUps(plan.quoted);
  const nameOfSetUp = (i: number) => `Set-up ${i + 1} of ${setUps.length}`;
  const setUpOf = new Map<LineAnswer, number>(
    setUps.flatMap(({ lines }, i) => lines.map((line) => [line, i] as const)),
  );
  const sheets = new Map(
    plan.lines.map((line, i): [LineAnswer, Paper] => {
      tick?.(lineName(line));
      const set = setUpOf.get(line);
      const pages = setUpSheets(line, plan, set === undefined ? "" : nameOfSetUp(set));
      const shares = releaseOf(line) === "STOP" || (line.plan && bentStrips(line.plan.line).length === 0);
      const paper = { file: `setup/${names[i]}.html`, title: `Set-up: ${lineName(line)}`, pages };
      return [line, shares ? { ...paper, shares } : { ...paper, foot: footOf(plan, about, partSays(line)) }];
    }),
  );
  const ofLine = (line: LineAnswer) => entryOf(sheets, line);
  // As the brake works: every set of tools with its lines, then what is only cut, then what waits.
  const inOrder = [
    ...setUps.flatMap((set, i): Paper[] => [
      { file: `tools/${i + 1}.html`, title: nameOfSetUp(i), pages: [setUpPage(nameOfSetUp(i), set, plan)] },
      ...set.lines.map(ofLine),
    ]),
    ...plan.lines.filter((line) => !setUpOf.has(line)).map(ofLine),
  ];
  const bent = plan.quoted.filter(({ plan: { strips } }) => strips.length > 0);
  const others: Paper[] = [
    { file: "cutlist.html", title: "Cut list", pages: cutListPages(plan), shares: true },
    { file: "test-strip.html", title: "Test strips", pages: [testStrips(bent, system)] },
    { file: "load-in.html", title: "Load-in list", pages: [loadIn(plan)] },
    { file: "quote.html", title: "Quote", pages: [quotePage(plan, about.date)] },
  ].filter(({ pages }) => pages.length > 0);
  const covered = plan.lines.map((line) => {
    const set = setUpOf.get(line);
    return { sheet: ofLine(line), set: set === undefined ? undefined : set + 1 };
  });
  const index: Paper = {
    file: "index.html",
    title: `Papers: ${about.name}`,
    pages: [indexPage(plan, about, covered, others)],
  };
  const outlines = plan.lines.flatMap((line, i) =>
    isQuoted(line)
      ? {
          file: `outline/${names[i]}.svg`,
          svg: outlineTrueSize(line.plan.blank.length, line.plan.blank.width, line.part),
        }
      : [],
  );
  const foot = footOf(plan, about);
  return { papers: [index, ...inOrder, ...others].map((paper) => footed(paper, paper.foot ?? foot)), outlines };
}

/** A sheet left lying around must say which bill it belongs to. @param part with the revision of its drawing. */
function footOf({ number, shop: { job } }: BillPlan, { name, edition, date }: PaperFacts, part = ""): string {
  const whose = [job.name, job.customer, job.quote, part].filter((words) => words !== "");
  return [...whose, `${name}, plan ${number}, materials ${edition}, ${date}`].join(" · ");
}
