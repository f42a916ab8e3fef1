import { cite } from "../../data/fact.ts";
import { SPEED_EXPONENT, TIMED_HOLDS } from "../../data/jet-rules.ts";
import type { Material } from "../../data/materials/material.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type MillimetresPerMinute, mm, type Ratio } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { step, type Working } from "../../units/working.ts";
import { factValue } from "../material/fact-value.ts";
import { type JetCut, jetFeed } from "./feed.ts";

/**
 * How fast the waterjet cuts this material: by the cut the shop has timed in it, else by the formula of feed.ts times the
 * machine's own factor. A timed cut holds from half to double its thickness and scales as the formula does, with the
 * power -1.15 of thickness and quality: u = u0 (h0 q0 / h q)^1.15. #N/A for a material with neither: panel, plywood.
 * Source: scaling Zeng & Kim 1993 (memory).
 * @param speedFactor the shop's timed cut over the formula, for the whole machine.
 */
export function cuttingFeed(
  material: Material,
  cut: Omit<JetCut, "machinability">,
  speedFactor: Ratio | undefined,
  work?: Working,
): MillimetresPerMinute {
  const timed = timedFeed(material, cut, work);
  if (timed !== undefined) return timed;
  if (!material.machinability) throw untimed(material, cut);
  const known = material.machinability;
  const machinability = step(work, "Nm", "machinability number", known.value, "", cite(known));
  const feed = jetFeed({ ...cut, machinability }, work);
  if (speedFactor === undefined) return feed;
  const own = (feed * speedFactor) as MillimetresPerMinute;
  return step(work, "u own", "the same times the machine's speed factor", own, "mm/min", "given");
}

/** undefined: not timed, or timed in sheet too thick or too thin to say anything about this one. */
export function timedFeed(
  material: Material,
  { thickness, quality }: Pick<JetCut, "thickness" | "quality">,
  work?: Working,
): MillimetresPerMinute | undefined {
  const { timedFeed: feed, timedThickness: at = material.nominalThickness, timedQuality } = material;
  if (!feed) return undefined;
  if (!at) throw noAnswer("timed thickness", "given beside the timed feed", material.name);
  const timedAt = mm(factValue(at, "length"));
  const share = thickness / timedAt;
  if (!atLeast(share, 1 / TIMED_HOLDS.value) || !atMost(share, TIMED_HOLDS.value)) return undefined;
  const u0 = step(work, "u0", "feed of the shop's timed cut", factValue(feed, "feed"), "mm/min", cite(feed));
  step(work, "h0", "thickness of the timed cut", timedAt, "mm", cite(at));
  const q0 = step(work, "q0", "quality of the timed cut", timedQuality?.value ?? quality, "", said(timedQuality));
  const feedHere = (u0 * ((timedAt * q0) / (thickness * quality)) ** SPEED_EXPONENT.value) as MillimetresPerMinute;
  return step(work, "u", "cutting speed", feedHere, "mm/min", `u0 (h0 q0 / h q)^1.15, ${cite(SPEED_EXPONENT)}`);
}

const said = (quality: Material["timedQuality"]): string =>
  quality ? cite(quality) : "not said: taken as the quality asked for";

function untimed(material: Material, { thickness }: Pick<JetCut, "thickness">) {
  const at = material.timedThickness ?? material.nominalThickness;
  const rule = "one with a timed cut or a machinability number";
  return material.timedFeed && at
    ? noAnswer(
        "thickness",
        `half to double the ${showBoth(factValue(at, "length"), "length")} of the timed cut in ${material.name}`,
        showBoth(thickness, "length"),
        "time a cut in this thickness",
      )
    : noAnswer(
        "material",
        rule,
        material.name,
        'time a cut of your own: "Timed feed" and "Timed thickness" in the data range',
      );
}
