/**
 * A Z, a hat and a tray folded by hand on paper: the plan's flats, gauge settings and pictures against plane geometry that
 * is written here alone. Only the inside radius and the deduction of one bend are taken from the plan; of the deduction it
 * is asked that it leaves an arc between the inner and the outer face (geometry).
 */
import { describe, expect, it } from "vitest";
import { hitsOf } from "../../src/bill/lines/bent-strip.ts";
import type { LinePlan } from "../../src/bill/lines/plan-line.ts";
import { drawBentProfile } from "../../src/papers/drawing/bent-profile.ts";
import { hitDrawings } from "../../src/papers/line-drawings.ts";
import { bracket, inches, planned, quotedOf, shopOf } from "./shop.ts";

const T = 0.125;
const SHOP = shopOf({
  dies: [
    ["Die", "Opening (in)", "Angle (deg)", "Block width (in)", "Block height (in)"],
    ["V 1", 1, 80, 1.25, 2],
  ],
  punches: [
    ["Punch", "Nose radius (in)", "Angle (deg)", "Body width (in)", "Height (in)", "Sections (in)"],
    ["Plain", 0.0625, 75, 0.75, 6, "10; 5; 3; 2; 1.5; 1; 0.5; 0.25"],
  ],
});
const plate = { Material: "A36", Thickness: "3/16", "Actual thickness": T, Width: 6, Holes: 0, "Drawing radius": null };
const SHAPES = {
  Z: { Flanges: "2; 3; 1.5", "Bend angles": "90; -90" },
  hat: { Flanges: "1.5; 2; 4; 2; 1.5", "Bend angles": "-90; 90; 90; -90" },
  channel: { Flanges: "2; 4; 1.5", "Bend angles": 90 },
  tray: { Flanges: "2; 12; 2", "Bend angles": 90, Width: null, "Cross flanges": "1.5; 8; 1.5", "Cross angles": 90 },
} as const;
const answer = (name: keyof typeof SHAPES) =>
  quotedOf(planned([bracket({ Part: name, ...plate, ...SHAPES[name] })], SHOP), name);
const numbers = ({ bend }: LinePlan) => ({ radius: inches(bend!.radius), deduction: inches(bend!.deduction) });
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
const listed = (text: string) => text.split(";").map(Number);

