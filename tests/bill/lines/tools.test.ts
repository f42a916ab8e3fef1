/**
 * The sets a part can be bent with: best status first, usual tools, the smallest brake; the order of a table does not
 * matter.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bareOf, bendLines, setKey, toolFindings, toolOptions } from "../../../src/bill/lines/tools.ts";
import { type BillLine, bentStrips } from "../../../src/bill/nouns/line.ts";
import type { Shop } from "../../../src/bill/nouns/shop.ts";
import { rankOf, statusOf } from "../../../src/calc/finding.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import { refusalOr } from "../../../src/units/remember.ts";
import { bracket, lineOf, shopOf } from "../shop.ts";

const SHOP = shopOf();
const options = (line: BillLine, shop: Shop = SHOP) => toolOptions(line, { ...shop, own: shop.rates.own }).map(setKey);

/** The worst status and how many findings have it, of every set there is. */
function tried(line: BillLine, shop: Shop) {
  const score = (findings: ReturnType<typeof toolFindings>) => {
    const status = statusOf(findings);
    const rank = status === "clear" ? 0 : rankOf(status);
    return rank * 100 + (rank === 0 ? 0 : findings.filter((finding) => finding.status === status).length);
  };
  return shop.brakes.flatMap((brake) =>
    shop.dies.flatMap((die) =>
      shop.punches.map((punch) => {
        const tools = { brake, die, punch };
        return { tools, score: score(toolFindings(line, tools, "in")) };
      }),
    ),
  );
}

const parts = fc.record({
  Material: fc.constantFrom("A36", "304", "5052-H32", "6061-T6"),
  Thickness: fc.constantFrom(0.06, 0.125, 0.1875, 0.25, 0.375),
  Width: fc.constantFrom(4, 24, 46, 60, 110, 130),
  Flanges: fc.constantFrom("2; 3", "0.5; 3", "1; 4; 1"),
  "Bend angles": fc.constantFrom(90, 45, 120),
  Holes: fc.constant(0),
  "Cross flanges": fc.constantFrom(null, null, "0.5; 4; 0.5"),
  "Cross angles": fc.constant(90),
});

describe("the sets of a part", () => {
  it("are those that come out best of all tried one by one, on the brake of the lowest rating, of stopped ones the highest", () => {
    fc.assert(
      fc.property(parts, (part) => {
        const line = lineOf(bracket(part));
        const all = tried(line, SHOP);
        const best = Math.min(...all.map(({ score }) => score));
        const brakes = all.filter(({ score }) => score === best).map(({ tools }) => tools.brake);
        const ratings = brakes.map(({ ratedForce }) => ratedForce);
        // A score of 200 and more is that of a stop: the largest brake says by how little it fails.
        const rating = best >= 200 ? Math.max(...ratings) : Math.min(...ratings);
        const equal = all.filter(({ tools, score }) => score === best && tools.brake.ratedForce === rating);
        // A nose wider than the round that the opening gives is taken only where nothing else is as good.
        const { airRadiusLow, airRadiusHigh } = line.material;
        const round = (airRadiusLow!.value + airRadiusHigh!.value) / 2;
        const free = equal.filter(({ tools: { die, punch } }) => (punch?.nose ?? 0) <= round * die.opening);
        const wanted = free.length > 0 ? free : equal;
        expect(options(line).sort()).toEqual(wanted.map(({ tools }) => setKey(tools)).sort());
      }),
      { numRuns: 40 },
    );
  });

  it("the preferred one comes first: nearest to 8 thicknesses", () => {
    expect(options(lineOf(bracket()))[0]).toMatch(/^Brake 2 \| V 2 \|/);
    expect(options(lineOf(bracket({ Thickness: 0.125, Holes: 0 })))[0]).toMatch(/^Brake 2 \| V 1 \|/);
  });

  it("the order of no table changes anything", () => {
    const turned: Shop = {
      ...SHOP,
      brakes: [...SHOP.brakes].reverse(),
      dies: [...SHOP.dies].reverse(),
      punches: [...SHOP.punches].reverse(),
    };
    fc.assert(
      fc.property(parts, (part) => {
        const line = lineOf(bracket(part));
        expect(options(line, turned)).toEqual(options(line));
      }),
      { numRuns: 40 },
    );
  });

  it("named tools are kept, a die also by its opening; an unknown name is refused with the nearest", () => {
    const named = options(lineOf(bracket({ Die: "2.5", Punch: "round 1/4", Brake: "Brake 1" })));
    expect(named).toEqual(["Brake 1 | V 2-1/2 | Round 1/4"]);
    const wrong = refusalOr(() => options(lineOf(bracket({ Die: "V 22" }))));
    expect(wrong).toBeInstanceOf(Refusal);
    expect((wrong as Refusal).message).toMatch(/^die must be a die in the table; got "V 22"; nearest is "V 2"$/);
    const two = refusalOr(() => options(lineOf(bracket({ Die: "1" }))));
    expect((two as Refusal).message).toContain('"V 1" or "V 1 wide"');
  });

  it("a flat part, or a shop without tools, has none; one without punches bends with a punch not known", () => {
    expect(options(lineOf(bracket({ Flanges: "5", "Bend angles": null })))).toEqual([]);
    expect(options(lineOf(bracket()), { ...SHOP, dies: [] })).toEqual([]);
    const keys = options(lineOf(bracket()), { ...SHOP, punches: [] });
    expect(keys.length).toBeGreaterThan(0);
    expect(keys.every((key) => key.endsWith("| "))).toBe(true);
  });
});

describe("what decides about bends", () => {
  it("the grain of a tray's other direction lies the other way; the hole is beside the main one", () => {
    const tray = { Width: null, "Cross flanges": "2; 5; 2", "Cross angles": 90, Grain: "across", "Hole distance": 1 };
    const [main, cross] = bendLines(lineOf(bracket(tray)));
    expect([main!.grain, cross!.grain]).toEqual(["across", "along"]);
    expect([main!.holeDistance === undefined, cross!.holeDistance]).toEqual([false, undefined]);
    expect(bentStrips(lineOf(bracket({ ...tray, "Cross angles": null, "Cross flanges": "5" })))).toHaveLength(1);
  });
  it("is not what a part is called, how many are wanted, or where it goes", () => {
    const one = bareOf(lineOf(bracket()));
    const other = bracket({ Part: "X", Quantity: 7, Area: "Deck", Finish: "black", Holes: 0, Route: "shear" });
    expect(bareOf(lineOf(other))).toEqual(one);
    expect(bareOf(lineOf(bracket({ Width: 5 })))).not.toEqual(one);
  });
});
