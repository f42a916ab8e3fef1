/** One line worked out: its blank, its tools, how it is bent, what can cut it, and everything that is found about it. */
import type { Setup } from "../../calc/bend/check/line.ts";
import type { ForceCases } from "../../calc/bend/force-cases.ts";
import type { Acceptance } from "../../calc/bend/radius-acceptance.ts";
import { type Finding, statusOf } from "../../calc/finding.ts";
import { itemAt } from "../../units/certain.ts";
import type { Millimeters } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import { type BillLine, bentStrips, type UnreadLine } from "../nouns/line.ts";
import { operationsOf } from "../nouns/operations.ts";
import type { Shop } from "../nouns/shop.ts";
import { hasTable } from "../nouns/shop.ts";
import { type SheetsToCut, type StockSheet, sheetsToCut } from "../nouns/stock.ts";
import { type BentStrip, bendStrip } from "./bent-strip.ts";
import { type BendNumbers, type Blank, blankOf } from "./blank.ts";
import { blanksToCut } from "./blanks-to-cut.ts";
import { bendOrBottomNumbers, forceOf } from "./bottoming.ts";
import { boxFindings } from "./box.ts";
import { type Cutting, cuttingOf } from "./cutting.ts";
import { drawingRadius } from "./drawing-radius.ts";
import { edgeFinding } from "./edges.ts";
import { finishFinding } from "./finish.ts";
import { galvanizedFinding } from "./galvanized.ts";
import { handsFinding } from "./hands.ts";
import { liftingFinding, sheetLiftingFinding } from "./lifting.ts";
import { orderFindings } from "./order-finding.ts";
import { stockFindings } from "./stock-finding.ts";
import { swingFinding } from "./swing.ts";
import { judgeTolerance, type ToleranceStack } from "./tolerance.ts";
import { pressedIn, type Tools, toolFindings } from "./tools.ts";

/** The tables that a line by itself is worked out from. */
export type LineShop = Pick<
  Shop,
  "brakes" | "dies" | "punches" | "drawn" | "shears" | "waterjets" | "stations" | "rates" | "stock" | "system" | "given"
>;

export interface LinePlan {
  /** As planned: at the thickness of the sheet it is cut from. */
  readonly line: BillLine;
  readonly blank: Blank;
  /** Blanks to cut: what is ordered, with scrap allowance and first pieces. */
  readonly blanks: number;
  /** undefined for a flat part, and where the shop's tools were not given. */
  readonly tools: Tools | undefined;
  readonly bend: BendNumbers | undefined;
  /** One a direction with bends. */
  readonly strips: readonly BentStrip[];
  /** Of the bend that needs the most. */
  readonly force: ForceCases | undefined;
  readonly cutting: Cutting;
  /** Sheets it may be cut from; undefined where Stock was not given, none where it is not there. */
  readonly sheets: readonly StockSheet[] | undefined;
  /** Of the sheet it is cut from, which may be another one than the bill asks for. */
  readonly sheetThickness: Millimeters;
  readonly acceptance: Acceptance | undefined;
  readonly stack: ToleranceStack | undefined;
  /** Without those about the machine that cuts it, which the route decides. */
  readonly findings: readonly Finding[];
}

/** A line with bends, on tools of the shop. */
export type BentPlan = LinePlan & { readonly tools: Tools; readonly force: ForceCases };
export const isBent = (plan: LinePlan): plan is BentPlan => plan.tools !== undefined && plan.force !== undefined;

/** A line that is not understood, or that no answer exists for: a stop about the input. */
export interface UnreadPlan {
  readonly row: number;
  readonly part: string;
  readonly refusal: Refusal;
  readonly findings: readonly [Finding];
}

export const isPlanned = (plan: LinePlan | UnreadPlan): plan is LinePlan => "blank" in plan;

/** @param place which line it is, where the refusal itself does not say so. */
export const unreadPlan = ({ row, part, refusal }: UnreadLine, place = ""): UnreadPlan => ({
  row,
  part,
  refusal,
  findings: [{ about: "input", status: "stop", kind: "unread", words: `${place}${refusal.message}` }],
});

