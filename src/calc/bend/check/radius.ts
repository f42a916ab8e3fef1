import { ABOUT_USUAL, STEEL_TIGHTEST } from "../../../data/bend-rules.ts";
import { atLeast } from "../../../units/nearly.ts";
import { type Millimetres, mm } from "../../../units/quantity.ts";
import { show } from "../../../units/show.ts";
import type { UnitSystem } from "../../../units/system.ts";
import { typicalTensile } from "../../material/strength.ts";
import type { Problem, Severity } from "../../problem.ts";
import { type AirEstimate, knownOrNot } from "../air-estimate.ts";
import { type Grain, minimumRadius } from "../minimum-radius.ts";
import type { BendLine } from "./line.ts";

/**
 * Will the bend crack? The tightest radius against the published one, in two grades: tighter than published yet usual
 * on a brake is a note (a bill that is red on every line is read by nobody); tighter than usual, or tighter than
 * published where nothing is usual, is a problem. Grain that is not known is judged along.
 */
export function radiusProblem(
  line: BendLine,
  { tightest, stroke }: AirEstimate,
  system: UnitSystem,
): Problem | undefined {
  const { material, thickness, grain } = line;
  const across = publishedRadius(line, "across");
  const published = publishedRadius(line, grain ?? "along") ?? (grain ? undefined : across);
  const usual = material.usualRadius && mm(material.usualRadius.value * thickness);
  if (across === undefined && usual === undefined)
    return unknown(`Nothing is published about bending ${material.name}.`, published);
  if (tightest === undefined)
    return unknown(`How tight ${material.name} bends here is not known: the punch nose is not given.`, across);
  const found = (severity: Severity, limit: Millimetres, saying: string): Problem => ({
    check: "radius",
    severity,
    value: tightest,
    limit,
    quantity: "length",
    message: `${material.foldsRoundNose ? "Tightest" : "Inside"} radius about ${show(tightest, "length", system, 2)}${stroke === undefined ? "" : " (solved)"}; ${saying}`,
  });
  const advice = (limit: Millimetres) => `published advice is ${show(limit, "length", system)}${grainWords(grain)}`;
  if (usual === undefined) {
    const along = publishedRadius(line, "along");
    const judged = grain === "across" ? across : along;
    if (judged !== undefined && atLeast(tightest, judged)) return undefined;
    const least = `published advice is ${show(across!, "length", system)} with the bend line across the grain`;
    return atLeast(tightest, across!)
      ? found("check", across!, `${least}${along === undefined ? ", and none along it" : ""}; keep it across.`)
      : found("stop", across!, `${least}: ${material.name} cracks.`);
  }
  if (published !== undefined && atLeast(tightest, published)) return undefined;
  if (atLeast(tightest, ABOUT_USUAL.value * usual))
    return published === undefined
      ? undefined
      : found("note", published, `${advice(published)}; usual on this die: look at the first piece.`);
  const least = mm(STEEL_TIGHTEST.value * thickness);
  const limit = published ?? usual;
  return atLeast(tightest, least)
    ? found(
        "check",
        limit,
        `${published === undefined ? `usual is ${show(usual, "length", system)}` : advice(published)}; tighter than usual: bend a test piece.`,
      )
    : found("stop", limit, `less than half the thickness: it cracks or creases.`);
}

const publishedRadius = ({ material, thickness }: BendLine, grain: Grain): Millimetres | undefined =>
  knownOrNot(() => minimumRadius(material.name, material.radiusRule, thickness, grain, typicalTensile(material)));

const grainWords = (grain: Grain | undefined): string => (grain ? ` ${grain} the grain` : ", grain not known");

const unknown = (message: string, limit: Millimetres | undefined): Problem => ({
  check: "radius",
  severity: "check",
  limit,
  quantity: "length",
  message,
});
