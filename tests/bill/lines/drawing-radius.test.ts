/** The drawing's radius: within its tolerance, or without one within 1/32 in or half a thickness. Common practice. */
import { describe, expect, it } from "vitest";
import { drawingRadius } from "../../../src/bill/lines/drawing-radius.ts";
import type { CellValue } from "../../../src/units/cell.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import { bracket, lineOf } from "../shop.ts";

const V2 = { name: "V 2", opening: mm(50.8), angle: degrees(78) };
const SHARP = { name: "P", nose: mm(1), angle: degrees(75) };
/** A36 takes the middle of 5/32 and 0.16 of the opening: 0.31625 in over a 2 in die. */
const R = 0.31625;
const found = (radius: number, tolerance: CellValue = null, Thickness: CellValue = 0.25) => {
  const line = lineOf(bracket({ "Drawing radius": radius, "Radius tolerance": tolerance, Thickness }));
  const answer = drawingRadius(line, { die: V2, punch: SHARP }, 0)!;
  return [answer.verdict, answer.finding && `${answer.finding.status} ${answer.finding.kind}`];
};

describe("the drawing's radius", () => {
  it.each([
    ["exact, no tolerance", [R], ["accept", undefined]],
    ["within half a thickness, no tolerance", [R + 0.125], ["accept", "note near"]],
    ["beyond half a thickness", [R + 0.126], ["other tool", "check ask"]],
    ["thin: within 1/32 in", [R + 1 / 32 - 1e-6, null, "16 ga"], ["accept", "note near"]],
    ["thin: beyond 1/32 in", [R + 0.032, null, "16 ga"], ["other tool", "check ask"]],
    ["all of the band, 0.3125 to 0.32 in, within its tolerance", [R + 0.02, 0.024], ["accept", undefined]],
    ["what is expected within its tolerance, an end of the band not", [R + 0.02, 0.0235], ["measure", "note measure"]],
    ["only an end of the band within it", [R + 0.02, 0.019], ["ask", "check ask"]],
    ["the band beyond its tolerance, and wider", [R + 0.02, 0.016], ["other tool", "check ask"]],
    ["beyond its tolerance, small and narrower: usually waived", [0.19, 0.02], ["ask", "check ask"]],
  ] as [string, [number, CellValue?, CellValue?], unknown][])("%s", (_, given, answer) => {
    expect(found(...given)).toEqual(answer);
  });
  it("a bend that is bottomed takes the radius of the nose, 1 mm here", () => {
    const answer = (radius: number) =>
      drawingRadius(lineOf(bracket({ "Drawing radius": radius })), { die: V2, punch: SHARP }, 1)?.finding;
    expect(answer(1 / 25.4)).toBeUndefined();
    expect(answer(R)).toMatchObject({ status: "check", kind: "ask", figure: 1 });
  });
  it("a drawing without a radius asks nothing", () => {
    expect(drawingRadius(lineOf(bracket()), { die: V2, punch: SHARP }, 0)).toBeUndefined();
  });
});
