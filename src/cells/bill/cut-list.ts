/** CUT.LIST: every cut at the shear in order, equal cuts on alike pieces as one row. */

import { cutsInOrder } from "../../bill/cut/cuts-in-order.ts";
import { offcutsOf } from "../../bill/cut/offcuts.ts";
import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";

export function cutListRows({ groups, shop }: BillPlan): CellMatrix {
  const offcuts = offcutsOf(groups);
  const rows = groups.flatMap((group) =>
    cutsInOrder(group, shop, offcuts).map(
      ({ row, piece, onTape, drops, onTable, lift, note }): SpillRow<"CUT.LIST"> => ({
        Cut: row.seq,
        Pattern: row.pattern,
        Material: group.material.name,
        Thickness: group.thickness,
        Shear: group.shear?.name,
        Piece: piece,
        Gauge: row.measure,
        "Cut length": row.length,
        Strokes: row.strokes,
        Drops: drops,
        "On table": onTable,
        Turn: row.turn ? "turn" : "",
        "Set by": row.by,
        "On tape": onTape,
        Lift: lift,
        Note: note,
      }),
    ),
  );
  return spill("CUT.LIST", rows, shop.system);
}
