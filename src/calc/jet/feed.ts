import { cite } from "../../data/fact.ts";
import {
  ABRASIVE_EXPONENT,
  JET_CONSTANT_SI,
  NOZZLE_EXPONENT,
  ORIFICE_EXPONENT,
  PRESSURE_EXPONENT,
  SPEED_EXPONENT,
} from "../../data/jet-rules.ts";
import {
  type GramsPerMinute,
  type Megapascals,
  type Millimetres,
  type MillimetresPerMinute,
  millimetresPerMinute,
  type Ratio,
} from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

export interface JetCut {
  readonly machinability: Ratio;
  readonly thickness: Millimetres;
  /** 1 separation cut to 5 best finish. */
  readonly quality: Ratio;
  readonly pressure: Megapascals;
  readonly orifice: Millimetres;
  readonly abrasiveRate: GramsPerMinute;
  readonly nozzleDiameter: Millimetres;
}

/**
 * Abrasive-waterjet cutting speed on a straight line:
 * u = [Nm P^1.594 do^1.374 Ma^0.343 / (788 q h Dm^0.618)]^1.15, MPa, mm, g/min -> mm/min. About +-25 % without a timed
 * cut of the shop's own; in thin stock it outruns any table, so cap it at the machine's feed. Corners, pierces and
 * leads come on top. Source: Zeng & Kim 1993 (memory; the US and SI constants agree to 0.2 % on one cut).
 */
export function jetFeed(cut: JetCut, work?: Working): MillimetresPerMinute {
  step(work, "Nm", "machinability number", cut.machinability, "", "material");
  const power =
    cut.machinability *
    cut.pressure ** PRESSURE_EXPONENT.value *
    cut.orifice ** ORIFICE_EXPONENT.value *
    cut.abrasiveRate ** ABRASIVE_EXPONENT.value;
  const resistance = JET_CONSTANT_SI.value * cut.quality * cut.thickness * cut.nozzleDiameter ** NOZZLE_EXPONENT.value;
  const base = step(work, "b", "cutting power over resistance", power / resistance, "", cite(JET_CONSTANT_SI));
  return step(
    work,
    "u",
    "cutting speed, straight line",
    millimetresPerMinute(base ** SPEED_EXPONENT.value),
    "mm/min",
    `b^1.15, ${cite(SPEED_EXPONENT)}`,
  );
}
