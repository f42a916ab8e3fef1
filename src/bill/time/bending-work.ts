/** What bending takes: the run of every line, and the change of tools that the lines of one set share. */
import { type BrakeMotion, brakeTime } from "../../calc/time/brake-time.ts";
import { runTime, type Seconds, seconds } from "../../calc/time/seconds.ts";
import { TWO_PEOPLE_FROM_IN } from "../../data/thresholds.ts";
import { atMost } from "../../units/nearly.ts";
import { degrees } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { hitsOf } from "../lines/bent-strip.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import { setKey } from "../lines/tools.ts";
import { bentStrips } from "../nouns/line.ts";
import { complete, MOTION } from "../nouns/machines.ts";
import { stationNamed } from "../nouns/station.ts";
import { handlingOf, type WorkShop } from "./cutting-work.ts";
import { type StationWork, stationWork } from "./station-work.ts";

/**
 * Work at the brake of every line that is bent. Tools are set up once for all lines of a set, and what that takes beyond
 * a line's own set-up is shared among them by their minutes at the brake: no line pays for coming first.
 */
export function bendingWorks(plans: readonly LinePlan[], shop: WorkShop, work?: Working): Map<LinePlan, StationWork> {
  const bent = plans.filter(({ tools }) => tools !== undefined);
  if (bent.length === 0) return new Map();
  const station = stationNamed("Brake", shop.stations);
  const lineSetUp = shop.rates.find("brakeLineSetUp");
  const own = lineSetUp ?? station.setUp;
  // Without a set-up of its own a line pays the station's, and the first one on the tools more by the shop's factor.
  const ofSet = station.setUp * (lineSetUp === undefined ? shop.rates.get("firstJobFactor") - 1 : 1);
  const each = new Map(bent.map((plan) => [plan, brakeEach(plan, shop, work)]));
  const run = (plan: LinePlan) => runTime(plan.blanks, each.get(plan)!);
  const bySet = new Map<string, number>();
  for (const plan of bent) bySet.set(setKey(plan.tools!), (bySet.get(setKey(plan.tools!)) ?? 0) + run(plan));
  return new Map(
    bent.map((plan) => {
      const share = run(plan) / bySet.get(setKey(plan.tools!))!;
      const setUp = step(
        work,
        "S brake",
        `set-up of ${plan.line.part}, its share of the tools included`,
        Math.ceil(own + ofSet * share),
        "s",
        "tools once a set, shared by brake minutes (common practice)",
      );
      const { people, how } = handlingOf(plan, shop);
      const long = !atMost(longestBend(plan), shop.rates.limit(TWO_PEOPLE_FROM_IN));
      return [
        plan,
        stationWork({
          station,
          setUp,
          each: each.get(plan)!,
          pieces: plan.blanks,
          people: long ? Math.max(2, people) : people,
          note: long && people < 2 ? "two people, long bend" : how,
        }),
      ];
    }),
  );
}

const longestBend = ({ line }: LinePlan): number => Math.max(...bentStrips(line).map(({ bendLength }) => bendLength));

/** Seconds of one piece at the brake. */
function brakeEach(plan: LinePlan, shop: WorkShop, work?: Working): Seconds {
  const { strips, tools } = plan;
  const { brake, die } = tools!;
  const motion = complete<BrakeMotion>(brake.motion, MOTION, "brakes", brake.name);
  const handling = handlingOf(plan, shop, work);
  return seconds(
    strips.reduce((sum, strip) => {
      const hits = hitsOf(strip);
      const angles = hits.map(({ bend }) => degrees(Math.abs(strip.part.bends[bend - 1]!.angle)));
      const at = hits.map(({ stop }) => stop);
      return sum + brakeTime(die.opening, angles, at, motion, handling.time, work);
    }, 0),
  );
}
