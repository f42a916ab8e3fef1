/** What must hold whatever the figures are: the same answer in inches and in millimeters, and the laws of the physics. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Argument, callRecord } from "../../src/cells/call/call.ts";
import { RECORDS, shopFunctions } from "../../src/cells/catalogue.ts";
import type { AnyRecord } from "../../src/cells/record/record.ts";
import { isCellError } from "../../src/units/cell.ts";
import { fromInternal, type QuantityKind, SCALES, toInternal } from "../../src/units/system.ts";
import { exampleArguments } from "./example-call.ts";

/** Within what a conversion to and fro leaves behind, and the 15 digits a cell keeps. */
const expectNear = (found: number, wanted: number): void =>
  expect(Math.abs(found - wanted), `${found} against ${wanted}`).toBeLessThanOrEqual(1e-9 * Math.abs(wanted));

/** Rounded up to 1/16 in or to 1 mm: two grids, two answers. */
const ON_A_GRID = ["BEND.MINFLANGE"];

const inMillimeters = (value: number, quantity: QuantityKind): number =>
  fromInternal(toInternal(value, quantity, "in"), quantity, "mm");

/** The same call in millimeters: every plain figure of a quantity converted, texts with figures too. */
function converted(record: AnyRecord, given: readonly Argument[]): Argument[] {
  const parameters = Object.entries(record.parameters);
  const place = parameters.findIndex(([key]) => key === "units");
  const all = parameters.slice(0, Math.max(given.length, place + 1)).map(([, parameter], i): Argument => {
    const value = given[i];
    const { quantity } = parameter;
    if (!quantity) return value;
    if (typeof value === "number") return inMillimeters(value, quantity);
    if (typeof value === "string" && parameter.shape === "list")
      return value
        .split(";")
        .map((each) => inMillimeters(Number(each), quantity))
        .join("; ");
    if (typeof value === "string" && quantity === "length" && Number.isFinite(Number(value)))
      return inMillimeters(Number(value), quantity);
    return value;
  });
  all[place] = "mm";
  return all;
}

/** The example with its figures made larger or smaller by up to a half. */
const varied = (record: AnyRecord, factors: readonly number[]): Argument[] =>
  exampleArguments(record).map((value, i) =>
    Object.keys(record.parameters)[i] === "units"
      ? "in"
      : typeof value === "number" && !Number.isInteger(value)
        ? value * (factors[i % factors.length] ?? 1)
        : value,
  );

const inUnits = RECORDS.filter(
  ({ name, parameters, result }) => "units" in parameters && result.kind in SCALES && !ON_A_GRID.includes(name),
);

describe("inches and millimeters give the same answer", () => {
  it.each(inUnits.map((record) => [record.name, record] as const))("%s", (_, record) => {
    const kind = record.result.kind as QuantityKind;
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.6, max: 1.4, noNaN: true }), { minLength: 3, maxLength: 9 }),
        (factors) => {
          const given = varied(record, factors);
          const inches = callRecord(record, given).value;
          const metric = callRecord(record, converted(record, given)).value;
          if (isCellError(inches) || isCellError(metric)) {
            expect(isCellError(metric) && metric.code).toBe(isCellError(inches) && inches.code);
            return;
          }
          expectNear(metric as number, inMillimeters(inches as number, kind));
        },
      ),
      { numRuns: 60 },
    );
  });
});

const ask = (name: string, ...given: Argument[]): number => {
  const { value } = shopFunctions.call(name, given);
  expect(value, `${name}(${given.join(", ")})`).toBeTypeOf("number");
  return value as number;
};
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const none = null;

