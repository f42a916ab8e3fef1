/** One page for the brake: drawings, stops in order with boxes to tick, what to mind. */
import { obstacleInWords } from "../calc/bend/order/watch.ts";
import { statusOf } from "../calc/problem.ts";
import type { StripPlan } from "../cells/bill/bend-plan.ts";
import { drawingsOf, figuresOf, type LineWork, sentencesOf } from "../job/line-report.ts";
import { showNumber, showReading } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { cautions } from "./cautions.ts";
import { BOX, facts, heading, list, table, text } from "./page.ts";

export function setUpSheet(work: LineWork, description: string, system: UnitSystem): string {
  const { line, check, bends } = work;
  return [
    heading(line.part, statusOf(check.problems)),
    description === "" ? "" : `<p>${text(description)}</p>`,
    facts(figuresOf(work, system)),
    list(sentencesOf(check.problems), "findings"),
    drawings(work, system),
    bends.length > 0
      ? bends.map((strip, i) => stops(strip, i, system)).join("\n")
      : `<p>${work.noDrawing ? text(`Not drawn and no stops: ${work.noDrawing}`) : "No bends: cut only."}</p>`,
    "<h2>Before the first stroke</h2>",
    list(cautions(work, system), "cautions"),
    bends.length > 1
      ? "<p>The part is bent in two directions: the flanges of the first must clear the tools in the second. Box ends are not seen by the order; try it by hand.</p>"
      : "",
    `<p class="foot">Stops and depth are calculated: bend one piece, measure, correct. ${BOX} first piece measured ${BOX} gauge corrected ${BOX} good to run</p>`,
  ].join("\n");
}

function drawings(work: LineWork, system: UnitSystem): string {
  const all = drawingsOf(work, system, "every");
  const figures = all.map(({ name, svg }) => `<figure>${svg}<figcaption>${text(name)}</figcaption></figure>`);
  return `<div class="drawings${all.length > ONE_ROW ? " many" : ""}">${figures.join("")}</div>`;
}
const ONE_ROW = 3;

function stops(strip: StripPlan, direction: number, system: UnitSystem): string {
  const { part, order, plain } = strip;
  const title = direction === 0 ? "Stops" : "Stops, second direction";
  const length = (value: number) => showReading(value, system);
  const proposal = plain
    ? "<p>Order and stops are a proposal: the tools are known only by their tables. Try the order by hand against the real punch, ram and die.</p>"
    : "";
  if (!order.feasible) {
    const [first] = order.blocked;
    const obstacle = first
      ? `Bend ${first.bend} fails: ${obstacleInWords(first.obstacle)} by ${length(first.obstacle.by)}.`
      : "";
    return `<h2>${title}</h2><p><strong>No order of the bends was found on these tools.</strong> ${text(obstacle)}</p>${proposal}`;
  }
  const rows = order.hits.map((hit, i) => {
    const { angle } = part.bends[hit.bend - 1]!;
    return [
      `${i + 1}`,
      `${hit.bend}`,
      `${showNumber(Math.abs(angle))}°${angle < 0 ? " down" : ""}`,
      length(hit.stop),
      `${hit.gaugedEnd}, ${hit.datum.on}`,
      [hit.turned ? "turn" : "", hit.flipped ? "flip" : ""].filter(Boolean).join(", ") || "as it lies",
      length(strip.depths[hit.bend - 1]!),
      { markup: BOX },
    ];
  });
  const columns = [
    { title: "Hit" },
    { title: "Bend" },
    { title: "Angle" },
    { title: "Stop", number: true },
    { title: "Against the gauge" },
    { title: "Blank" },
    { title: "Punch below die's top", number: true },
    { title: "Done" },
  ];
  return `<h2>${title}</h2>${table(columns, rows, "stops")}${proposal}`;
}
