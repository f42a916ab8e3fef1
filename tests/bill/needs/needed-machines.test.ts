/** The machines a bill asks for, worked by hand, and what each machine of the shop can do of it. */
import { describe, expect, it } from "vitest";
import { isPlanned } from "../../../src/bill/lines/plan-line.ts";
import { neededMachines } from "../../../src/bill/needs/needed-machines.ts";
import type { Shop } from "../../../src/bill/nouns/shop.ts";
import type { Step } from "../../../src/units/working.ts";
import type { Line } from "../../cells/example/tables.ts";
import { bracket, inches, planned, shopOf } from "../shop.ts";

const of = (lines: readonly Line[], shop: Shop = shopOf()) => {
  const plans = planned(lines, shop).lines.flatMap(({ plan }) => (plan && isPlanned(plan) ? [plan] : []));
  const { sizes, shares } = neededMachines(plans, shop);
  return {
    size: (question: string) => sizes.find((each) => each.question === question)!,
    share: (machine: string) => shares.find(({ question }) => question.startsWith(`Lines that ${machine} `))!,
  };
};
const flat = bracket({ Part: "flat", Flanges: "40", Width: 50, "Bend angles": null });
const long = bracket({ Part: "long", Width: 60, Quantity: 2 });

/** An eighth of an inch of soft aluminum: no brake of the shop wants for force. */
const thin = (changed: Line) =>
  bracket({ Part: "thin", Material: "5052-H32", Thickness: "1/8", Holes: 0, Die: "V 1", Punch: "Plain", ...changed });
const tray = (along: string, across: string) =>
  thin({ Flanges: along, "Cross flanges": across, "Cross angles": 90, Width: null });

describe("the smallest machines of a bill", () => {
  it("are what the line asks for that needs most, and say which, of how many that are bent or cut", () => {
    const { size } = of([bracket(), long, flat]);
    const bed = size("Shortest brake bed");
    expect([inches(bed.most!.value), bed.most!.part, bed.of]).toEqual([expect.closeTo(60, 9), "long", 2]);
    const force = size("Smallest brake force, expected");
    expect([force.most!.part, force.of]).toEqual(["long", 2]);
    // Lange's formula grows with the bend: 60 in of it take 15 times what 4 in take.
    expect(force.most!.value / of([bracket()]).size("Smallest brake force, expected").most!.value).toBeCloseTo(15, 6);
    expect(size("Smallest brake force, worst case").most!.value).toBeGreaterThan(force.most!.value);
    const shear = size("Shortest shear");
    expect([inches(shear.most!.value), shear.most!.part, shear.of]).toEqual([expect.closeTo(60, 6), "long", 3]);
    expect(inches(of([flat]).size("Shortest shear").most!.value)).toBeCloseTo(50, 6);
  });
  it("are named by the first of lines that ask for the same", () => {
    const { size } = of([bracket(), bracket({ Part: "HB2" })]);
    expect(size("Shortest brake bed").most!.part).toBe("HB1");
  });
  it("have the longest bend of both directions of a tray as the bed, whichever direction that is", () => {
    for (const [along, across] of [
      ["2; 12; 2", "2; 60; 2"],
      ["2; 60; 2", "2; 12; 2"],
    ])
      expect(inches(of([tray(along!, across!)]).size("Shortest brake bed").most!.value)).toBeCloseTo(60, 6);
  });
  it("have as shear rating the thickness itself in the steel it is stated in, and no less in a softer metal", () => {
    const rating = (...lines: Line[]) => inches(of(lines).size("Least shear rating, mild steel").most!.value);
    expect(rating(bracket())).toBeCloseTo(0.25, 9);
    expect(rating(thin({}))).toBeCloseTo(0.125, 9);
  });
  it("have in a harder one as much more as it is stronger: 58 ksi at least of A36 (ASTM A36), 107 at most of 304", () => {
    const { most } = of([bracket(), thin({ Material: "304", Thickness: "1/4" })]).size(
      "Least shear rating, mild steel",
    );
    expect(most!.part).toBe("thin");
    expect(inches(most!.value)).toBeCloseTo((0.25 * 107) / 58, 6);
  });
  it("ask nothing of a shear for what is only cut by the jet", () => {
    const [first, second] = planned([bracket(), { ...flat, Part: "panel" }]).lines.map(({ plan }) => {
      if (!plan || !isPlanned(plan)) throw new Error("not planned");
      return plan;
    });
    const panel = {
      ...second!,
      line: { ...second!.line, material: { ...second!.line.material, cutOnly: true as const } },
    };
    const { sizes } = neededMachines([first!, panel], shopOf());
    const shear = sizes.find(({ question }) => question === "Shortest shear")!;
    expect([shear.of, shear.most!.part]).toEqual([1, "HB1"]);
  });
  it("show in the working the force they are named by, and none where nothing is bent", () => {
    const force = (line: Line) => {
      const work: Step[] = [];
      const plans = planned([line]).lines.flatMap(({ plan }) => (plan && isPlanned(plan) ? [plan] : []));
      const { sizes } = neededMachines(plans, shopOf(), work);
      return { shown: work.map(({ value }) => value), most: sizes[0]!.most?.value };
    };
    const { shown, most } = force(bracket());
    expect(shown).toEqual([most]);
    expect(force(flat).shown).toEqual([]);
  });
  it("are none where nothing is bent", () => {
    const { size } = of([flat]);
    expect([size("Shortest brake bed").most, size("Shortest brake bed").of]).toEqual([undefined, 0]);
    expect(size("Shortest shear").most).toBeDefined();
  });
});

