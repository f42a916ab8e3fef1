import { cite } from "../../data/fact.ts";
import {
  ASYMMETRY_MAXIMUM,
  ASYMMETRY_SLOPE,
  COUPLING,
  COUPLING_SOURCE,
  type Coupling,
  FREQUENCY,
  FREQUENCY_HIGH,
  FREQUENCY_SOURCE,
  HORIZONTAL_BASE,
  HORIZONTAL_MAXIMUM,
  LOAD_CONSTANT,
  TRAVEL_BASE,
  TRAVEL_MAXIMUM,
  TRAVEL_MINIMUM,
  TRAVEL_SLOPE,
  VERTICAL_BASE,
  VERTICAL_MAXIMUM,
  VERTICAL_SLOPE,
} from "../../data/niosh.ts";
import { firstOf, lastOf } from "../../units/certain.ts";
import { atMost } from "../../units/nearly.ts";
import {
  type Degrees,
  type Hours,
  type Kilograms,
  kilograms,
  type Millimeters,
  type Ratio,
} from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showBoth, showNumber } from "../../units/show.ts";
import { KG_PER_POUND, MM_PER_INCH } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";

export interface Lift {
  /** Hands from the ankles, forward. */
  readonly horizontal: Millimeters;
  /** Hands above the floor at the start. */
  readonly vertical: Millimeters;
  /** Height the load travels. */
  readonly travel: Millimeters;
  /** Twist of the body. */
  readonly asymmetry: Degrees;
  readonly liftsPerMinute: Ratio;
  readonly coupling: Coupling;
  readonly hours: Hours;
}

/**
 * Recommended weight limit of the revised NIOSH equation, RWL = 51 lb HM VM DM AM FM CM, for one person lifting with
 * two hands. Not a team lift, not a sheet pushed over a table, not a flange that swings up. A reach nearer than 10 in
 * counts as 10, a travel below 10 in as 10 (the manual's rule). Outside the equation's ranges: #N/A.
 * Source: NIOSH 94-110 (multipliers and limits read; coupling memory).
 */
export function liftLimit(lift: Lift, work?: Working): Kilograms {
  const h = within("horizontal", lift.horizontal, HORIZONTAL_MAXIMUM.value, "move the load closer");
  const v = within("vertical", lift.vertical, VERTICAL_MAXIMUM.value, "lower the shelf");
  const d = within("travel", lift.travel, TRAVEL_MAXIMUM.value, "split the lift");
  if (!atMost(lift.asymmetry, ASYMMETRY_MAXIMUM.value))
    throw noAnswer(
      "asymmetry",
      `at most ${ASYMMETRY_MAXIMUM.value} deg`,
      `${showNumber(lift.asymmetry)} deg`,
      "turn the feet",
    );
  const lc = step(work, "LC", "load constant", LOAD_CONSTANT.value * KG_PER_POUND, "kg", cite(LOAD_CONSTANT));
  const hm = step(
    work,
    "HM",
    "horizontal multiplier",
    HORIZONTAL_BASE.value / Math.max(h, HORIZONTAL_BASE.value),
    "",
    `10 in / H, ${cite(HORIZONTAL_BASE)}`,
  );
  const vm = step(
    work,
    "VM",
    "vertical multiplier",
    1 - VERTICAL_SLOPE.value * Math.abs(v - VERTICAL_BASE.value),
    "",
    `1 - 0.0075 |V - 30 in|, ${cite(VERTICAL_SLOPE)}`,
  );
  const traveled = Math.max(d, TRAVEL_MINIMUM.value);
  const dm = step(
    work,
    "DM",
    "distance multiplier",
    TRAVEL_BASE.value + TRAVEL_SLOPE.value / traveled,
    "",
    `0.82 + 1.8 in / D, D 10 in or more, ${cite(TRAVEL_SLOPE)}`,
  );
  const am = step(
    work,
    "AM",
    "asymmetry multiplier",
    1 - ASYMMETRY_SLOPE.value * lift.asymmetry,
    "",
    `1 - 0.0032 A, ${cite(ASYMMETRY_SLOPE)}`,
  );
  const fm = step(
    work,
    "FM",
    "frequency multiplier",
    frequencyMultiplier(lift.liftsPerMinute, lift.hours, v >= VERTICAL_BASE.value),
    "",
    FREQUENCY_SOURCE,
  );
  const grip = COUPLING[lift.coupling];
  const cm = step(
    work,
    "CM",
    "coupling multiplier",
    v < VERTICAL_BASE.value ? grip.low : grip.high,
    "",
    COUPLING_SOURCE,
  );
  return step(
    work,
    "RWL",
    "recommended weight limit",
    kilograms(lc * hm * vm * dm * am * fm * cm),
    "kg",
    "LC HM VM DM AM FM CM, NIOSH 94-110 (read)",
  );
}

/** Lifts a minute between two rows: the more frequent row rules. Beyond the table no lift is recommended. */
function frequencyMultiplier(lifts: Ratio, hours: Hours, fromWaist: boolean): Ratio {
  const at = (table: typeof FREQUENCY) => table.find(([rate]) => atMost(lifts, rate));
  const usual = at(FREQUENCY);
  const high = fromWaist && usual && usual[0] >= firstOf(FREQUENCY_HIGH)[0] ? at(FREQUENCY_HIGH) : undefined;
  const row = high ?? usual;
  if (!row)
    throw noAnswer(
      "lifts_per_minute",
      `at most ${lastOf(FREQUENCY)[0]}`,
      showNumber(lifts),
      "use a hoist or a second person",
    );
  return hours <= 1 ? row[1] : hours <= 2 ? row[2] : row[3];
}

function within(parameter: string, value: Millimeters, limitInches: number, hint: string): number {
  if (!atMost(value, limitInches * MM_PER_INCH))
    throw noAnswer(
      parameter,
      `at most ${showBoth(limitInches * MM_PER_INCH, "length")}, the equation's end`,
      showBoth(value, "length"),
      hint,
    );
  return value / MM_PER_INCH;
}
