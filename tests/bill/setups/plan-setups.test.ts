/** In which order the brakes are set up: tools once, and as few changed from one set to the next as can be. */
import { describe, expect, it } from "vitest";
import { planSetUps } from "../../../src/bill/setups/plan-setups.ts";
import type { Line } from "../../cells/example/tables.ts";
import { bracket, planned, shopOf } from "../shop.ts";

const setUps = (...lines: Line[]) =>
  planSetUps(planned(lines).quoted).map(({ tools: { brake, die, punch }, lines: of }) => ({
    brake: brake.name,
    tools: `${die.name}, ${punch?.name}`,
    parts: of.map(({ part }) => part),
  }));
const thick = (Part: string, more: Line = {}) => bracket({ Part, Die: "V 2", Punch: "Plain", Holes: 0, ...more });
const thin = (Part: string, more: Line = {}) =>
  bracket({ Part, Material: "5052-H32", Thickness: "1/8", Die: "V 1", Punch: "Plain", Holes: 0, ...more });
const flat = bracket({ Part: "flat", Flanges: "5", "Bend angles": null });

describe("the set-ups of a bill", () => {
  it("are one for each set of tools, with its lines in the order of the bill, and none for what is not bent", () => {
    const found = setUps(thick("c"), flat, thin("b"), thick("a"));
    expect(found.map(({ parts }) => parts).sort()).toEqual([["b"], ["c", "a"]]);
    expect(found.map(({ tools }) => tools).sort()).toEqual(["V 1, Plain", "V 2, Plain"]);
    expect(setUps(flat)).toEqual([]);
  });
  it("are not those of a line that is not quoted", () => {
    expect(setUps(thick("a"), thin("b", { Width: 130 })).map(({ parts }) => parts)).toEqual([["a"]]);
  });
  it("go brake by brake, by name, whatever the order of the bill", () => {
    const lines = [thick("a", { Brake: "Brake 2" }), thin("b", { Brake: "Brake 1" }), thin("c", { Brake: "Brake 2" })];
    for (const of of [lines, [...lines].reverse()]) {
      const found = setUps(...of);
      expect(found.map(({ brake }) => brake)).toEqual(["Brake 1", "Brake 2", "Brake 2"]);
      expect(found[0]!.parts).toEqual(["b"]);
    }
    expect(setUps(...lines).map(({ tools }) => tools)).toEqual(
      setUps(...[...lines].reverse()).map(({ tools }) => tools),
    );
  });
  it("go by the name of the die where they are two of one brake, whatever the order of the bill", () => {
    const lines = [thick("a", { Brake: "Brake 1" }), thin("b", { Brake: "Brake 1" })];
    for (const of of [lines, [...lines].reverse()])
      expect(setUps(...of).map(({ tools }) => tools)).toEqual(["V 1, Plain", "V 2, Plain"]);
  });
  it("change the fewest tools: what shares a punch or a die stands side by side", () => {
    // Of V 2 Plain, V 1 Knife and V 2 Knife the one that shares with both stands between them.
    const lines = [
      thick("a"),
      thin("b", { Punch: "Knife" }),
      thin("c", { Die: "V 2", Punch: "Knife", Flanges: "3; 3" }),
    ];
    const found = setUps(...lines).map(({ parts }) => parts.join());
    expect(found).toHaveLength(3);
    expect(found[1]).toBe("c");
  });
  it("keep the punch where every die is another: the Knife comes first or last of Plain, Knife and Plain", () => {
    const on = { Brake: "Brake 1" };
    const lines = [thin("a", on), thin("b", { ...on, Die: "V 1-1/2", Punch: "Knife" }), thick("c", on)];
    const found = setUps(...lines).map(({ parts }) => parts.join());
    expect(found).toHaveLength(3);
    expect(found[1]).not.toBe("b");
  });
  it("are those of the dies alone in a shop that states no punches", () => {
    const lines = [thick("a", { Punch: null }), thin("b", { Punch: null }), thick("c", { Punch: null })];
    const found = planSetUps(planned(lines, shopOf({ punches: undefined })).quoted);
    expect(found.map(({ tools }) => [tools.die.name, tools.punch]).sort()).toEqual([
      ["V 1", undefined],
      ["V 2", undefined],
    ]);
  });
});
