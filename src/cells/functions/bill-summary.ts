import { causeSays, questionSays, sharedCauses } from "../../bill/causes.ts";
import { unusedAreas } from "../../bill/dates/due.ts";
import { savedBySays, savedSays } from "../../bill/late-says.ts";
import { lineName } from "../../bill/line-name.ts";
import { withoutColor } from "../../bill/money/finish-lots.ts";
import { isLine } from "../../bill/nouns/line.ts";
import type { Job } from "../../bill/nouns/shop.ts";
import type { BillPlan } from "../../bill/plan.ts";
import { COST_UNITS } from "../../bill/route/plan-route.ts";
import { problemsSay, withoutSays } from "../../bill/says.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import type { CellValue } from "../../units/cell.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { fromInternal, unitName } from "../../units/system.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billSummary = defineBillFunction({
  name: "BILL.SUMMARY",
  question: "How many lines, pieces, pounds and sheets are there, what does it cost, and what is not quoted?",
  example: { formula: `=INDEX(SHOP.BILL.SUMMARY(${EXAMPLE_SHOP}),3,2)`, answer: 1 },
  source: "sums over the quoted lines of the plan (derived)",
  answer: (plan) => {
    const { system } = plan.shop;
    const { lines, of, quoted, unpriced, pieces, weight, sheets } = plan.totals;
    const without = withoutSays(lines - quoted);
    const money = refusalOr(() => plan.money);
    return spill(
      "BILL.SUMMARY",
      [
        row(
          "Plan",
          plan.number,
          "text",
          plan.notChecked.length === 0 ? "" : `not checked: ${plan.notChecked.join(", ")}`,
        ),
        ...quoteRows(plan.shop.job),
        row("Lines", lines, "count"),
        ...(["stop", "check", "clear"] as const).map((status) => row(`Lines: ${status}`, of[status], "count")),
        row("Lines quoted", quoted, "count", without),
        row("Pieces", pieces, "count", without),
        row("Weight", fromInternal(weight, "mass", system), unitName("mass", system), without),
        row("Sheets to pull", sheets, "count", without),
        money instanceof Refusal
          ? row("Price", "", "money", money.message)
          : row("Price", money.charges.total, "money", withoutSays(unpriced)),
        ...uncoloredRows(plan),
        row("Not confirmed from the plate", plan.notFromPlate.length, "count", plan.notFromPlate.join(", ")),
        ...lateRows(plan),
        ...routeRows(plan),
        ...causeRows(plan),
        ...unquotedRows(plan),
      ],
      system,
    );
  },
});

type Row = SpillRow<"BILL.SUMMARY">;

const row = (Item: string, Value: CellValue, Unit: string, Note = ""): Row => ({ Item, Value, Unit, Note });

const quoteRows = ({ quoteDay, goodUntil }: Job): Row[] =>
  [
    quoteDay === undefined ? undefined : row("Date of the quote", asSerial(quoteDay), "date"),
    goodUntil === undefined ? undefined : row("Good until", asSerial(goodUntil), "date"),
  ].filter((found) => found !== undefined);

function routeRows(plan: BillPlan): Row[] {
  const { best, allOnWaterjet, cuts, cutters } = plan.route;
  if (!best || !allOnWaterjet || !cuts) return [];
  const load = (machine: "shear" | "waterjet") =>
    cuts.reduce((sum, cut, i) => sum + ((cutters[i] === machine && cut[machine]?.time) || 0), 0) / SECONDS_PER_HOUR;
  const date = (at: number) => asSerial(at as Parameters<typeof asSerial>[0]);
  const cheapest =
    plan.shop.job.due === undefined ? "cheapest that finishes first" : "cheapest that meets the due time";
  return [
    row(
      "Cutting and bending done",
      date(best.finish),
      "date",
      best.meetsDue ? "" : "no route meets the due time; this is the earliest",
    ),
    row("Earliest possible finish", date(best.finishBound), "date", "bound: no route finishes before it"),
    row("Cutting cost", best.cost / COST_UNITS, "money", cheapest),
    row("Least possible cutting cost", best.costBound / COST_UNITS, "money", "bound: no route by then costs less"),
    row("Proved", best.proved ? "yes" : "no", "text", best.proved ? "" : "the search ended before the proof"),
    row("Load of the shear", load("shear"), "h"),
    row("Load of the waterjet", load("waterjet"), "h"),
    row("Load of the brake", cuts.reduce((sum, { brake }) => sum + brake, 0) / SECONDS_PER_HOUR, "h"),
    row(
      "All on the waterjet: finish",
      date(allOnWaterjet.finish),
      "date",
      "lines that are pinned or that it cannot cut stay on the shear",
    ),
    row("All on the waterjet: cost", allOnWaterjet.cost / COST_UNITS, "money"),
    row("Saved against all on the waterjet", (allOnWaterjet.cost - best.cost) / COST_UNITS, "money"),
  ];
}

/** What several lines have in common, and what the customer is asked once. */
function causeRows({ lines, shop: { system } }: BillPlan): Row[] {
  const question = questionSays(lines, system);
  return [
    ...(question === "" ? [] : [row("Ask the customer", "", "text", question)]),
    ...sharedCauses(lines).map((cause) =>
      row(`Same ${cause.finding.status}`, cause.lines.length, "count", causeSays(cause, system)),
    ),
  ];
}

/** Late lines by name, with their hours, and times for areas that no line is for. */
function lateRows(plan: BillPlan): Row[] {
  const dates = refusalOr(() => plan.dates);
  if (dates instanceof Refusal) return [];
  const late = plan.quoted.flatMap((line): Row[] => {
    const found = dates.lines.get(line.plan);
    return found?.isLate
      ? [
          row(
            "Late",
            found.lateBy / SECONDS_PER_HOUR,
            "h",
            `${lineName(line)}, at the ${found.place}; working hours; ${savedBySays(found.verdict)}`,
          ),
        ]
      : [];
  });
  const unused = unusedAreas(plan.rows.filter(isLine), plan.shop.job);
  return [
    row("Lines that are late", late.length, "count", savedSays(dates)),
    ...late,
    ...unused.map(({ area, due }) => row("Due of an area without lines", asSerial(due), "date", area)),
  ];
}

/** Nothing in a price shows that it includes a minimum of its own. */
function uncoloredRows(plan: BillPlan): Row[] {
  const outside = plan.quoted.flatMap((line) => {
    const done = refusalOr(() => plan.workOf(line));
    return done instanceof Refusal ? [] : [{ plan: line.plan, outside: done.outside }];
  });
  const names = withoutColor(outside).map(({ line }) => line.part);
  const note = `${names.join(", ")}: a lot of their own beside those with a Finish`;
  return names.length === 0 ? [] : [row("Coated without a Finish", names.length, "count", note)];
}

/** Every line that is not quoted, by name. */
const unquotedRows = (plan: BillPlan): Row[] =>
  plan.lines
    .filter((line) => !line.isQuoted)
    .map((line) => row("No quote", lineName(line), "text", problemsSay(line.findings, plan.shop.system)[0] ?? ""));
