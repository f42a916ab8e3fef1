import { cite } from "../../data/fact.ts";
import {
  ABRASIVE_EXPONENT,
  JET_CONSTANT_SI,
  NOZZLE_EXPONENT,
  ORIFICE_EXPONENT,
  PRESSURE_EXPONENT,
  SPEED_EXPONENT,
  THIN_MM,
  THIN_PUBLISHED,
} from "../../data/jet-rules.ts";
import {
  type GramsPerMinute,
  type Megapascals,
  type Millimeters,
  type MillimetersPerMinute,
  millimetersPerMinute,
  type Ratio,
} from "../../units/quantity.ts";
import { message, Refusal } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";

export interface JetCut {
  readonly machinability: Ratio;
  readonly thickness: Millimeters;
  /** 1 rough cut to 5 fine finish, as the paper numbers them. */
  readonly quality: Ratio;
  readonly pressure: Megapascals;
  readonly orifice: Millimeters;
  readonly abrasiveRate: GramsPerMinute;
  readonly nozzleDiameter: Millimeters;
}

/**
 * Abrasive-waterjet cutting speed on a straight line:
 * u = [Nm P^1.594 do^1.374 Ma^0.343 / (788 q h Dm^0.618)]^1.15, MPa, mm, g/min -> mm/min. About +-25 % without a timed
 * cut of the shop's own; in thin stock it outruns any table, so cap it at the machine's feed. Corners, pierces and
 * leads come on top. Source: Zeng & Kim 1993 (memory; the US and SI constants agree to 0.2 % on one cut).
 */
export function jetFeed(cut: JetCut, work?: Working): MillimetersPerMinute {
  if (cut.nozzleDiameter < cut.orifice)
    throw new Refusal(
      "#VALUE!",
      message(
        "nozzle_diameter",
        `at least the orifice, ${showBoth(cut.orifice, "length")}`,
        showBoth(cut.nozzleDiameter, "length"),
        "the bore of the mixing tube is about 3 times the orifice (common practice)",
      ),
    );
  if (cut.thickness < THIN_MM.value)
    step(
      work,
      "thin",
      "sheet so thin that the formula outruns published speeds (this one in 1.6 mm mild steel): time a cut of your own",
      millimetersPerMinute(THIN_PUBLISHED.value * MM_PER_INCH),
      "mm/min",
      cite(THIN_PUBLISHED),
    );
  const power =
    cut.machinability *
    cut.pressure ** PRESSURE_EXPONENT.value *
    cut.orifice ** ORIFICE_EXPONENT.value *
    cut.abrasiveRate ** ABRASIVE_EXPONENT.value;
  const resistance = JET_CONSTANT_SI.value * cut.quality * cut.thickness * cut.nozzleDiameter ** NOZZLE_EXPONENT.value;
  const formula = "Nm P^1.594 do^1.374 Ma^0.343 / (788 q t Dm^0.618) in MPa, mm, g/min";
  const source = `${formula}, ${cite(JET_CONSTANT_SI)}`;
  const base = step(work, "b", "cutting power over resistance", power / resistance, "", source);
  return step(
    work,
    "u",
    "cutting speed, straight line",
    millimetersPerMinute(base ** SPEED_EXPONENT.value),
    "mm/min",
    `b^1.15, ${cite(SPEED_EXPONENT)}`,
  );
}
