/** The quote: pieces and prices of the plan, none of the shop's costs; what is not quoted stands there with the reason. */
import { questionSays } from "../bill/causes.ts";
import { customerSays } from "../bill/customer-says.ts";
import { dayFrom } from "../bill/day.ts";
import type { Job } from "../bill/nouns/shop.ts";
import type { Instant } from "../bill/pictures.ts";
import { type BillPlan, isQuoted, type LineAnswer } from "../bill/plan.ts";
import { withoutSays } from "../bill/says.ts";
import { missing } from "../units/certain.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr } from "../units/remember.ts";
import { show, showNumber } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { partSays } from "./line-words.ts";
import { BLANK, type Cell, facts, heading, paragraph, table } from "./page.ts";

/** A sheet other than the one asked for: the customer must see it beside the price. */
function offered({ plan, findings }: LineAnswer, system: UnitSystem): string {
  if (!plan || !findings.some(({ about, kind }) => about === "stock" && kind === "thicker")) return "";
  const length = (value: number) => show(value, "length", system, 4);
  return `offered in ${length(plan.sheetThickness)}, asked for ${length(plan.line.nominal)}`;
}

export function quotePage(plan: BillPlan, date: string): string {
  const head = quoteHead(plan, date);
  const money = refusalOr(() => plan.money);
  if (money instanceof Refusal)
    return `${head}${paragraph(`No prices: ${money.message}. Nothing is quoted without them.`)}`;
  const priced = plan.lines.map((line) => ({ line, answer: priceOf(line, plan) }));
  const rows = priced.flatMap(({ line, answer }): Cell[][] =>
    typeof answer === "string"
      ? []
      : [
          [
            partSays(line),
            [(line.plan ?? missing()).line.description, offered(line, plan.shop.system)]
              .filter((words) => words !== "")
              .join("; "),
            showNumber((line.plan ?? missing()).line.quantity, 7),
            moneySays(answer.unitPrice),
            moneySays(answer.price),
          ],
        ],
  );
  const left = priced.flatMap(({ line, answer }) =>
    typeof answer === "string" ? [[partSays(line), line.plan?.line.description ?? "", answer]] : [],
  );
  const question = questionSays(plan.lines, plan.shop.system);
  const { minimum, rush, crate, truck, tax, total } = money.charges;
  const sum = (words: string, amount: number, note = ""): Cell[] => [words, note, "", "", moneySays(amount)];
  return [
    head,
    table(
      [
        { title: "Part", short: true },
        { title: "Description" },
        { title: "Pieces", number: true },
        { title: inCurrency("Price each", plan), number: true },
        { title: inCurrency("Price", plan), number: true },
      ],
      rows,
      "tight",
      [
        ...(minimum > 0 ? [sum("Minimum charge", minimum)] : []),
        ...(rush > 0 ? [sum("Rush", rush)] : []),
        ...(crate > 0 ? [sum("Crate", crate)] : []),
        ...(truck > 0 ? [sum("Truck", truck)] : []),
        ...(tax > 0 ? [sum("Tax", tax)] : []),
        sum("Total", total, withoutSays(plan.totals.unpriced)),
      ],
    ),
    question === "" ? "" : `<h2>Please answer</h2>${paragraph(question)}`,
    left.length > 0
      ? `<h2>Not quoted</h2>${table([{ title: "Part", short: true }, { title: "Description" }, { title: "Why" }], left)}`
      : "",
    "<p class=\"foot\">Prices hold for the whole list: tools are set up once and shared. What a bracket carries is not checked by this shop's calculation; that is a licensed engineer's work.</p>",
  ].join("\n");
}

/** The price of a line, or why it has none. */
function priceOf(line: LineAnswer, plan: BillPlan) {
  const price = isQuoted(line) ? refusalOr(() => plan.priceOf(line)) : undefined;
  return price === undefined || price instanceof Refusal ? customerSays(line) : price;
}

function quoteHead({ shop: { job }, notFromPlate }: BillPlan, date: string): string {
  return [
    heading(job.quote === "" ? "Quote" : `Quote ${job.quote}`),
    facts(jobFacts(job, date)),
    `<p>Good until ${job.goodUntil === undefined ? BLANK : dayFrom(job.goodUntil)}</p>`,
    // Which machines these are is the shop's own business.
    paragraph(notFromPlate.length > 0 ? "Not confirmed from the plate: ratings of machines and tools." : ""),
  ].join("\n");
}

/** What the workbook's Job table says; what it leaves out is written by hand. */
function jobFacts(
  { customer, name, start, due, quoteDay, currency }: Job,
  date: string,
): (readonly [string, string])[] {
  const at = (instant: Instant | undefined) => (instant === undefined ? "" : dayFrom(instant));
  return [
    ["For", customer || "____________"],
    ["Job", name || "____________"],
    ["Date", at(quoteDay) || date],
    ["Currency", currency || "____________"],
    ["Work can begin", at(start) || "____________"],
    ["Must leave by", at(due) || "____________"],
  ];
}

const moneySays = (value: number): string => {
  const [whole = "", cents] = Math.abs(value).toFixed(2).split(".");
  return `${value < 0 ? "-" : ""}${whole.replace(/\B(?=(?:\d{3})+$)/g, ",")}.${cents}`;
};

/** What money is counted in stands in the heading of its column, as any unit; where the job does not say, none is assumed. */
const inCurrency = (heading: string, { shop: { job } }: BillPlan): string =>
  job.currency === undefined ? heading : `${heading}, ${job.currency}`;
