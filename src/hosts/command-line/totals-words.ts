/** What a job comes to, in a few lines; every figure says how many lines it is without. */
import { savedSays } from "../../bill/late-says.ts";
import { lineName } from "../../bill/line-name.ts";
import type { BillPlan } from "../../bill/plan.ts";
import { withoutSays } from "../../bill/says.ts";
import { billJson } from "../../job/bill-json.ts";
import type { BillJson } from "../../job/bill-schema.ts";
import { missing } from "../../units/certain.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { unitName } from "../../units/system.ts";
import { WIDTH, wrapped } from "./wrapped.ts";

const MINUTES = 60; // of an hour, by definition
const SECONDS = 3600; // of an hour, by definition
const INDENT = 10;

export function totalsWords(plan: BillPlan, all: boolean): string[] {
  const { lines, totals, not_checked } = billJson(plan);
  const without = withoutSays(totals.lines - totals.quoted);
  const weight = `${amount(totals.weight, 0)} ${unitName("mass", plan.shop.system)}`;
  const rows: (readonly [string, string])[] = [
    ["Lines", `${totals.lines}: ${totals.stop} STOP, ${totals.check} CHECK, ${totals.clear} CLEAR`],
    [
      "Quoted",
      [`${totals.quoted} ${totals.quoted === 1 ? "line" : "lines"}`, without].filter((text) => text !== "").join(", "),
    ],
    ["Pieces", `${amount(totals.pieces, 0)}, ${weight}`],
    ["Sheets", amount(plan.totals.sheets, 0)],
    ["Hours", hoursOf(plan, lines)],
    ["Price", priceOf(plan, totals)],
    ["Late", lateOf(plan, all)],
    ["Plan", plan.number],
    ["Plates", plan.notFromPlate.length === 0 ? "" : `not confirmed from the plate: ${plan.notFromPlate.join(", ")}`],
    ["Missing", not_checked.length === 0 ? "" : `no table of ${not_checked.join(", ")}: not checked`],
  ];
  const { name } = plan.shop.job;
  return [
    ...(name === "" ? [] : [name]),
    ...rows
      .filter(([, text]) => text !== "")
      .flatMap(([title, text]) => wrapped(title.padEnd(INDENT) + text, WIDTH, INDENT)),
  ];
}

/** In the order of the shop's own table. */
function hoursOf({ shop }: BillPlan, lines: BillJson["lines"]): string {
  return shop.stations
    .map(({ name }) => [name, lines.reduce((sum, { minutes }) => sum + (minutes[name] ?? 0), 0) / MINUTES] as const)
    .filter(([, hours]) => hours > 0)
    .map(([name, hours]) => `${name} ${amount(hours, 1)}`)
    .join(", ");
}

function priceOf(plan: BillPlan, totals: BillJson["totals"]): string {
  const money = refusalOr(() => plan.money);
  if (money instanceof Refusal) return `none: ${money.message}`;
  const parts = PARTS.flatMap(([key, words]) => (totals[key] ? [`${words} ${amount(totals[key], 2)}`] : []));
  const made = parts.length === 0 ? "" : ` (lines ${amount(totals.price ?? missing(), 2)}, ${parts.join(", ")})`;
  const without = withoutSays(plan.totals.unpriced);
  return `${amount(totals.order ?? missing(), 2)}${made}${without === "" ? "" : `, ${without}`}`;
}

/** What the order pays beside its lines; with them it is the price. */
const PARTS = [
  ["minimum", "minimum charge"],
  ["rush", "rush"],
  ["crate", "crate"],
  ["truck", "truck"],
  ["tax", "tax"],
] as const;

const LATE_NAMED = 6; // chosen: more than that is a job that is late, not lines that are

/** Late lines with their hours, the latest first. */
function lateOf(plan: BillPlan, all: boolean): string {
  const { start, due } = plan.shop.job;
  if (start === undefined && due === undefined) return "not known: no job says when work begins and when it must leave";
  const dates = refusalOr(() => plan.dates);
  if (dates instanceof Refusal) return `not known: ${dates.message}`;
  const late = plan.quoted
    .map((line) => ({ line, found: dates.lines.get(line.plan) }))
    .flatMap(({ line, found }) => (found?.isLate ? [{ line, hours: found.lateBy / SECONDS }] : []))
    .sort((a, b) => b.hours - a.hours);
  if (late.length === 0) return "none";
  const named = late.slice(0, all ? late.length : LATE_NAMED);
  const words = named.map(({ line, hours }) => `${lineName(line)} by ${amount(hours, 1)} h`);
  const more = late.length > named.length ? ["..."] : [];
  const count = `${late.length} ${late.length === 1 ? "line" : "lines"}`;
  return `${count}, in working hours: ${[...words, ...more].join(", ")}; ${savedSays(dates)}`;
}

const amount = (value: number, decimals: number): string =>
  value.toLocaleString("en-US", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
