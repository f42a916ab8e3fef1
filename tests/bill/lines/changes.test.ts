/** What a change types into a line, and which changes are offered for which line, in which order. */
import { describe, expect, it } from "vitest";
import { type Change, canMend, changes, withChange } from "../../../src/bill/lines/changes.ts";
import type { Finding, Subject } from "../../../src/calc/finding.ts";
import { mm } from "../../../src/units/quantity.ts";
import { type Line, SHOP, withCell, without } from "../../cells/example/tables.ts";
import { bracket, inches, lineOf, planned, shopOf } from "../shop.ts";

const line = lineOf(bracket({ "Hole distance": 0.5 }));
const IN = 25.4;

describe("a change as it is typed", () => {
  it("changes what it names and nothing else", () => {
    const steel = { ...line.material, name: "A572-50" } as typeof line.material;
    const typed: readonly (readonly [Change, Partial<typeof line>])[] = [
      [
        { kind: "tools", die: "V 2", brake: "Brake 2" },
        { die: "V 2", brake: "Brake 2" },
      ],
      [{ kind: "grain", grain: "along" }, { grain: "along" }],
      [
        { kind: "deburr", station: "Deburr" },
        { operations: [...line.operations, { station: "Deburr", amount: undefined }] },
      ],
      [
        { kind: "coat", station: "Coating" },
        { operations: [...line.operations, { station: "Coating", amount: undefined }] },
      ],
      [{ kind: "hole after" }, { holeDistance: undefined }],
      [{ kind: "waterjet" }, { pin: "waterjet" }],
      [{ kind: "material", material: steel }, { material: steel }],
      [
        { kind: "thickness", thickness: mm(5), isStocked: true },
        { nominal: mm(5), thickness: mm(5) },
      ],
      [
        { kind: "pieces", count: 3, width: mm(40) },
        { quantity: 60, width: mm(40), main: { ...line.main, bendLength: mm(40) } },
      ],
    ];
    for (const [change, changed] of typed)
      expect(withChange(line, change), change.kind).toEqual({ ...line, ...changed });
  });
  it("that trims afterwards makes short flanges as long as they must be, and a flat plate none", () => {
    const trim: Change = { kind: "trim after", flange: mm(60) };
    expect(withChange(line, trim).main.flanges).toEqual([60, line.main.flanges[1]]);
    expect(withChange(line, trim).main.bendLength).toBe(line.main.bendLength);
    const flat = lineOf(bracket({ Flanges: "2", "Bend angles": null }));
    expect(withChange(flat, trim)).toEqual(flat);
  });
  it("that trims a tray keeps its bend lines as long as the other direction's base, unless the bill gave their length", () => {
    const tray = lineOf(
      bracket({ Flanges: "0.5; 3; 0.5", "Cross flanges": "0.5; 5; 0.5", "Cross angles": 90, Width: null, Holes: 0 }),
    );
    const { main, cross } = withChange(tray, { kind: "trim after", flange: mm(4 * IN) });
    expect(main.flanges.map(inches)).toEqual([4, 4, 4].map((size) => expect.closeTo(size, 9)));
    expect(cross!.flanges.map(inches)).toEqual([4, 5, 4].map((size) => expect.closeTo(size, 9)));
    // The cross bends run along the main base, which grew from 3 to 4; the main bends along the cross base of 5.
    expect([inches(main.bendLength), inches(cross!.bendLength)]).toEqual([expect.closeTo(5, 9), expect.closeTo(4, 9)]);
    const given = { ...tray, cross: { ...tray.cross!, bendLength: mm(2 * IN) } };
    expect(inches(withChange(given, { kind: "trim after", flange: mm(4 * IN) }).cross!.bendLength)).toBeCloseTo(2, 9);
  });
});

describe("what a change may mend", () => {
  const can = (about: Subject, change?: Change) => canMend({ about, status: "stop", kind: "x" } as Finding, change);
  it.each<[Change, Subject[], Subject[]]>([
    [{ kind: "tools" }, ["die", "brake force", "flange", "swing"], ["stock", "lifting", "edges"]],
    [{ kind: "grain", grain: "along" }, ["radius", "cutting", "stock"], ["die", "flange"]],
    [{ kind: "deburr", station: "" }, ["edges"], ["radius"]],
    [{ kind: "coat", station: "" }, ["finish"], ["edges"]],
    [{ kind: "hole after" }, ["hole"], ["flange"]],
    [{ kind: "waterjet" }, ["cutting", "hold-down", "tolerance"], ["die", "lifting"]],
    [{ kind: "trim after", flange: mm(1) }, ["flange", "bend order"], ["hole"]],
    [{ kind: "pieces", count: 2, width: mm(1) }, ["lifting", "room", "stock"], ["die", "radius"]],
    [{ kind: "thickness", thickness: mm(1), isStocked: true }, ["die", "stock", "lifting"], ["hole", "edges"]],
  ])("%j", (change, mends, leaves) => {
    expect([mends.map((about) => can(about, change)), leaves.map((about) => can(about, change))]).toEqual([
      mends.map(() => true),
      leaves.map(() => false),
    ]);
  });
  it("of any change is neither what was typed wrong nor what hands must do", () => {
    expect((["die", "finish", "hole"] as const).map((about) => can(about))).toEqual([true, true, true]);
    expect((["input", "hands", "galvanized"] as const).map((about) => can(about))).toEqual([false, false, false]);
  });
});

