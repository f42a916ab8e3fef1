/** What is found in the shop's tables, by what name, and how it is said that something is not there. */
import { describe, expect, it } from "vitest";
import { findDie, findMachine, findPunch } from "../../../src/bill/nouns/find-tool.ts";
import { bentStrips } from "../../../src/bill/nouns/line.ts";
import { complete, PACE } from "../../../src/bill/nouns/machines.ts";
import { asksFor, operationsOf, workOf } from "../../../src/bill/nouns/operations.ts";
import { handlingRules, onePersonLimit, RATE_NAMES, Rates, type RateWords } from "../../../src/bill/nouns/rates.ts";
import { emptyShop, hasTable } from "../../../src/bill/nouns/shop.ts";
import { findStation, priceEachOf, stationNamed } from "../../../src/bill/nouns/station.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import { material } from "../../calc/bend/check/set-up.ts";
import { bracket, lineOf, shopOf } from "../shop.ts";

const { dies, punches, brakes, stations } = shopOf();
const message = (asked: () => unknown): string => {
  try {
    asked();
  } catch (error) {
    return (error as Error).message;
  }
  return "answered";
};

describe("a die", () => {
  it("is found by its name in whatever letters, or by its opening in the units that plain numbers mean", () => {
    expect(findDie("v 2", dies, "in").name).toBe("V 2");
    expect(findDie(2, dies, "in").name).toBe("V 2");
    expect(findDie("2", dies, "in").name).toBe("V 2");
    expect(findDie(50.8, dies, "mm").name).toBe("V 2");
    expect(findDie("50.8 mm", dies, "in").name).toBe("V 2");
  });
  it("of an opening a hundredth of a millimeter off is another one", () => {
    const one = [{ ...dies[0]!, name: "it", opening: mm(20) }];
    expect(findDie(20.009, one, "mm").name).toBe("it");
    expect(findDie(19.991, one, "mm").name).toBe("it");
    expect(message(() => findDie(20.011, one, "mm"))).toMatch(
      /^die must be a die in the table; got 20.011; nearest is "it"/,
    );
    expect(message(() => findDie(19.989, one, "mm"))).toMatch(/^die must be a die in the table/);
  });
  it("is asked for by name where two have the opening, and the name is enough", () => {
    const two = ["left", "right"].map((name) => ({ ...dies[0]!, name, opening: mm(20) }));
    expect(message(() => findDie(20, two, "mm"))).toMatch(
      /^die must be named where two dies have the same opening; got 20; "left" or "right"$/,
    );
    expect(findDie("right", two, "mm").name).toBe("right");
    // One of three bears the opening as its name.
    expect(findDie("20", [...two, { ...dies[0]!, name: "20", opening: mm(20) }], "mm").name).toBe("20");
    const three = [...two, { ...two[0]!, name: "third" }];
    expect(message(() => findDie(20, three, "mm"))).not.toContain("third");
  });
  it("that is not there is refused with the nearest, or with an empty table", () => {
    expect(message(() => findDie("V 22", dies, "in"))).toMatch(/got "V 22"; nearest is "V 2/);
    expect(message(() => findDie("V 2", [], "in"))).toBe(
      'die must be a die in the table; got "V 2"; the table is empty',
    );
  });
});

describe("a punch or a machine", () => {
  it("is found by its name, in whatever letters", () => {
    expect(findPunch("plain", punches)?.name).toBe("Plain");
    expect(findMachine("brake 2", brakes, "brake").name).toBe("Brake 2");
  });
  it("is none where none is asked for, and refused where it is not there", () => {
    expect(findPunch(undefined, punches)).toBeUndefined();
    expect(message(() => findPunch("Plane", punches))).toBe(
      'punch must be a punch in the table; got "Plane"; nearest is "Plain"',
    );
    expect(message(() => findMachine("Brake 9", brakes, "brake"))).toMatch(
      /^brake must be a brake in the table; got "Brake 9"/,
    );
  });
  it("that lacks a figure is asked for it by its column, once the figure is needed", () => {
    const pace = { strokesPerMinute: 30, cutsPerBlank: 3 };
    expect(complete(pace, PACE, "shears", "Shear 1")).toBe(pace);
    expect(message(() => complete({ strokesPerMinute: 30 }, PACE, "shears", "Shear 1"))).toBe(
      'shears must be a table with a column "Cuts per blank" and a figure for Shear 1; got none',
    );
  });
});

describe("a station", () => {
  it("is found in whatever letters, and refused with the nearest where it is not there", () => {
    expect(findStation("DRILL", stations)?.name).toBe("Drill");
    expect(findStation("Paint", stations)).toBeUndefined();
    expect(stationNamed("drill", stations).name).toBe("Drill");
    expect(message(() => stationNamed("Dril", stations))).toBe(
      'stations must be a station in the table; got "Dril"; nearest is "Drill"',
    );
  });
  it("of a vendor has a price each, or is asked for it", () => {
    expect(priceEachOf(stationNamed("Coating", stations))).toBe(1.35);
    expect(message(() => priceEachOf(stationNamed("Drill", stations)))).toBe(
      'stations must be a table with a "Price each" for Drill; got none',
    );
  });
  it.each([
    ["Shear", "cut"],
    ["waterjet", "cut"],
    ["Hand deburr", "deburr"],
    ["Tumbling", "deburr"],
    ["Notcher", "notch"],
    ["Brake", "bend"],
    ["Tap", "drill"],
    ["Drill", "drill"],
    ["Spot weld", "weld"],
    ["Packing", "pack"],
    ["Shearing bench", undefined],
    ["Brakes", undefined],
    ["Coating", undefined],
  ])("named %s does the work %s", (name, work) => expect(workOf(name)).toBe(work));
  it("is asked for by a line that names it among its operations, with its amount", () => {
    const line = lineOf(bracket({ Operations: "Weld 2; Pack" }));
    expect(asksFor(line, "weld")).toBe(true);
    expect(asksFor(line, "deburr")).toBe(false);
    expect(operationsOf(line, stations).map(({ station, amount }) => [station.name, amount])).toEqual([
      ["Weld", 2],
      ["Pack", undefined],
    ]);
    const lost = { ...line, operations: [{ station: "Polish", amount: undefined }] };
    expect(message(() => operationsOf(lost, stations))).toMatch(
      /^line 1 column "Operations" must be a station in the table; got "Polish"/,
    );
  });
});

describe("the strips of a part", () => {
  const strip = (...angles: number[]) => ({
    flanges: [...angles, 0].map(() => mm(50)),
    angles: angles.map((angle) => degrees(angle)),
    bendLength: mm(100),
  });
  it("that have bends are none of a plate, one of a bracket, two of a tray", () => {
    const [flat, one, other] = [strip(), strip(90), strip(90, 90)];
    expect(bentStrips({ main: flat, cross: undefined })).toEqual([]);
    expect(bentStrips({ main: one, cross: undefined })).toEqual([one]);
    expect(bentStrips({ main: one, cross: other })).toEqual([one, other]);
    expect(bentStrips({ main: flat, cross: other })).toEqual([other]);
  });
});

describe("the rates of a shop", () => {
  const of = (values: Partial<Record<keyof typeof RATE_NAMES, number>>, words: RateWords = {}) =>
    new Rates(
      "rates",
      new Map(Object.entries(values).map(([key, value]) => [RATE_NAMES[key as "rush"], value])),
      words,
    );
  const missing = (row: string) => `rates must be a table with a row "${row}"; got none`;
  it("are found by their row, asked for where they are needed, and have no default but the aim of a cut plan", () => {
    const rates = of({ rush: 0.25 });
    expect([rates.find("rush"), rates.get("rush"), rates.find("crate")]).toEqual([0.25, 0.25, undefined]);
    expect(message(() => rates.get("crate"))).toBe(missing("Crate"));
    expect(rates.cutFor).toBe("money");
    expect(of({}, { cutFor: "least time" }).cutFor).toBe("least time");
    expect([of({}).liftCoupling, of({}, { liftCoupling: "fair" }).liftCoupling]).toEqual([undefined, "fair"]);
  });
  it("are listed by name, figures before words", () => {
    const rates = of({ truck: 9, crate: 2, tax: 0.1 }, { liftCoupling: "good", cutFor: "money" });
    expect(rates.entries()).toEqual([
      ["Crate", 2],
      ["Tax", 0.1],
      ["Truck", 9],
      ["Cut plan", "money"],
      ["Lift coupling", "good"],
    ]);
  });
  it("say how blanks are handled: nothing by weight or size that is not stated, and a hoist where there is one", () => {
    const bare = handlingRules(of({ handlingPerPiece: 6 }));
    expect(bare).toEqual({
      perPiece: 6,
      secondsPerKilogram: 0,
      secondsPerMillimeter: 0,
      onePersonLimit: undefined,
      hoistAbove: undefined,
      hoistTime: 6,
    });
    const all = {
      handlingPerPiece: 6,
      handlingPerMass: 2,
      handlingPerLength: 0.5,
      hoistAbove: 40,
      hoistTime: 90,
      onePersonLimit: 20,
    };
    expect(handlingRules(of(all))).toEqual({
      perPiece: 6,
      secondsPerKilogram: 2,
      secondsPerMillimeter: 0.5,
      onePersonLimit: 20,
      hoistAbove: 40,
      hoistTime: 90,
    });
    expect(message(() => handlingRules(of({ handlingPerPiece: 6, hoistAbove: 40 })))).toBe(missing("Hoist time"));
    expect(message(() => handlingRules(of({})))).toBe(missing("Handling per piece"));
  });
  /** 10 in from the ankles, from 30 in up by 10 in, no twist, once in five minutes, an hour, good handles. */
  const IN = 25.4;
  const BEST = {
    ...{ liftReach: 10 * IN, liftHeight: 30 * IN, liftTravel: 10 * IN, liftTwist: 0 },
    ...{ liftsPerMinute: 0.2, liftHours: 1 },
  };
  const pounds = (changed: Parameters<typeof of>[0]) =>
    onePersonLimit(of({ ...BEST, ...changed }, { liftCoupling: "good" }))! / 0.45359237;
  it("let one person lift 51 lb in the best posture, and less by the factors of the revised equation (NIOSH 94-110)", () => {
    expect(pounds({})).toBeCloseTo(51, 6);
    expect(pounds({ liftTravel: 20 * IN })).toBeCloseTo(51 * (0.82 + 1.8 / 20), 6);
    expect(pounds({ liftTwist: 45 })).toBeCloseTo(51 * (1 - 0.0032 * 45), 6);
    expect(pounds({ liftReach: 20 * IN })).toBeCloseTo((51 * 10) / 20, 6);
    expect(pounds({ liftHeight: 40 * IN })).toBeCloseTo(51 * (1 - 0.0075 * 10), 6);
    expect(pounds({ liftsPerMinute: 1 })).toBeCloseTo(51 * 0.94, 6);
    expect(pounds({ liftHours: 2 })).toBeCloseTo(51 * 0.95, 6);
  });
  it("take the shop's own limit where it is less, and have none where nothing is stated", () => {
    expect(pounds({ onePersonLimit: 15 * 0.45359237 })).toBeCloseTo(15, 9);
    expect(pounds({ onePersonLimit: 60 * 0.45359237 })).toBeCloseTo(51, 6);
    expect(onePersonLimit(of({ onePersonLimit: 20 }))).toBe(20);
    expect(onePersonLimit(of({}))).toBeUndefined();
  });
  it("ask for what the posture lacks, and hold the end of the lift too where it is placed with care", () => {
    expect(message(() => onePersonLimit(of(BEST)))).toBe(
      'rates must be a table with a row "Lift coupling" where "Lift reach" is given; got none',
    );
    const { liftTravel: _, ...noTravel } = BEST;
    expect(message(() => onePersonLimit(of(noTravel, { liftCoupling: "good" })))).toBe(missing("Lift travel"));
    const placed = { ...noTravel, liftEndReach: 20 * IN, liftEndHeight: 40 * IN, liftEndTwist: 0 };
    // Where it is put down: 10/20 for the reach, 1 - 0.0075 x 10 for the height, up by 10 in.
    expect(pounds(placed)).toBeCloseTo(51 * 0.5 * (1 - 0.0075 * 10), 6);
    const { liftEndTwist: __, ...noTwist } = placed;
    expect(message(() => onePersonLimit(of(noTwist, { liftCoupling: "good" })))).toBe(missing("Lift end twist"));
  });
});

describe("a shop of which nothing is known", () => {
  it("has no table, no rate and no job", () => {
    const shop = emptyShop(material("A36"), "in");
    expect(hasTable(shop, "stock")).toBe(false);
    expect(hasTable({ given: ["stock"] }, "stock")).toBe(true);
    for (const [key, value] of Object.entries(shop)) if (Array.isArray(value)) expect(value, key).toEqual([]);
    expect(shop.job.due).toBeUndefined();
    expect([shop.job.areas, shop.job.areaDues, shop.job.isRush]).toEqual([[], [], false]);
  });
});
