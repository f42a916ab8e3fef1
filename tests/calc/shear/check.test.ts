/** What the shear says on either side of each of its limits, asked as a worksheet asks. Common practice; the plate decides. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

const SHEARS: CellMatrix = [
  ["Shear", "Rated thickness (in)", "Cut length (in)", "Least hold-down (in)", "Knife gap (in)"],
  ["small", 0.25, 96, 4, 0.015],
  ["large", 0.5, 144, 4, 0.03],
];

interface Cut {
  readonly material?: string;
  readonly thickness?: number;
  readonly length?: number;
  readonly strip?: number;
  readonly shear?: string;
  readonly shears?: CellMatrix;
}

const check = ({
  material = "A36",
  thickness = 0.25,
  length = 48,
  strip = 12,
  shear = "small",
  shears = SHEARS,
}: Cut) => {
  const given = [material, thickness, length, strip, shears, shear] as (CellValue | CellMatrix)[];
  const [status, sentence] = (shopFunctions.call("SHEAR.CHECK", given).value as CellMatrix)[0]!;
  return { status, sentence: String(sentence) };
};

describe("a cut within every limit", () => {
  it("is clear, and nothing is said", () => {
    expect(check({}).status).toBe("clear");
    expect(check({}).sentence).not.toMatch(/rated|cuts|hold-down|narrower|gap/);
  });
});

describe("the length of the cut", () => {
  it("may be the shear's own and no more; the larger shear is named", () => {
    expect(check({ length: 96 }).status).toBe("clear");
    const { status, sentence } = check({ length: 96.1 });
    expect(status).toBe("stop");
    expect(sentence).toContain("The cut is 96.1 in; small cuts 96 in.");
    expect(sentence).toContain("large");
  });
  it("beyond every shear names none", () => {
    const { sentence } = check({ length: 150 });
    expect(sentence).not.toContain("large");
    expect(sentence).toContain("No shear of the table takes it: cut it on the waterjet or buy it cut.");
    expect(check({ length: 150, shear: "large" }).sentence).toContain("No shear of the table takes it");
  });
});

describe("the rating", () => {
  it("is the plate's own in its own material", () => {
    expect(check({ thickness: 0.2501 }).status).toBe("stop");
    expect(check({ thickness: 0.2501 }).sentence).toContain("large");
  });
  it("is less in stainless: between strong and ordinary sheet it asks for the certificate", () => {
    const statuses = [0.16, 0.2, 0.25].map((thickness) => check({ material: "304", thickness }).status);
    expect(statuses[0]).not.toBe("stop");
    expect(statuses[2]).toBe("stop");
    expect(check({ material: "304", thickness: 0.25 }).sentence).toContain("rated 0.25 in in A36");
  });
});

describe("the piece that falls", () => {
  it("must reach a hold-down", () => {
    expect(check({ strip: 4 }).status).toBe("clear");
    const { status, sentence } = check({ strip: 3.9 });
    expect(status).toBe("check");
    expect(sentence).toContain("A piece of 3.9 in does not reach a hold-down of small, which needs 4 in.");
    expect(sentence).toContain("never reach under the hold-downs");
  });
  it("is not asked where the table does not say", () => {
    const silent: CellMatrix = [SHEARS[0]!.slice(0, 3), ...SHEARS.slice(1).map((row) => row.slice(0, 3))];
    expect(check({ strip: 3.5, shears: silent }).status).toBe("clear");
    expect(check({ strip: 2.9, shears: silent }).sentence).toContain("narrower than 12 thicknesses, 3 in");
  });
  it("is narrow below 10 thicknesses of sheet", () => {
    const silent: CellMatrix = [SHEARS[0]!.slice(0, 3), ...SHEARS.slice(1).map((row) => row.slice(0, 3))];
    expect(check({ thickness: 0.125, strip: 1.25, shears: silent }).status).toBe("clear");
    const { sentence } = check({ thickness: 0.125, strip: 1.24, shears: silent });
    expect(sentence).toContain("narrower than 10 thicknesses, 1.25 in");
    expect(sentence).toContain("Use flat bar or saw it");
  });
});

describe("the knife gap", () => {
  // A36 wants 6.5 % of the thickness (memory): 0.0065 in for 0.1 in, 0.01625 in for 1/4 in.
  it("that is far too wide for the sheet burrs; one a little wide does not", () => {
    expect(check({ thickness: 0.25 }).status).toBe("clear");
    const { status, sentence } = check({ thickness: 0.05 });
    expect(status).toBe("check");
    expect(sentence).toContain("The knife gap of small is set to 0.015 in; this sheet wants 0.00325 in and will burr.");
    expect(sentence).toContain("knives locked out");
  });
  it("is not judged in a material without a figure for it", () => {
    expect(check({ material: "C110 half hard", thickness: 0.05 }).sentence).not.toContain("knife gap");
  });
});
