/** The shear is set once a material and thickness (common practice: 5 minutes, and 8 for the blade gap). */
import { describe, expect, it } from "vitest";
import { type Line, rates, SHOP, withCell } from "../../cells/example/tables.ts";
import { bracket, planned, quotedOf, shopOf } from "../shop.ts";

const shop = shopOf({
  stations: withCell(SHOP.stations, "Shear", "Set-up", 5),
  rates: rates({ Allowance: 1, "Blade gap setting": 8 }),
});
const seconds = (lines: readonly Line[]): number[] => {
  const plan = planned(lines, shop);
  return lines.map(({ Part }) => {
    const { works } = plan.workOf(quotedOf(plan, String(Part)));
    return works.find(({ station }) => station.name === "Shear")!.setUp;
  });
};
const A = bracket({ Part: "A", Route: "shear" });
const B = bracket({ Part: "B", Route: "shear", Width: 12, Quantity: 40 });
const OTHER = bracket({ Part: "C", Route: "shear", Thickness: 0.1875 });

describe("the set-up of the shear", () => {
  it("is paid whole by a line alone, and once by two of a thickness, to the second each is rounded up by", () => {
    expect(seconds([A])).toEqual([13 * 60]);
    const [a, b] = seconds([A, B]) as [number, number];
    expect(a + b).toBeGreaterThanOrEqual(13 * 60);
    expect(a + b).toBeLessThanOrEqual(13 * 60 + 2);
    expect(b).toBeGreaterThan(a);
  });
  it("is set anew for another thickness, and no order of lines changes a share", () => {
    const [a, b, c] = seconds([A, B, OTHER]);
    expect([a, b]).toEqual(seconds([A, B]));
    expect(c).toBe(13 * 60);
    expect(seconds([OTHER, B, A])).toEqual([c, b, a]);
  });
});
