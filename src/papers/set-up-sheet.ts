/** One page for the brake: drawings, the back gauge in the order of the bends with boxes to tick, what to mind. */
import { lineName } from "../bill/line-name.ts";
import type { LinePlan } from "../bill/lines/plan-line.ts";
import { bentStrips } from "../bill/nouns/line.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import { releaseOf } from "../bill/release.ts";
import { notCheckedSays, notesSay } from "../bill/says.ts";
import type { UnitSystem } from "../units/system.ts";
import { backGauge } from "./back-gauge.ts";
import { cautions, isCaution } from "./cautions.ts";
import { lineDrawings } from "./line-drawings.ts";
import { lineFigures } from "./line-figures.ts";
import { lineProblems } from "./line-words.ts";
import { BLANK, BOX, facts, heading, list, paragraph, text } from "./page.ts";

export function setUpSheet(line: LineAnswer, plan: BillPlan): string {
  const { system } = plan.shop;
  const release = releaseOf(line);
  const head = [
    heading(lineName(line), release),
    paragraph(line.plan?.line.description ?? ""),
    line.plan ? facts(lineFigures(line.plan, line, system)) : "",
    list(lineProblems(line, plan), "findings"),
    WAITS[release],
  ];
  if (!line.plan) return head.join("\n");
  const notes = notesSay(
    line.findings.filter((finding) => !isCaution(finding)),
    system,
  );
  const isStopped = release === "STOP";
  return [
    ...head,
    list(notes, "findings"),
    drawings(line.plan, system),
    isStopped ? "<p>The back gauge is not set for a stopped line.</p>" : brakeWork(line.plan, plan),
    isStopped ? "" : `<h2>Before the first stroke</h2>${list(cautions(line.plan, line, plan.shop), "cautions")}`,
    isStopped || line.plan.strips.length === 0
      ? ""
      : `<p class="foot">Back gauge and depth are calculated: bend one piece, measure, correct. ${BOX} first piece measured ${BOX} gauge corrected ${BOX} good to run</p>`,
  ].join("\n");
}

const WAITS = {
  STOP: "<p><strong>Do not make this part before this is settled.</strong></p>",
  HOLD: `<p><strong>Wait until somebody accepts the checks.</strong> Accepted by ${BLANK} date ${BLANK}</p>`,
  CHECK: "",
  CLEAR: "",
} as const;

function drawings(plan: LinePlan, system: UnitSystem): string {
  const all = lineDrawings(plan, system, "every");
  const figures = all.map(({ name, svg }) => `<figure>${svg}<figcaption>${text(name)}</figcaption></figure>`);
  return `<div class="drawings${all.length > ONE_ROW ? " many" : ""}">${figures.join("")}</div>`;
}
const ONE_ROW = 3;

/** The back gauge of every direction, or why there is nothing to do at the brake. */
function brakeWork({ line, tools, strips }: LinePlan, plan: BillPlan): string {
  if (bentStrips(line).length === 0) return "<p>No bends: cut only.</p>";
  if (!tools) return paragraph(`No tools: ${notCheckedSays(plan.notChecked) || "none of the tables bends it."}`);
  if (strips.length === 0) return "<p>No back gauge: this part cannot be bent from a sheet as it is drawn.</p>";
  const both =
    strips.length > 1
      ? "<p>The part is bent in two directions: the flanges of the first must clear the tools in the second. Box ends are not seen by the order; try it by hand.</p>"
      : "";
  return strips.map((strip, i) => backGauge(strip, i, plan.shop.system)).join("\n") + both;
}
