import { expect, it } from "vitest";
import { step, type Working } from "../../src/units/working.ts";

it("a step writes itself down and gives its value back", () => {
  const work: Working = [];
  expect(step(work, "t", "thickness", 6.35, "mm", "given")).toBe(6.35);
  expect(work).toEqual([{ symbol: "t", meaning: "thickness", value: 6.35, unit: "mm", source: "given" }]);
});

it("without a working only the value comes back", () => {
  expect(step(undefined, "t", "thickness", 6.35, "mm", "given")).toBe(6.35);
});
