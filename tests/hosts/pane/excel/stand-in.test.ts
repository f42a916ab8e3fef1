/** The stand-in against code that is wrong on purpose: what it does not catch here, no test with it would catch. */
import { describe, expect, it } from "vitest";
import { FakeWorkbook, standIn } from "./stand-in.ts";

// biome-ignore lint/suspicious/noExplicitAny: wrong code is what is tried
type Any = any;
const book = () =>
  new FakeWorkbook(
    {
      One: [
        ["a", 1],
        ["=X()", 2],
      ],
      Empty: [],
    },
    () => 42,
  );
const run = (made: FakeWorkbook, action: (context: Any) => Promise<unknown>) => standIn(made).run(action as never);

describe("the stand-in for Excel's objects", () => {
  it("answers right code", async () => {
    const made = book();
    await run(made, async (context) => {
      context.workbook.worksheets.load("items/name");
      await context.sync();
      const [one, empty] = context.workbook.worksheets.items;
      const used = one.getUsedRangeOrNullObject();
      const none = empty.getUsedRangeOrNullObject();
      used.load("values,formulas,rowCount");
      none.load("isNullObject");
      await context.sync();
      expect([one.name, empty.name, none.isNullObject]).toEqual(["One", "Empty", true]);
      expect(used.values).toEqual([
        ["a", 1],
        [42, 2],
      ]);
      expect(used.formulas[1][0]).toBe("=X()");
      one.getRangeByIndexes(5, 1, 1, 2).values = [["x", 7]];
      expect(made.at("One", 5, 1).value).toBe(""); // waits for sync
      await context.sync();
      expect(made.at("One", 5, 2).value).toBe(7);
    });
  });

  it.each<[string, RegExp, (context: Any) => Promise<unknown>]>([
    ["reads what was never loaded", /not loaded/, async (c) => c.workbook.getActiveCell().values],
    [
      "reads before sync",
      /sync\(\) was not called|not loaded/,
      async (c) => {
        const cell = c.workbook.getActiveCell();
        cell.load("values");
        return cell.values;
      },
    ],
    [
      "reads another property than it loaded",
      /not loaded/,
      async (c) => {
        const cell = c.workbook.getActiveCell();
        cell.load("values");
        await c.sync();
        return cell.formulas;
      },
    ],
    ["loads what there is not", /no property color/, async (c) => c.workbook.getActiveCell().load("color")],
    ["reads what there is not", /no property value/, async (c) => c.workbook.getActiveCell().value],
    [
      "writes what there is not",
      /no property value/,
      async (c) => {
        c.workbook.getActiveCell().value = 1;
      },
    ],
    [
      "forgets the last sync",
      /never sent/,
      async (c) => {
        c.workbook.getActiveCell().values = [[1]];
      },
    ],
    [
      "writes an array of another size",
      /size of the range/,
      async (c) => {
        c.workbook.getActiveCell().values = [[1, 2]];
        await c.sync();
      },
    ],
    ["uses items of a collection that was not loaded", /not loaded/, async (c) => c.workbook.worksheets.items.length],
    [
      "names a sheet like another",
      /cannot be called/,
      async (c) => {
        c.workbook.worksheets.add("one");
        await c.sync();
      },
    ],
    [
      "names a sheet with more than 31 letters",
      /cannot be called/,
      async (c) => {
        c.workbook.worksheets.add("x".repeat(32));
        await c.sync();
      },
    ],
  ])("catches code that %s", async (_, problem, wrong) => {
    await expect(run(book(), wrong)).rejects.toThrow(problem);
  });

  it("catches a write to a protected sheet", async () => {
    const made = book();
    made.sheet("One").isProtected = true;
    const write = async (context: Any) => {
      context.workbook.getActiveCell().values = [[1]];
      await context.sync();
    };
    await expect(run(made, write)).rejects.toThrow(/AccessDenied/);
    expect(made.at("One", 0, 0).value).toBe("a");
  });
});
