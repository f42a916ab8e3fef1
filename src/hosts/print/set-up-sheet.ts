/** One page for the brake: drawings, stops in order with boxes to tick, what to mind. */
import { poseAtHit } from "../../calc/bend/order/pose.ts";
import { statusOf } from "../../calc/problem.ts";
import { degrees } from "../../units/quantity.ts";
import { showNumber, showReading } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { BendPlan } from "../bill/bend-plan.ts";
import { drawingsOf, figuresOf, type LineWork, sentencesOf } from "../bill/line-report.ts";
import { cautions } from "./cautions.ts";
import { BOX, facts, heading, list, table, text } from "./page.ts";

export function setUpSheet(work: LineWork, description: string, system: UnitSystem): string {
  const { line, check, bends } = work;
  return [
    heading(line.part, statusOf(check.problems)),
    description === "" ? "" : `<p>${text(description)}</p>`,
    facts(figuresOf(work, system)),
    list(sentencesOf(check.problems), "findings"),
    `<div class="drawings">${drawingsOf(work, system)
      .map(({ name, svg }) => `<figure>${svg}<figcaption>${text(name)}</figcaption></figure>`)
      .join("")}</div>`,
    bends
      ? stops(bends, system)
      : `<p>${work.noDrawing ? text(`Not drawn and no stops: ${work.noDrawing}`) : "No bends: cut only."}</p>`,
    "<h2>Before the first stroke</h2>",
    list(cautions(work, system), "cautions"),
    line.cross ? "<p>The part is bent in a second direction too; that strip has no stops here.</p>" : "",
    `<p class="foot">Stops and depth are calculated: bend one piece, measure, correct. ${BOX} first piece measured ${BOX} gauge corrected ${BOX} good to run</p>`,
  ].join("\n");
}

function stops({ part, press, order, plain, springback }: BendPlan, system: UnitSystem): string {
  const length = (value: number) => showReading(value, system);
  const proposal = plain
    ? "<p>Order and stops are a proposal: the tools are known only by their tables. Try the order by hand against the real punch, ram and die.</p>"
    : "";
  if (!order.feasible) {
    const [first] = order.blocked;
    const obstacle = first
      ? `Bend ${first.bend} fails: ${first.obstacle.leg === "finger" ? "the gauge finger" : `flange ${first.obstacle.leg}`} meets the ${first.obstacle.tool} by ${length(first.obstacle.by)}.`
      : "";
    return `<h2>Stops</h2><p><strong>No order of the bends was found on these tools.</strong> ${text(obstacle)}</p>${proposal}`;
  }
  const finished: number[] = [];
  const rows = order.hits.map((hit, i) => {
    const pose = poseAtHit(part, press, finished, hit, springback ?? degrees(0), "loaded");
    finished.push(hit.bend);
    const tip = Math.min(...pose.tools.punch.map(([, y]) => y));
    const { angle } = part.bends[hit.bend - 1]!;
    return [
      `${i + 1}`,
      `${hit.bend}`,
      `${showNumber(Math.abs(angle))}°${angle < 0 ? " down" : ""}`,
      length(hit.stop),
      `${hit.gaugedEnd}, ${hit.datum.on}`,
      [hit.turned ? "turn" : "", hit.flipped ? "flip" : ""].filter(Boolean).join(", ") || "as it lies",
      length(-tip),
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
  return `<h2>Stops</h2>${table(columns, rows, "stops")}${proposal}`;
}