describe("the changes of a line", () => {
  const offered = (of: Line, shop = shopOf()): Change[] => {
    const [answer] = planned([of], shop).lines;
    return [...changes(lineOf(of), answer!.plan?.tools, shop)];
  };
  const kinds = (of: Line, shop = shopOf()) =>
    offered(of, shop)
      .map(({ kind }) => kind)
      .filter((kind) => kind !== "tools");
  it("come with the least first: tools, grain, work of the shop, the other machine, then what is another part", () => {
    const cracking = bracket({ Material: "6061-T6", Thickness: "1/8", "Hole distance": 0.2, Finish: "Black" });
    expect(kinds(cracking)).toEqual(
      ["grain", "deburr", "hole after", "coat", "waterjet", "trim after"].concat(
        offered(cracking).flatMap(({ kind }) => (kind === "thickness" ? [kind] : [])),
      ),
    );
  });
  it("leave out what is done already or what the shop lacks", () => {
    const cracking = bracket({ Material: "6061-T6", Thickness: "1/8", Holes: 0, "Hole diameter": null });
    expect(kinds(cracking)).toContain("deburr");
    expect(kinds({ ...cracking, Operations: "Deburr" })).not.toContain("deburr");
    expect(kinds(cracking, shopOf({ stations: without(SHOP.stations, "Deburr") }))).not.toContain("deburr");
    expect(kinds(bracket())).not.toContain("deburr");
    expect(kinds(bracket({ Route: "waterjet" }))).not.toContain("waterjet");
    expect(kinds(bracket(), shopOf({ waterjets: undefined }))).not.toContain("waterjet");
    expect(kinds(bracket())).not.toContain("hole after");
    expect(kinds(bracket({ Finish: "Black" }), shopOf({ stations: without(SHOP.stations, "Coating") }))).not.toContain(
      "coat",
    );
    expect(kinds(bracket({ Flanges: "5", "Bend angles": null, Holes: 0 }))).toEqual(
      expect.not.arrayContaining(["grain", "trim after", "pieces"]),
    );
  });
  it("turn the grain the other way than it lies", () => {
    const grain = (Grain: string | null) => offered(bracket({ Grain })).find(({ kind }) => kind === "grain");
    expect(grain(null)).toMatchObject({ grain: "across" });
    expect(grain("across")).toMatchObject({ grain: "along" });
    expect(grain("along")).toMatchObject({ grain: "across" });
  });
  it("make up to four pieces of one without holes, each rounded up to what a caliper reads", () => {
    const of = (changed: Line) =>
      offered(bracket({ Holes: 0, "Hole diameter": null, Width: 100, ...changed })).filter(
        (change) => change.kind === "pieces",
      );
    expect(of({}).map((change) => [change.count, Number(inches(change.width).toFixed(6))])).toEqual([
      [2, 50],
      [3, 33.334],
      [4, 25],
    ]);
    expect(of({ Holes: 2, "Hole diameter": 0.5 })).toEqual([]);
    expect(of({ Notches: 1, "Notch path": 1 })).toEqual([]);
    expect(of({ Flanges: "5", "Bend angles": null })).toEqual([]);
  });
  it("offer another structural steel of the same thickness only where Stock has that and not the one asked for", () => {
    const steels = (Material: string, Thickness: string | number) =>
      offered(bracket({ Material, Thickness })).flatMap((change) =>
        change.kind === "material" ? [change.material.name] : [],
      );
    expect(steels("A36", "1/4")).toEqual([]);
    expect(steels("A1008 CS", "10 ga")).toEqual(["A1011 CS"]);
    expect(steels("A572-50", "3/16")).toEqual([]);
    expect(steels("304", "3/16")).toEqual([]);
  });
  it("offer the next thicker and the next thinner sheet in Stock, none far off, none where it was measured", () => {
    const thicknesses = (changed: Line, shop = shopOf()) =>
      offered(bracket(changed), shop).flatMap((change) =>
        change.kind === "thickness" ? [[Number(inches(change.thickness).toFixed(4)), change.isStocked]] : [],
      );
    expect(thicknesses({})).toEqual([[0.1875, false]]);
    expect(thicknesses({ "Actual thickness": 0.245 })).toEqual([]);
    // Stock has 3/16 for what is asked in 0.15: it is planned from that.
    expect(thicknesses({ Thickness: 0.15 })[0]).toEqual([0.1875, true]);
    const far = shopOf({ stock: withCell(SHOP.stock, "Plate 3/16", "Thickness", 0.12) });
    expect(thicknesses({}, far)).toEqual([]);
  });
});