/** @param chosen the tools the bill has chosen for it; undefined for a flat part. Throws a Refusal on what has no answer. */
export function planLine(given: BillLine, chosen: Tools | undefined, shop: LineShop, work?: Working): LinePlan {
  // An operation that no station does has no time and no price: the line must not be quoted silently.
  if (hasTable(shop, "stations")) operationsOf(given, shop.stations, 'column "Operations"');
  step(work, "part", "the line that the next steps are of", given.part, "", "given");
  const stock = hasTable(shop, "stock") ? sheetsToCut(given.material, given.nominal, shop.stock) : undefined;
  const line = atStock(given, stock);
  const setup = chosen && { ...chosen, own: shop.rates.own };
  const bend = setup && bendOrBottomNumbers(line, setup, work);
  const blank = blankOf(line, bend, shop.rates.own, work);
  const strips = setup && bend ? bentOrNot(line, setup, bend, shop) : [];
  const sheets = hasTable(shop, "stock") ? (stock?.sheets ?? []) : undefined;
  const cutting = cuttingOf(line, blank, sheets, shop);
  const stack = judgeTolerance(line, shop.rates, work);
  const ofStock = hasTable(shop, "stock") ? stockFindings(line, blank, stock) : [];
  const untried: Finding | undefined = bend?.tryFirst
    ? { about: "flat", status: "note", kind: bend.method === "bottoming" ? "bottomed" : "not compared" }
    : undefined;
  const ofTools = setup ? [...toolFindings(line, setup, shop.system, work), ...boxFindings(line, setup)] : [];
  const findings = [
    ...ofTools,
    untried,
    ...(strips instanceof Refusal
      ? [cannotBe(strips)]
      : setup
        ? strips.flatMap((strip) => orderFindings(strip, setup, ofTools, shop.rates))
        : []),
    ...ofStock,
    // A blank that no sheet holds need not be told that no machine cuts it.
    ...(ofStock.some(({ kind }) => kind === "larger") ? [] : cutting.found),
    stack?.finding,
    ...(strips instanceof Refusal
      ? []
      : strips.map((strip, i) => swingFinding(strip, line, itemAt(bentStrips(line), i).bendLength, shop.rates))),
    ...handlingFindings(line, blank, sheets ?? [], shop),
    instructionFinding(line),
  ].filter((finding) => finding !== undefined);
  step(work, "status", `${line.part}: worst of its findings`, statusOf(findings), "", "clear where there is none");
  return {
    line,
    blank,
    blanks: blanksToCut(line, shop.rates),
    tools: chosen,
    bend,
    strips: strips instanceof Refusal ? [] : strips,
    force: setup && forceOf(line, setup),
    cutting,
    sheets,
    sheetThickness: sheets?.[0]?.thickness ?? line.nominal,
    acceptance: setup && drawingRadius(line, setup, pressedIn(line, setup))?.verdict,
    stack,
    findings,
  };
}

const instructionFinding = ({ instruction }: BillLine): Finding | undefined =>
  instruction === "" ? undefined : { about: "instruction", status: "note", kind: "typed", words: instruction };

/** What lifts it, what holds it, and the work that its edges, its welds and its finish ask for. */
function handlingFindings(
  line: BillLine,
  blank: Blank,
  sheets: readonly StockSheet[],
  { rates, stations, given }: LineShop,
): (Finding | undefined)[] {
  const isBent = bentStrips(line).length > 0;
  return [
    liftingFinding(blank.weight, longestBend(line), rates),
    sheetLiftingFinding(sheets, blank, rates),
    isBent ? handsFinding(blank, rates) : undefined,
    // Who deburrs and who welds stands in the table of stations: without it nothing is known of the work beside the bends.
    ...(hasTable({ given }, "stations")
      ? [edgeFinding(line, rates), galvanizedFinding(line), finishFinding(line, stations)]
      : []),
  ];
}

/** Planned throughout at the thickness of the sheet it is cut from, unless it was measured. */
function atStock(line: BillLine, stock: SheetsToCut | undefined): BillLine {
  if (!stock?.isThicker) return line;
  const isMeasured = line.thickness !== line.nominal;
  return { ...line, nominal: line.nominal, thickness: isMeasured ? line.thickness : stock.thickness };
}

const bentOrNot = (
  line: BillLine,
  tools: Tools & Setup,
  bend: BendNumbers,
  { drawn }: LineShop,
): BentStrip[] | Refusal =>
  refusalOr(() => bentStrips(line).map((strip) => bendStrip(line, strip, tools, bend, drawn)));

const cannotBe = ({ message }: Refusal): Finding => ({
  about: "bend order",
  status: "stop",
  kind: "cannot be",
  words: message,
});

const longestBend = (line: BillLine): Millimeters | undefined => {
  const lengths = bentStrips(line).map(({ bendLength }) => bendLength);
  return lengths.length === 0 ? undefined : (Math.max(...lengths) as Millimeters);
};
