/** CUT.LIST: every cut at the shear in order. */

import { cutNote, cutsInOrder } from "../../bill/cut/cuts-in-order.ts";
import { patternIdOf } from "../../bill/cut/plan-cutting.ts";
import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";

export function cutListRows(plan: BillPlan): CellMatrix {
  const rows = plan.groups.flatMap((group) =>
    cutsInOrder(group).map(
      (cut): SpillRow => ({
        Cut: cut.seq,
        Pattern: patternIdOf(cut.piece),
        Material: group.material.name,
        Thickness: group.thickness,
        Shear: group.shear?.name,
        Piece: cut.copies > 1 ? `${cut.piece} (${cut.copies} of them)` : cut.piece,
        Gauge: cut.gauge ?? undefined,
        "Cut length": cut.length,
        Strokes: cut.strokes,
        Drops: cut.falls,
        "On table": cut.stays,
        Turn: cut.turn ? "turn" : "",
        Note: cutNote(cut, plan.shop.system),
      }),
    ),
  );
  return spill("CUT.LIST", rows, plan.shop.system);
}
