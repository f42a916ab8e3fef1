import { expect, test } from "vitest";
import { cutNote } from "../../../src/bill/cut/cuts-in-order.ts";
import { cutList } from "../../../src/calc/cutting/cut-list.ts";
import type { Cut, PieceKind } from "../../../src/calc/cutting/types.ts";
import { mm } from "../../../src/units/quantity.ts";

const piece = (id: string, kind: PieceKind) => ({ id, kind, w: mm(100), h: mm(914.4) });

const noted = (by: Cut["by"], falls: PieceKind, stays: PieceKind, stage: Cut["stage"] = "cross") => {
  const cut: Cut = {
    seq: 1,
    setting: by === "gauge" ? 3 : 0,
    stage,
    piece: "1",
    copies: 1,
    axis: "h",
    gauge: by === "gauge" ? mm(914.4) : null,
    by,
    measure: mm(914.4),
    visit: 1,
    length: mm(100),
    falls: [piece("1.1", falls)],
    stays: piece("1.2", stays),
    strokes: 1,
    turn: false,
  };
  return cutNote(cutList({ cuts: [cut] })[0]!, "in");
};

test("a cut by the back gauge says its setting; any other says what is measured, and on which side of the blade", () => {
  expect(noted("gauge", "blank", "scrap")).toBe("cross, setting 3");
  expect(noted("front stop", "scrap", "blank")).toBe("cross, front stop: 36 in on table");
  expect(noted("mark", "remnant", "part")).toBe("cross, to a mark: 36 in on table");
  expect(noted("mark", "part", "part")).toBe("cross, to a mark: 36 in drops");
  expect(noted("mark", "scrap", "part", "trim")).toBe("trim, to a mark: 36 in drops");
});
