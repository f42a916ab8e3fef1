/** What one line has to do at each station, by route: set-up, time of a piece, whole seconds of the run, people. */
import { bendStops } from "../../calc/bend/order/stops.ts";
import { jetFeed } from "../../calc/jet/feed.ts";
import { type BrakeMotion, brakeTime } from "../../calc/time/brake-time.ts";
import { type Handling, type HandlingRules, handlePiece } from "../../calc/time/handling.ts";
import { jetTime } from "../../calc/time/jet-time.ts";
import { runTime, type Seconds, seconds } from "../../calc/time/seconds.ts";
import { brakeSetUp } from "../../calc/time/set-up.ts";
import { type ShearPace, shearTime } from "../../calc/time/shear-time.ts";
import { stationTime } from "../../calc/time/station-time.ts";
import { usualOrder } from "../../calc/time/usual-order.ts";
import { degrees, type MillimetresPerMinute, mm } from "../../units/quantity.ts";
import type { Working } from "../../units/working.ts";
import type { BillLine, RouteName, Strip } from "../tables/bill.ts";
import { type MachineStation, type Station, stationNamed } from "../tables/stations.ts";
import { type Blank, bentPart, blankOf, inside } from "./blank.ts";
import { complete, MOTION, PACE } from "./complete.ts";
import { measuresOf, unitsOf } from "./measures.ts";
import { type Possible, possibleRoutes } from "./routes.ts";
import { blanksFor, handlingRules, type Shop } from "./shop.ts";
import { type Chosen, chooseTools, toolsKey } from "./tools.ts";

export interface StationWork {
  readonly station: Station;
  readonly setUp: Seconds;
  /** One piece. */
  readonly each: Seconds;
  readonly pieces: number;
  /** All pieces, whole seconds. */
  readonly run: Seconds;
  readonly people: number;
  readonly note: string;
}

/** Work that a vendor does: so many units of the station's basis on each piece. */
export interface OutsideWork {
  readonly station: Station;
  readonly units: number;
}

/** A line with everything that does not depend on its route. */
export interface PlannedLine {
  readonly line: BillLine;
  readonly chosen: Chosen | undefined;
  readonly blank: Blank;
  readonly blanks: number;
  readonly possible: Possible;
  readonly handling: Handling;
}

/** Plans lines one after the other; remembers which tools have been on the brake before. */
export class Planner {
  readonly #rules: HandlingRules;
  readonly #toolsSeen = new Map<string, number>();

  constructor(
    readonly shop: Shop,
    private readonly work?: Working,
  ) {
    this.#rules = handlingRules(shop.rates);
  }

  plan(line: BillLine): PlannedLine {
    const chosen = chooseTools(line, this.shop, this.shop.system);
    const blank = blankOf(line, chosen, this.shop.system, this.work);
    return {
      line,
      chosen,
      blank,
      blanks: blanksFor(line.quantity, this.shop.rates),
      possible: possibleRoutes(line, blank, this.shop),
      handling: handlePiece(blank.weight, blank.longest, this.#rules, this.work),
    };
  }

  /** True for the first line that comes to the brake with its tools; a line refused before that does not count. */
  #isFirstOnTools(line: BillLine, chosen: Chosen): boolean {
    const key = toolsKey(chosen);
    if (!this.#toolsSeen.has(key)) this.#toolsSeen.set(key, line.row);
    return this.#toolsSeen.get(key) === line.row;
  }

  /** The station that cuts by this route. */
  cutting(planned: PlannedLine, route: RouteName): StationWork {
    const each = route === "shear" ? this.#shearTime(planned) : this.#jetTime(planned);
    const station = this.#machine(route === "shear" ? "Shear" : "Waterjet");
    return this.#at(planned, station, each, station.setUp, planned.handling.how);
  }

  /** undefined for a flat part. */
  bending(planned: PlannedLine): StationWork | undefined {
    const { line, chosen, blank, handling } = planned;
    if (!chosen || blank.radius === undefined) return undefined;
    const { brake, die } = chosen.setup;
    const motion = complete<BrakeMotion>((brake as Shop["brakes"][number]).motion, MOTION, "brake", brake.name);
    const strips = [line.main, line.cross].filter((strip): strip is Strip => (strip?.angles.length ?? 0) > 0);
    const each = strips.reduce((sum, strip) => {
      const stops = bendStops(bentPart(line, strip, blank.radius!), usualOrder(strip.angles.length));
      const angles = strip.angles.map((angle) => degrees(Math.abs(angle)));
      return (
        sum +
        brakeTime(
          die.opening,
          angles,
          stops.map(({ stop }) => stop),
          motion,
          handling.time,
          this.work,
        )
      );
    }, 0);
    const station = this.#machine("Brake");
    const first = this.#isFirstOnTools(line, chosen);
    const setUp = brakeSetUp(station.setUp, first, this.shop.rates.get("firstJobFactor"), this.work);
    return this.#at(
      planned,
      station,
      seconds(each),
      setUp,
      first ? `${handling.how}; first job on its tools` : handling.how,
    );
  }