describe.each(Object.keys(SHAPES) as (keyof typeof SHAPES)[])("%s", (name) => {
  const { plan, status } = answer(name);
  const { radius, deduction } = numbers(plan);
  const flanges = listed(SHAPES[name].Flanges);

  it("is clear, and its bend takes an arc between its faces", () => {
    expect(plan.findings.filter((finding) => finding.status !== "note")).toEqual([]);
    expect(status).toBe("clear");
    const arc = 2 * (radius + T) - deduction;
    expect(arc).toBeGreaterThan((Math.PI / 2) * radius);
    expect(arc).toBeLessThan((Math.PI / 2) * (radius + T));
  });

  it("is as long flat as its straights and arcs together, whichever way they go", () => {
    const arc = 2 * (radius + T) - deduction;
    const flat = (outside: readonly number[]) =>
      sum(outside.map((flange, i) => flange - (i > 0 && i < outside.length - 1 ? 2 : 1) * (radius + T))) +
      (outside.length - 1) * arc;
    expect(inches(plan.blank.length)).toBeCloseTo(flat(flanges), 9);
    expect(inches(plan.blank.width)).toBeCloseTo(name === "tray" ? flat([1.5, 8, 1.5]) : 6, 9);
  });

  it("is gauged where a finger meets the sheet as it lies: a free edge, or the outside of what stands already", () => {
    plan.strips.forEach((strip, direction) => {
      const outside = direction === 0 ? flanges : [1.5, 8, 1.5];
      // Bend lines on the flat, from the first edge: the outside lengths before them less the deductions before them.
      const lines = outside.slice(0, -1).map((_, i) => sum(outside.slice(0, i + 1)) - deduction * i - deduction / 2);
      const whole = sum(outside) - deduction * (outside.length - 1);
      const made = new Set<number>();
      expect(strip.order.feasible).toBe(true);
      for (const hit of hitsOf(strip)) {
        const line = lines[hit.bend - 1]!;
        const step = hit.gaugedEnd === "first" ? -1 : 1;
        let next = hit.bend + step;
        while (next >= 1 && next <= lines.length && !made.has(next)) next += step;
        const edge = hit.gaugedEnd === "first" ? line : whole - line;
        // A square flange stands half a deduction beyond its own bend line: its outside corner.
        const reach = lines[next - 1] === undefined ? edge : Math.abs(lines[next - 1]! - line) + deduction / 2;
        // A flange that hangs down stands lower than the finger, which then meets the round above it, nearer by its radius.
        const hangs = lines[next - 1] !== undefined && hit.datum.on === "round";
        expect(inches(hit.stop)).toBeGreaterThan(hangs ? reach - radius - T : reach - 1e-6);
        expect(inches(hit.stop)).toBeLessThan(reach + 1e-6);
        made.add(hit.bend);
      }
    });
  });

  it("is drawn bent to its outside sizes", () => {
    plan.strips.forEach((_, direction) => {
      const outside = direction === 0 ? flanges : [1.5, 8, 1.5];
      const angles = direction === 0 ? anglesOf(name) : [90, 90];
      const { svg } = drawBentProfile(plan.strips[direction]!.part, "in", "part", { width: 1e4, height: 1e4 });
      const seen = boxOf(/<path d="(M [^"]+)"/.exec(svg)![1]!);
      const folded = fold(outside, angles);
      // The mid line of a square leg lies half a thickness within the box, except at its free ends.
      const scale = 1.5; // of true size on paper, the largest there is
      expect(seen.width / scale).toBeCloseTo(folded.width, 3);
      expect(seen.height / scale).toBeCloseTo(folded.height, 3);
    });
  });

  it("shows every hit with the flanges that stand before it", () => {
    const pictures = plan.strips.flatMap((strip) => hitDrawings(plan, strip, "in"));
    expect(pictures).toHaveLength(plan.strips.reduce((count, { part }) => count + part.bends.length, 0));
    for (const { svg } of pictures) expect(svg).toContain("tools drawn from their tables");
  });
});

const anglesOf = (name: keyof typeof SHAPES): number[] => {
  const given = SHAPES[name]["Bend angles"];
  const bends = listed(SHAPES[name].Flanges).length - 1;
  return typeof given === "number" ? Array.from({ length: bends }, () => given) : listed(given);
};

/**
 * Paper: a sheet of thickness T with sharp corners. Walks along the mid line; an outside length counts to the outer face of
 * the leg it meets, half a thickness beyond that leg's mid line at a bend, whichever way the bend goes.
 */
function fold(outside: readonly number[], angles: readonly number[]): { width: number; height: number } {
  let [x, y, heading] = [0, 0, 0];
  const xs = [x];
  const ys = [y];
  outside.forEach((length, i) => {
    const corners = (i > 0 ? 1 : 0) + (i < angles.length ? 1 : 0);
    const along = length - (corners * T) / 2;
    x += along * Math.round(Math.cos(heading));
    y += along * Math.round(Math.sin(heading));
    heading += ((angles[i] ?? 0) * Math.PI) / 180;
    xs.push(x);
    ys.push(y);
  });
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}

/** Width and height of a path of straights and quarter rounds, in inches: no round reaches beyond its ends. */
function boxOf(d: string): { width: number; height: number } {
  const numbers = d.match(/[MLA][^MLA]*/g)!.map((command) => command.slice(1).trim().split(/\s+/).map(Number));
  const points = numbers.map((given) => given.slice(-2) as [number, number]);
  const span = (axis: 0 | 1) => {
    const values = points.map((point) => point[axis]);
    return inches(Math.max(...values) - Math.min(...values));
  };
  return { width: span(0), height: span(1) };
}
