/** The first stage: every line by itself, on tools that the whole bill shares where it can. */
import { fewestSets } from "../../calc/time/fewest-sets.ts";
import { firstOf } from "../../units/certain.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr, remember } from "../../units/remember.ts";
import type { Working } from "../../units/working.ts";
import { type BillLine, type BillRow, isLine } from "../nouns/line.ts";
import { hasTable } from "../nouns/shop.ts";
import { sheetsToCut } from "../nouns/stock.ts";
import { wantsOtherTools } from "./order-finding.ts";
import { type LinePlan, type LineShop, planLine, type UnreadPlan, unreadPlan } from "./plan-line.ts";
import { optionsOf, setKey, type Tools } from "./tools.ts";

export type PlannedLine = LinePlan | UnreadPlan;

interface LinesPlan {
  /** In the order of the bill. */
  readonly lines: readonly PlannedLine[];
  /** Whether fewer sets of tools are proved not to do. */
  readonly setsProved: boolean;
}

export const planLines = remember(4, (rows: readonly BillRow[], shop: LineShop): LinesPlan => plan(rows, shop));

/** A line as if it were the whole bill: how a change is tried. */
export const planAlone = remember(
  4096,
  (line: BillLine, shop: LineShop): PlannedLine => firstOf(plan([line], shop, undefined, trialKnown).lines),
);

/** The line on every set of tools that a bill may choose for it, whatever else stands in that bill. */
export function planOnEach(line: BillLine, shop: LineShop): readonly PlannedLine[] {
  const options = refusalOr(() => optionsOf(atSheet(line, shop), shop));
  if (options instanceof Refusal) return [unreadPlan({ ...line, refusal: options })];
  return (options.length === 0 ? [undefined] : options).map((tools) => {
    const found = refusalOr(() => trialKnown(line, tools, shop));
    return found instanceof Refusal ? unreadPlan({ ...line, refusal: found }) : found;
  });
}

/** With the steps of its working recorded; nothing of it comes from memory. */
export const planLinesAnew = (rows: readonly BillRow[], shop: LineShop, work: Working): LinesPlan =>
  plan(rows, shop, work);

/** A line by itself; after an edit of one line the others are known. */
const lineKnown = remember(4096, (line: BillLine, tools: Tools | undefined, shop: LineShop) =>
  planLine(line, tools, shop),
);

/** What is only tried has a memory of its own: it must not push out the lines of the bill. */
const trialKnown = remember(4096, (line: BillLine, tools: Tools | undefined, shop: LineShop) =>
  planLine(line, tools, shop),
);

function plan(rows: readonly BillRow[], shop: LineShop, work?: Working, memory = lineKnown): LinesPlan {
  const known = (line: BillLine, tools: Tools | undefined) =>
    work ? planLine(line, tools, shop, work) : memory(line, tools, shop);
  const planOf = (line: BillLine, tools: Tools | undefined): PlannedLine => {
    const found = refusalOr(() => known(line, tools));
    return found instanceof Refusal ? unreadPlan({ ...line, refusal: found }, placeOf(line)) : found;
  };
  const { tools, proved } = chooseTools(rows.filter(isLine), shop, (line, set) => memory(line, set, shop));
  const lines = rows.map((row) => {
    if (!isLine(row)) return unreadPlan(row);
    const chosen = tools.get(row);
    return chosen instanceof Refusal ? unreadPlan({ ...row, refusal: chosen }, placeOf(row)) : planOf(row, chosen);
  });
  return { lines, setsProved: proved };
}

/** Sets that are tried for an order of the bends where the first has none (chosen: a search each). */
const MOST_TRIED = 6;

/** A refusal about a line says which line. */
const placeOf = ({ row }: BillLine): string => `line ${row - 1}: `;

type Choice = Tools | Refusal | undefined;

/**
 * Best status first, then the fewest sets over all lines, then the usual one. Whether a part has an order of its bends is
 * known only when it is tried: a set on which it has none gives way to the line's next one.
 */
function chooseTools(
  lines: readonly BillLine[],
  shop: LineShop,
  planned: (line: BillLine, tools: Tools) => LinePlan,
): { readonly tools: ReadonlyMap<BillLine, Choice>; readonly proved: boolean } {
  // By content: the order of the lines decides nothing.
  const jobs = [...lines]
    .map((line) => {
      const options = refusalOr(() => optionsOf(atSheet(line, shop), shop));
      const refusal = options instanceof Refusal ? options : undefined;
      const open = options instanceof Refusal ? [] : options;
      return { line, refusal, open, key: open.map(setKey).join("\n") };
    })
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  for (;;) {
    const { keys, proved } = fewestSets(
      jobs.map(({ open }) => open.map((tools, dislike) => ({ key: setKey(tools), dislike }))),
    );
    const tools = new Map<BillLine, Choice>();
    let isFinal = true;
    for (const job of jobs) {
      const { line, open } = job;
      const chosen = job.refusal ?? open.find((option) => keys.has(setKey(option)));
      tools.set(line, chosen);
      if (chosen === undefined || chosen instanceof Refusal || open.length === 1) continue;
      const found = refusalOr(() => planned(line, chosen));
      if (found instanceof Refusal || !wantsOtherTools(found.findings)) continue;
      const left = open.filter((option) => option !== chosen);
      // Where no set has an order the one liked best stays.
      const better = left.slice(0, MOST_TRIED).some((option) => hasOrder(line, option, planned));
      job.open = better ? left : open.slice(0, 1);
      isFinal &&= !better && open[0] === chosen;
    }
    if (isFinal) return { tools, proved };
  }
}

function hasOrder(line: BillLine, tools: Tools, planned: (line: BillLine, tools: Tools) => LinePlan): boolean {
  const found = refusalOr(() => planned(line, tools));
  return !(found instanceof Refusal) && !wantsOtherTools(found.findings);
}

/** The thickness it will be bent in. */
function atSheet(line: BillLine, shop: LineShop): BillLine {
  if (!hasTable(shop, "stock") || line.thickness !== line.nominal) return line;
  const found = sheetsToCut(line.material, line.nominal, shop.stock);
  return found?.isThicker ? { ...line, thickness: found.thickness } : line;
}
