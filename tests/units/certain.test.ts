import { expect, test } from "vitest";
import { cellAt, entryOf, firstOf, foundIn, itemAt, lastOf, topLeft, widthOf } from "../../src/units/certain.ts";

const ROWS = [
  [1, null, ""],
  [0, 5, 6],
];

test("what must be there is answered, blanks and zeros among it", () => {
  expect([firstOf(ROWS), lastOf(ROWS), topLeft(ROWS)]).toEqual([ROWS[0], ROWS[1], 1]);
  expect([cellAt(ROWS, 0, 1), cellAt(ROWS, 0, 2), cellAt(ROWS, 1, 0)]).toEqual([null, "", 0]);
  expect([widthOf(ROWS), widthOf([]), widthOf([[]])]).toEqual([3, 0, 0]);
  expect(entryOf(new Map([["a", 0]]), "a")).toBe(0);
  expect(foundIn([3, 0, 5], (item) => item < 3)).toBe(0);
});

test.each([-1, 2, 0.5, Number.NaN])("place %s of a list of two is a fault that says so", (place) => {
  expect(() => itemAt(ROWS, place)).toThrow(`no item ${place} in a list of 2`);
});

test("an empty list has no first and no last item, a map no entry that was not put in, a list nothing that does not fit", () => {
  expect(() => firstOf([])).toThrow("no item 0 in a list of 0");
  expect(() => lastOf([])).toThrow("no item -1 in a list of 0");
  expect(() => entryOf(new Map(), "b")).toThrow("no entry b");
  expect(() => foundIn([3, 5], (item) => item < 3)).toThrow("no item -1 in a list of 2");
});