  /** Holes and notches that the route leaves to a bench, then the operations of the bill. In-house only. */
  benches(planned: PlannedLine, route: RouteName): StationWork[] {
    const { line, blank } = planned;
    const piece = measuresOf(line, blank);
    const made = (["hole", "notch"] as const).flatMap((basis) => {
      const needed = route === "shear" && (basis === "hole" ? line.holes : line.notches) > 0;
      return needed
        ? [{ station: this.shop.stations.find((station) => station.basis === basis)!, amount: undefined }]
        : [];
    });
    const asked = this.#operations(line).filter(({ station }) => station.each !== undefined);
    return [...made, ...asked].map(({ station, amount }) => {
      const units = unitsOf(line, station, piece, amount);
      const each = stationTime(station.name, units, station.each ?? seconds(0), this.work);
      return this.#at(planned, station, each, station.setUp, "");
    });
  }

  /** Operations that only a vendor does. */
  outside({ line, blank }: PlannedLine): OutsideWork[] {
    const piece = measuresOf(line, blank);
    return this.#operations(line)
      .filter(({ station }) => station.each === undefined)
      .map(({ station, amount }) => ({ station, units: unitsOf(line, station, piece, amount) }));
  }

  /** Everything done in the shop by this route, in the order it is done. */
  all(planned: PlannedLine, route: RouteName): StationWork[] {
    const before = [this.cutting(planned, route), ...this.benches(planned, route)];
    const bending = this.bending(planned);
    return bending ? [...before, bending] : before;
  }

  #operations = (line: BillLine) =>
    line.operations.map(({ station, amount }) => ({
      station: stationNamed(station, this.shop.stations, `bill row ${line.row} column "Operations"`),
      amount,
    }));

  #machine = (name: MachineStation): Station => stationNamed(name, this.shop.stations);

  #at(planned: PlannedLine, station: Station, each: Seconds, setUp: Seconds, note: string): StationWork {
    const { blanks: pieces, handling } = planned;
    return {
      station,
      setUp: seconds(Math.ceil(setUp)),
      each,
      pieces,
      run: runTime(pieces, each),
      people: handling.people,
      note,
    };
  }

  #shearTime({ handling }: PlannedLine): Seconds {
    const shear = this.shop.shears[0]!;
    return shearTime(complete<ShearPace>(shear.pace, PACE, "shear", shear.name), handling.time, this.work);
  }

  /**
   * The outline is taken at its outside sizes, before the bends take their deduction: leads and corners cost about what
   * that leaves out, and a thicker sheet, whose flat is shorter, never seems to be cut sooner.
   */
  #jetTime({ line, blank, handling }: PlannedLine): Seconds {
    const jet = this.shop.waterjets[0]!;
    const machinability = line.material.machinability!.value;
    const feed = jetFeed({ ...jet.cut, machinability, thickness: line.thickness }, this.work) * (jet.speedFactor ?? 1);
    const path = mm(blank.outsideOutline + inside(line));
    const cut = jetTime(path, blank.pierces, feed as MillimetresPerMinute, jet.highestFeed, jet.pierceTime, this.work);
    return seconds(cut + handling.time);
  }
}
