/** The end of a bend as drawn, against plane geometry done here by hand. */
import { describe, expect, it } from "vitest";
import { plainPress } from "../../../src/calc/bend/order/plain-press.ts";
import { drawEndOfBend } from "../../../src/papers/drawing/end-of-bend.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";

const DIE = { name: "V", opening: mm(16), angle: degrees(80) };
const PUNCH = { name: "P", angle: degrees(60), nose: mm(1) };
const part = (second = 40) => ({
  thickness: mm(2),
  flanges: [mm(40), mm(second)],
  // r 2.5, t 2: setback 4.5, allowance (2.5 + 0.42 t) pi / 2 = 5.247; deduction 9 - 5.247.
  bends: [{ angle: degrees(90), insideRadius: mm(2.5), deduction: mm(9 - (2.5 + 0.84) * (Math.PI / 2)) }],
});
const drawn = (second?: number, words = "tools drawn from their tables", springback = 2, obstacle?: string) =>
  drawEndOfBend(
    {
      part: part(second),
      press: plainPress(DIE, PUNCH),
      finished: [],
      hit: { bend: 1, gaugedEnd: "first" },
      springback: degrees(springback),
      turnedTo: degrees(90 + springback),
      name: "X",
      drawn: words,
      obstacle: obstacle === undefined ? undefined : { words: obstacle, isAtDie: false },
      stop: undefined,
    },
    "mm",
    { width: 1e4, height: 1e4 },
  ).svg;
const polygons = (svg: string) =>
  [...svg.matchAll(/<polygon points="([^"]+)"/g)].map(([, points]) =>
    points!.split(" ").map((pair) => pair.split(",").map(Number) as [number, number]),
  );

describe("the plain press", () => {
  it("has the V of its table: opening, depth and angle", () => {
    const { die } = plainPress(DIE, PUNCH);
    const top = die.filter(([, y]) => y === 0).map(([x]) => x);
    expect(top).toContain(8);
    expect(top).toContain(-8);
    expect(die.some(([x, y]) => x === 0 && Math.abs(y + 8 / Math.tan((40 * Math.PI) / 180)) < 1e-9)).toBe(true);
  });

  it("rounds the shoulders tangent to top and flank", () => {
    const { die } = plainPress({ ...DIE, shoulder: mm(2) }, PUNCH);
    // The center lies rd tan((90 - 40) / 2) outside the theoretical corner, rd below the top.
    const center = 8 + 2 * Math.tan((25 * Math.PI) / 180);
    const arc = die.filter(([x, y]) => x > 0 && y <= 1e-9 && y > -2.5 && x < center + 1e-9);
    expect(arc.length).toBeGreaterThan(5);
    for (const [x, y] of arc) expect(Math.hypot(x - center, y + 2)).toBeCloseTo(2, 6);
  });

  it("its punch has its tip at height 0 and the nose it was given", () => {
    const { punch } = plainPress(DIE, PUNCH);
    expect(Math.min(...punch.map(([, y]) => y))).toBeCloseTo(0, 9);
    for (const [x, y] of punch.filter(([, y]) => y < 0.4)) expect(Math.hypot(x, y - 1)).toBeCloseTo(1, 6);
  });
});

describe("the end of a bend", () => {
  it("shows the sheet with both flanges rising at half the loaded bend angle", () => {
    const scale = 1.2; // of true size on paper, the largest there is
    const sheet = polygons(drawn())
      .at(-1)!
      .map(([x, y]): [number, number] => [x / scale, y / scale]);
    // The free edge of the right flange runs from the highest corner to the rightmost, square to a flange that rises at
    // (90 + 2) / 2 degrees; a screen's y grows downward.
    const right = sheet.filter(([x]) => x > 0);
    const a = right.reduce((best, corner) => (corner[1] < best[1] ? corner : best));
    const b = right.reduce((best, corner) => (corner[0] > best[0] ? corner : best));
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(2, 2);
    expect((Math.atan2(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1])) * 180) / Math.PI).toBeCloseTo(46, 1);
  });

  it("says angle, load and least gap in words too", () => {
    const description = /<desc>(.*?)<\/desc>/.exec(drawn())![1]!;
    expect(description).toMatch(/Bend 1 to 90°, under load 92°; least gap [\d.]+ mm/);
    expect(description).toContain("tools drawn from their tables");
    expect(drawn(40, "")).not.toContain("tools drawn from their tables");
  });

  it("says what the plan found in the way, and then no gap", () => {
    const description = /<desc>(.*?)<\/desc>/.exec(drawn(40, undefined, 2, "flange 1 meets the punch"))![1]!;
    expect(description).toContain("flange 1 meets the punch");
    expect(description).not.toContain("least gap");
  });

  it("the least gap is the distance of its own two ends", () => {
    const gap = (svg: string) => Number(/least gap ([\d.]+) mm/.exec(svg)![1]);
    const [, x1, y1, x2, y2] = /<line x1="([-\d.]+)" y1="([-\d.]+)" x2="([-\d.]+)" y2="([-\d.]+)"/
      .exec(drawn())!
      .map(Number);
    expect(Math.hypot(x1! - x2!, y1! - y2!) / 1.2).toBeCloseTo(gap(drawn()), 1);
  });

  it("a part that no sheet can be is refused", () => {
    expect(() => drawn(1)).toThrow(/flange 2/);
  });
});