describe("a machine of the shop", () => {
  it("can do so many lines of a bill, and is said which is the first it cannot", () => {
    const wide = bracket({ Part: "wide", Width: 130 }); // beyond 10 ft, the longest of the invented shop
    const { share } = of([bracket(), wide, { ...wide, Part: "wide too" }, flat]);
    for (const brake of ["Brake 1", "Brake 2"]) {
      const { of: all, able, stuck } = share(brake);
      expect([all, able, stuck]).toEqual([3, 1, "wide"]);
    }
  });
  it("is not blamed for a die that is too weak or a flange that falls in: only for itself", () => {
    const { share } = of([
      bracket({ Flanges: "0.7; 3", Die: "V 2", Punch: "Plain" }),
      bracket({ Part: "weak", Die: "V 1", Punch: "Plain" }),
    ]);
    expect(share("Brake 1")).toMatchObject({ of: 2, able: 2, stuck: undefined });
  });
  it("is not blamed for a die shorter than the bend, nor for a bend that is put off its center", () => {
    // 90 in of bend, 80 in of V 2-1/2, 120 in of bed.
    const short = thin({ Part: "short die", Width: 90, Die: "V 2-1/2" });
    const aside = bracket({ Part: "aside", Width: 60, Brake: "Brake 1", "Off center": 40, Die: "V 2", Punch: "Plain" });
    const { lines } = planned([short, aside]);
    expect(lines.map(({ findings }) => findings.find(({ status }) => status === "stop")?.about)).toEqual([
      "room",
      "off center",
    ]);
    expect(of([short, aside]).share("Brake 1")).toMatchObject({ of: 2, able: 2 });
  });
  it("bends what only its plate must be asked about: 45 in between housings of 42, on a bed of 50", () => {
    expect(of([thin({ Width: 45 })]).share("Brake 2")).toMatchObject({ of: 1, able: 1 });
  });
  it("cannot bend a tray of which one direction is too long for it", () => {
    for (const made of [tray("2; 12; 2", "2; 60; 2"), tray("2; 60; 2", "2; 12; 2")]) {
      const { share } = of([made]);
      expect(share("Brake 1")).toMatchObject({ of: 1, able: 1 });
      expect(share("Brake 2")).toMatchObject({ of: 1, able: 0, stuck: "thin" });
    }
  });
  it("cuts what its plate says: 1/2 in of A36 on no shear of the shop", () => {
    const shop = shopOf();
    const { share } = of([bracket(), bracket({ Part: "half", Thickness: "1/2", Width: 8 })]);
    const able = shop.shears.map(({ name }) => share(name));
    expect(able.every(({ of: all, stuck }) => all === 2 && stuck !== undefined)).toBe(true);
    expect(able.some((each) => each.able === 1 && each.stuck === "half")).toBe(true);
  });
});