describe("laws", () => {
  it("a blank's weight is in proportion to each side, whichever is called the length", () => {
    fc.assert(
      fc.property(size(1, 100), size(1, 100), size(0.03, 0.5), size(1.1, 3), (length, width, thickness, factor) => {
        const weight = ask("BLANK.WEIGHT", "A36", thickness, length, width);
        expectNear(ask("BLANK.WEIGHT", "A36", thickness, width, length), weight);
        expectNear(ask("BLANK.WEIGHT", "A36", thickness, length * factor, width), weight * factor);
      }),
    );
  });

  it("a strip has the same flat from either end", () => {
    fc.assert(
      fc.property(size(2, 20), size(2, 20), size(2, 20), size(20, 120), size(20, 120), (a, b, c, first, second) => {
        const flat = (flanges: number[], angles: number[]) =>
          ask("FLAT.LENGTH", flanges.join(";"), angles.join(";"), 0.125, 0.125);
        expectNear(flat([a, b, c], [first, second]), flat([c, b, a], [second, first]));
      }),
    );
  });

  it("bend force is in proportion to the length, rises with the sheet and falls with the opening", () => {
    fc.assert(
      fc.property(
        size(0.05, 0.3),
        size(1, 100),
        size(6, 15),
        size(1.01, 1.3),
        (thickness, length, openings, factor) => {
          const force = (t: number, l: number, v: number) => ask("BEND.TONNAGE", "A36", t, l, v, "Groover");
          const opening = openings * thickness;
          const one = force(thickness, length, opening);
          expectNear(force(thickness, length * factor, opening), one * factor);
          expect(force(thickness * factor, length, opening)).toBeGreaterThan(one);
          expect(force(thickness, length, opening * factor)).toBeLessThan(one);
        },
      ),
    );
  });

  it("a shear needs more for thicker sheet, less for a steeper blade", () => {
    fc.assert(
      fc.property(size(0.05, 0.4), size(0.5, 3), size(1.01, 1.5), (thickness, rake, factor) => {
        const force = (t: number, angle: number) => ask("SHEAR.FORCE", none, t, 120, angle, 50);
        expect(force(thickness * factor, rake)).toBeGreaterThan(force(thickness, rake));
        expect(force(thickness, rake * factor)).toBeLessThan(force(thickness, rake));
      }),
    );
  });

  it("a waterjet is slower in thicker sheet and for a better edge, faster with more pressure", () => {
    fc.assert(
      fc.property(
        size(0.05, 2),
        size(1, 4.5),
        size(20, 50),
        size(1.01, 1.1),
        (thickness, quality, pressure, factor) => {
          const feed = (t: number, q: number, p: number) => ask("JET.FEED", "304", t, q, p, 0.014, 0.75, 0.04);
          const one = feed(thickness, quality, pressure);
          expect(feed(thickness * factor, quality, pressure)).toBeLessThan(one);
          expect(feed(thickness, quality * factor, pressure)).toBeLessThan(one);
          expect(feed(thickness, quality, pressure * factor)).toBeGreaterThan(one);
        },
      ),
    );
  });

  it("a person may lift less further out, with a twist, or more often", () => {
    fc.assert(
      fc.property(size(10, 24), size(0, 120), size(0.2, 8), (reach, twist, lifts) => {
        const limit = (h: number, a: number, f: number) => ask("LIFT.LIMIT", h, 30, 20, a, f, "good", 2);
        const one = limit(reach, twist, lifts);
        expect(limit(reach + 0.9, twist, lifts)).toBeLessThan(one);
        expect(limit(reach, twist + 10, lifts)).toBeLessThan(one);
        expect(limit(reach, twist, lifts + 1)).toBeLessThan(one);
      }),
    );
  });

  it("a deduction grows with the sheet and with the angle up to a square bend", () => {
    fc.assert(
      fc.property(
        size(0.03, 0.4),
        size(0.03, 0.5),
        size(10, 80),
        size(1.01, 1.1),
        (thickness, radius, angle, factor) => {
          const deduction = (t: number, a: number) => ask("BEND.DEDUCTION", t, radius, a);
          expect(deduction(thickness * factor, angle)).toBeGreaterThan(deduction(thickness, angle));
          expect(deduction(thickness, angle * factor)).toBeGreaterThan(deduction(thickness, angle));
        },
      ),
    );
  });
});
