import { cutsInOrder } from "../../bill/cut/cuts-in-order.ts";
import { offcutsOf } from "../../bill/cut/offcuts.ts";
import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const cutList = defineBillFunction({
  name: "CUT.LIST",
  question: "In which order is every cut made at the shear?",
  example: { formula: `=INDEX(SHOP.CUT.LIST(${EXAMPLE_CUTTERS}),2,1)`, answer: 1 },
  source: "cuts in an order of few settings, lifts and stacks, every plan replayed cut by cut (derived)",
  answer: cutListRows,
});

/** Equal cuts on alike pieces are one row. */
function cutListRows({ groups, shop }: BillPlan): CellMatrix {
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
