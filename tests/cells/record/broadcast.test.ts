import { describe, expect, it } from "vitest";
import { type Argument, callRecord } from "../../../src/cells/call/call.ts";
import { findRecord, RECORDS } from "../../../src/cells/catalogue.ts";
import { CellError, type CellValue } from "../../../src/units/cell.ts";

const call = (name: string, ...given: Argument[]) => callRecord(findRecord(name)!, given);
const setback = (...given: Argument[]) => call("BEND.SETBACK", ...given).value;
/** At 90 degrees the setback is simply radius + thickness, so results can be read off. */
const near = (value: number) => expect.closeTo(value, 12);

describe("shapes combine as Excel's operators combine them (read: Microsoft's documentation of array formulas)", () => {
  it("a column gives a column, a row a row, a block a block", () => {
    expect(setback([[1], [2]], 1, 90)).toEqual([[near(2)], [near(3)]]);
    expect(setback([[1, 2]], 1, 90)).toEqual([[near(2), near(3)]]);
    expect(
      setback(
        [
          [1, 2],
          [3, 4],
        ],
        1,
        90,
      ),
    ).toEqual([
      [near(2), near(3)],
      [near(4), near(5)],
    ]);
  });

  it("a column with a row gives a block", () => {
    expect(setback([[1], [2]], [[1, 2, 3]], 90)).toEqual([
      [near(2), near(3), near(4)],
      [near(3), near(4), near(5)],
    ]);
  });

  it("two columns run side by side; where one is too short stands #N/A", () => {
    expect(setback([[1], [2], [3]], [[1], [2]], 90)).toEqual([
      [near(2)],
      [near(4)],
      [expect.objectContaining({ code: "#N/A" })],
    ]);
  });

  it("1 x 1 in, a plain value out", () => {
    expect(setback([[1]], [[1]], [[90]])).toEqual(near(2));
  });

  it("each row may have its own units", () => {
    const { value, unit } = call("BEND.SETBACK", [["1 in"], ["1 in"]], 0, 90, [["in"], ["mm"]]);
    expect(value).toEqual([[near(1)], [near(25.4)]]);
    expect(unit).toBeNull();
  });

  it("the unit is told when all rows share it", () => {
    expect(call("BEND.SETBACK", [[1], [2]], 0, 90).unit).toBe("in");
    expect(call("BEND.SETBACK", [[1], ["abc"]], 0, 90, "mm").unit).toBe("mm");
  });

  it("a row whose required inputs are all blank answers nothing; half a row is refused", () => {
    expect(setback([[1], [null], [""]], [[1], [null], [""]], [[90], [null], [""]])).toEqual([[near(2)], [""], [""]]);
    expect(setback([[1], [null]], [[1], [1]], 90)).toEqual([[near(2)], [expect.objectContaining({ code: "#VALUE!" })]]);
  });

  it("an error cell stays in its own place, a refusal too", () => {
    expect(setback([[1], [new CellError("#DIV/0!")], [-1], [2]], 1, 90)).toEqual([
      [near(2)],
      [expect.objectContaining({ code: "#DIV/0!" })],
      [expect.objectContaining({ code: "#VALUE!", message: expect.stringMatching(/^thickness must be/) })],
      [near(3)],
    ]);
  });

  it("a gauge is read in the material of its own row", () => {
    const { value } = call("BLANK.WEIGHT", [["A1011 CS"], ["5052-H32"], ["304"]], "10 ga", 10, 10);
    const density = { steel: 0.284, aluminum: 0.097, stainless: 0.29 };
    const inches = { steel: 0.1345, aluminum: 0.1019, stainless: 0.1406 };
    (value as number[][]).forEach(([weight], i) => {
      const kind = (["steel", "aluminum", "stainless"] as const)[i]!;
      expect(weight! / (100 * inches[kind] * density[kind])).toBeCloseTo(1, 2);
    });
  });

  it("a block of answers of a function that itself answers a table is refused", () => {
    const table = RECORDS.find(({ result }) => result.kind === "table" && findRecord("BEND.STOPS"))!;
    expect(table).toBeDefined();
    expect(call("BEND.STOPS", "1;2;1", 90, "1;2", [[0.125], [0.25]] as CellValue[][], 0.125).value).toMatchObject({
      code: "#VALUE!",
    });
  });
});

describe("lists", () => {
  const flat = (...given: Argument[]) => call("FLAT.LENGTH", ...given).value;

  it("a range is one part's list, down or across, and equals the text", () => {
    const wanted = flat("2; 3.5; 2", 90, 0.125, 0.125);
    expect(wanted).toBeTypeOf("number");
    expect(flat([[2], [3.5], [2]], 90, 0.125, 0.125)).toBe(wanted);
    expect(flat([[2, 3.5, 2]], 90, 0.125, 0.125)).toBe(wanted);
    expect(flat("2;3,5;2", 90, 0.125, 0.125)).toBe(wanted); // decimal comma
    expect(flat('2 in; 3-1/2"; 50.8 mm', 90, 0.125, 0.125)).toEqual(near(wanted as number));
  });

  it("for many parts each cell holds its list as text", () => {
    const one = flat("2; 3.5; 2", 90, 0.125, 0.125);
    const two = flat("1; 1", 90, 0.125, 0.125);
    expect(flat([["2; 3.5; 2"], ["1; 1"]], 90, 0.125, 0.125)).toEqual([[one], [two]]);
    expect(flat([["2; 3.5; 2"], ["1; 1"]], 90, [[0.125], [0.25]], 0.125)).toEqual([
      [one],
      [flat("1; 1", 90, 0.25, 0.125)],
    ]);
  });

  it("a list range together with a range elsewhere is refused", () => {
    expect(flat([[2], [3.5], [2]], 90, [[0.125], [0.25]], 0.125)).toMatchObject({
      code: "#VALUE!",
      message: expect.stringMatching(/^flanges must be one cell a part .*; got a range; /),
    });
  });

  it("one angle stands for all bends; otherwise there is one fewer than flanges", () => {
    expect(flat("2; 3.5; 2", "90; 90", 0.125, 0.125)).toBe(flat("2; 3.5; 2", 90, 0.125, 0.125));
    expect(flat("2; 3.5; 2", "90; 90; 90", 0.125, 0.125)).toMatchObject({
      code: "#VALUE!",
      message: expect.stringMatching(/^bend_angles must be /),
    });
  });

  it("blanks at the end of a range are left out, a gap is refused", () => {
    expect(flat([[2], [3.5], [2], [null], [""]], 90, 0.125, 0.125)).toBe(flat("2; 3.5; 2", 90, 0.125, 0.125));
    expect(flat([[2], [null], [2]], 90, 0.125, 0.125)).toMatchObject({ code: "#VALUE!" });
    expect(flat("2;;2", 90, 0.125, 0.125)).toMatchObject({ code: "#VALUE!" });
  });

  it("an error inside a list passes through", () => {
    expect(flat([[2], [new CellError("#REF!")], [2]], 90, 0.125, 0.125)).toMatchObject({ code: "#REF!" });
  });

  it("a single flange is a strip without bends", () => {
    expect(flat("5", null, 0.125, 0.125)).toEqual(near(5));
  });
});
