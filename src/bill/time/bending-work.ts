/** What bending takes: the run of every line, and the change of tools that the lines of one set share. */
import { bendOf } from "../../calc/bend/order/part.ts";
import { type BrakeMotion, brakeTime } from "../../calc/time/brake-time.ts";
import { runTime, type Seconds, seconds } from "../../calc/time/seconds.ts";
import { TWO_PEOPLE_FROM_IN } from "../../data/thresholds.ts";
import { entryOf } from "../../units/certain.ts";
import { atMost } from "../../units/nearly.ts";
import { degrees } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { hitsOf } from "../lines/bent-strip.ts";
import { type BentPlan, isBent, type LinePlan } from "../lines/plan-line.ts";
import { setKey } from "../lines/tools.ts";
import { bentStrips } from "../nouns/line.ts";
import { complete, MOTION } from "../nouns/machines.ts";
import { stationNamed } from "../nouns/station.ts";
import { handlingOf, type WorkShop } from "./cutting-work.ts";
import { paceOf } from "./pace.ts";
import { sharesOf } from "./shares.ts";
import { type StationWork, stationWork } from "./station-work.ts";

/**
 * Work at the brake of every line that is bent. Tools are set up once for all lines of a set, and what that takes beyond
 * a line's own set-up is shared among them by their minutes at the brake: no line pays for coming first.
 */
export function bendingWorks(plans: readonly LinePlan[], shop: WorkShop, work?: Working): Map<LinePlan, StationWork> {
  const bent = plans.filter(isBent);
  if (bent.length === 0) return new Map();
  const station = stationNamed("Brake", shop.stations);
  const lineSetUp = shop.rates.find("brakeLineSetUp");
  const pace = paceOf(station.name, shop, work);
  // Without a set-up of its own a line pays the station's, and the first one on the tools more by the shop's factor.
  const ofSet = station.setUp * (lineSetUp === undefined ? shop.rates.get("firstJobFactor") - 1 : 1);
  const timed = bent.map((plan) => {
    const each = brakeEach(plan, shop, work);
    return { plan, each, key: setKey(plan.tools), run: runTime(plan.blanks, each) };
  });
  const shares = sharesOf(timed);
  return new Map(
    timed.map(({ plan, each }) => {
      const share = entryOf(shares, plan);
      const own = (lineSetUp ?? station.setUp) + furtherSetUp(plan, shop);
      const setUp = step(
        work,
        "S brake",
        `set-up of ${plan.line.part}, its share of the tools included`,
        own + ofSet * share,
        "s",
        "tools once a set, shared by brake minutes (common practice)",
      );
      const { people, how } = handlingOf(plan, shop);
      const long = !atMost(longestBend(plan), shop.rates.limit(TWO_PEOPLE_FROM_IN));
      return [
        plan,
        stationWork({
          station,
          machine: plan.tools.brake.name,
          setUp,
          share: ofSet * share,
          change: ofSet,
          each,
          pace,
          pieces: plan.blanks,
          people: long ? Math.max(2, people) : people,
          note: long && people < 2 ? "two people, long bend" : how,
        }),
      ];
    }),
  );
}

/** Every bend after the first has a setting and an angle to prove; a long bend is proved at both ends and the middle. */
function furtherSetUp(plan: LinePlan, { rates }: WorkShop): number {
  const bends = bentStrips(plan.line).reduce((sum, { angles }) => sum + angles.length, 0);
  return (rates.find("setUpPerBend") ?? 0) * (bends - 1) + (rates.find("setUpPerLength") ?? 0) * longestBend(plan);
}

const longestBend = ({ line }: LinePlan): number => Math.max(...bentStrips(line).map(({ bendLength }) => bendLength));

/** Seconds of one piece at the brake. */
function brakeEach(plan: BentPlan, shop: WorkShop, work?: Working): Seconds {
  const { strips, tools } = plan;
  const { brake, die } = tools;
  const motion = complete<BrakeMotion>(brake.motion, MOTION, "brakes", brake.name);
  const { time } = handlingOf(plan, shop, work);
  const next = seconds(time * (shop.rates.find("nextBends") ?? 1));
  return seconds(
    strips.reduce((sum, strip, i) => {
      const hits = hitsOf(strip).map(({ bend, stop }) => {
        return { bendAngle: degrees(Math.abs(bendOf(strip.part, bend).angle)), stop };
      });
      return sum + brakeTime(die.opening, hits, motion, { first: i === 0 ? time : next, next }, work);
    }, 0),
  );
}
