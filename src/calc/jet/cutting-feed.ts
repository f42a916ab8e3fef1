import { cite } from "../../data/fact.ts";
import { SPEED_EXPONENT, TIMED_HOLDS } from "../../data/jet-rules.ts";
import type { Material } from "../../data/materials/material.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import {
  type Millimeters,
  type MillimetersPerMinute,
  millimetersPerMinute,
  mm,
  type Ratio,
} from "../../units/quantity.ts";
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
): MillimetersPerMinute {
  const timed = timedFeed(material, cut, work);
  if (timed !== undefined) return timed;
  if (!material.machinability) throw untimed(material, cut);
  const known = material.machinability;
  const machinability = step(work, "Nm", "machinability number", known.value, "", cite(known));
  const feed = jetFeed({ ...cut, machinability }, work);
  const own =
    speedFactor === undefined
      ? feed
      : step(
          work,
          "u own",
          "the same times the machine's speed factor",
          millimetersPerMinute(feed * speedFactor),
          "mm/min",
          "given",
        );
  return beyondTimed(own, material, cut, work);
}

/** undefined: not timed, or timed in sheet too thick or too thin to say anything about this one. */
export function timedFeed(
  material: Material,
  { thickness, quality }: Pick<JetCut, "thickness" | "quality">,
  work?: Working,
): MillimetersPerMinute | undefined {
  const timed = timedCut(material, quality);
  if (!timed) return undefined;
  const { feed, at, u0, h0, q0 } = timed;
  if (!atLeast(thickness, timed.thinnest) || !atMost(thickness, timed.thickest)) return undefined;
  step(work, "u0", "feed of the shop's timed cut", u0, "mm/min", cite(feed));
  step(work, "h0", "thickness of the timed cut", h0, "mm", cite(at));
  const { timedQuality } = material;
  const asked = "not said: taken as the quality asked for";
  step(work, "q0", "quality of the timed cut", q0, "", timedQuality ? cite(timedQuality) : asked);
  const source = `u0 (h0 q0 / h q)^1.15, ${cite(SPEED_EXPONENT)}`;
  return step(work, "u", "cutting speed", timed.scaled(thickness), "mm/min", source);
}

/** Throws a Refusal where a feed is given without its thickness. */
function timedCut(material: Material, quality: Ratio) {
  const { timedFeed: feed, timedThickness: at = material.nominalThickness, timedQuality } = material;
  if (!feed) return undefined;
  if (!at) throw noAnswer("timed thickness", "given beside the timed feed", material.name);
  const [u0, h0, q0] = [factValue(feed, "feed"), mm(factValue(at, "length")), timedQuality?.value ?? quality];
  const scaled = (thickness: Millimeters) =>
    millimetersPerMinute(u0 * ((h0 * q0) / (thickness * quality)) ** SPEED_EXPONENT.value);
  return { feed, at, u0, h0, q0, scaled, thinnest: mm(h0 / TIMED_HOLDS.value), thickest: mm(h0 * TIMED_HOLDS.value) };
}

/**
 * Past the range of a timed cut the formula, but never further from it than the cut's own scaling goes: a sheet a little
 * thicker is not cut faster because the timed cut ends there (chosen).
 */
function beyondTimed(
  formula: MillimetersPerMinute,
  material: Material,
  { thickness, quality }: Pick<JetCut, "thickness" | "quality">,
  work?: Working,
): MillimetersPerMinute {
  const timed = timedCut(material, quality);
  if (!timed) return formula;
  const ends = [timed.scaled(thickness), timed.scaled(thickness < timed.thinnest ? timed.thinnest : timed.thickest)];
  const held = millimetersPerMinute(Math.min(Math.max(formula, Math.min(...ends)), Math.max(...ends)));
  const meaning = "kept between the timed cut's scaling and the end of its range";
  return held === formula ? formula : step(work, "u", meaning, held, "mm/min", cite(timed.feed));
}

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
