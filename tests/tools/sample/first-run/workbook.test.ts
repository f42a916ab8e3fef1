/** The workbook of the first run, calculated as a right Excel would and as some that are wrong in one point. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Argument } from "../../../../src/cells/call/call.ts";
import { shopFunctions } from "../../../../src/cells/catalogue.ts";
import type { CustomFunctions } from "../../../../src/sheet/evaluate/custom-functions.ts";
import { parseCell } from "../../../../src/sheet/formula/address.ts";
import { Calculator } from "../../../../src/sheet/graph/calculator.ts";
import { readWorkbook } from "../../../../src/sheet/workbook/read-workbook.ts";
import { CHECKS, TRIALS } from "../../../../src/tools/sample/first-run/checks.ts";
import type { CellValue } from "../../../../src/units/cell.ts";

const bytes = new Uint8Array(readFileSync("sample-workbooks/first-run.xlsx"));

function opened(functions: CustomFunctions = shopFunctions) {
  const workbook = readWorkbook(bytes);
  const calculator = new Calculator(workbook, { functions });
  const sheet = workbook.sheets[0]!;
  const at = (name: string): CellValue => {
    const { row, column } = parseCell(name)!;
    return sheet.values[column]?.[row] ?? null;
  };
  const type = (name: string, value: CellValue) => calculator.change([{ sheet: 0, ...parseCell(name)!, value }]);
  calculator.calculateAll();
  return { at, type, points: () => CHECKS.map(({ point }, i) => [point, at(`E${7 + i}`)] as const) };
}
const wrongPoints = (functions: CustomFunctions): string[] => {
  const { type, points } = opened(functions);
  type("B4", "x");
  return points().flatMap(([point, right]) => (right === "right" ? [] : [point]));
};
/** The same functions behind another host. */
const host = (call: CustomFunctions["call"]): CustomFunctions => ({ ...shopFunctions, call });

describe("the first-run workbook", () => {
  it("answers nothing before somebody begins, so no answer can come out of the file", () => {
    const { at, points } = opened();
    expect(at("A2")).toMatch(/^Type x in B4 to begin/);
    expect(points().map(([, right]) => right)).toEqual(CHECKS.map(() => ""));
  });

  it("finds everything right where it is, and counts what is left to try by hand", () => {
    const { at, type } = opened();
    type("B4", "x");
    const all = `${CHECKS.length} of ${CHECKS.length} right in this Excel`;
    expect(at("A2")).toBe(`${all}; ${TRIALS.length} more to try by hand`);
    type("K7", 0.2);
    TRIALS.slice(1).forEach((_, i) => {
      type(`C${7 + CHECKS.length + 2 + i}`, i === 0 ? "no" : "yes");
    });
    // One that was answered with no is no success.
    expect(at("A2")).toBe(`${all}; LOOK at 1 below`);
    expect(at(`E${7 + CHECKS.length + 1}`)).toBe("right");
    expect(at(`E${7 + CHECKS.length + 2}`)).toBe("look"); // the one that was answered with no
  });

  it.each<[string, CustomFunctions["call"], string[]]>([
    [
      "blanks arrive as 0",
      (name, given) => {
        const zero = (one: Argument): Argument =>
          Array.isArray(one) ? one.map((row) => row.map((cell) => cell ?? 0)) : one;
        return shopFunctions.call(name, given.map(zero));
      },
      ["Blank cells"],
    ],
    [
      "an error takes the whole block",
      (name, given) => {
        const { value, unit } = shopFunctions.call(name, given);
        const spoiled = Array.isArray(value) && value.flat().find((cell) => typeof cell === "object" && cell !== null);
        return spoiled ? { value: spoiled, unit } : { value, unit };
      },
      ["Error beside answers", "Kind of the error"],
    ],
    [
      "the functions are of another version",
      (name, given) =>
        name === "VERSION"
          ? { value: "Bracket Bill 0.0.1, materials 2020.1", unit: null }
          : shopFunctions.call(name, given),
      ["Version"],
    ],
    [
      "only the first cell of a block comes back",
      (name, given) => {
        const { value, unit } = shopFunctions.call(name, given);
        return { value: Array.isArray(value) ? value[0]![0]! : value, unit };
      },
      ["All functions", "Block of answers", "Error beside answers", "Kind of the error", "Long function"],
    ],
  ])("where %s, that row says look", (_, call, points) => {
    expect(wrongPoints(host(call))).toEqual(points);
  });
});
