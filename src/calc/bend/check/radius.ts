import { ABOUT_USUAL } from "../../../data/bend-rules.ts";
import { PLATE_ALONG_FROM_IN, PLATE_ALONG_RADIUS } from "../../../data/thresholds.ts";
import { atLeast } from "../../../units/nearly.ts";
import { type Millimeters, mm } from "../../../units/quantity.ts";
import type { Finding, Severity } from "../../finding.ts";
import { limitOf, type OwnThresholds } from "../../limit-of.ts";
import { typicalTensile } from "../../material/strength.ts";
import { type AirEstimate, knownOrNot } from "../air-estimate.ts";
import { type Grain, minimumRadius } from "../minimum-radius.ts";
import type { BendLine } from "./line.ts";

/**
 * Will the bend crack? The tightest radius against the published one. A temper that cracks (nothing is usual for it)
 * below its table stops, and so it does where its bend line lies along the grain; ductile sheet tighter than published but usual on a brake is a note, since a bill that is red
 * on every line is read by nobody, and tighter than usual a check. Grain that is not known is judged along.
 */
export function radiusFinding(line: BendLine, { tightest }: AirEstimate, own?: OwnThresholds): Finding | undefined {
  const { material, thickness, grain } = line;
  const across = publishedRadius(line, "across");
  const usual = material.usualRadius && mm(material.usualRadius.value * thickness);
  const found = (status: Severity, kind: string, limit?: Millimeters): Finding => ({
    about: "radius",
    status,
    kind,
    figure: tightest,
    limit,
    quantity: "length",
    name: material.name,
  });
  if (across === undefined && usual === undefined) return found("check", "nothing published");
  if (tightest === undefined) return found("check", "nose unknown", across);
  if (usual === undefined) {
    const along = publishedRadius(line, "along");
    const judged = grain === "across" ? across : along;
    if (judged !== undefined && atLeast(tightest, judged)) return undefined;
    if (across !== undefined && !atLeast(tightest, across)) return found("stop", "cracks", across);
    return grain === "along" ? found("stop", "along", across) : found("check", "across only", across);
  }
  const plateAlong =
    grain === "along" && atLeast(thickness, limitOf(PLATE_ALONG_FROM_IN, own))
      ? mm(limitOf(PLATE_ALONG_RADIUS, own) * thickness)
      : undefined;
  if (plateAlong !== undefined && !atLeast(tightest, plateAlong)) return found("check", "plate along", plateAlong);
  const published = publishedRadius(line, grain ?? "along") ?? (grain ? undefined : across);
  if (published !== undefined && atLeast(tightest, published)) return undefined;
  if (!atLeast(tightest, ABOUT_USUAL.value * usual)) return found("check", "tighter than usual", usual);
  return published === undefined ? undefined : found("note", "usual", published);
}

const publishedRadius = ({ material, thickness }: BendLine, grain: Grain): Millimeters | undefined =>
  knownOrNot(() => minimumRadius({ ...material, tensile: typicalTensile(material) }, thickness, grain));
