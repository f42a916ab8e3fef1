/** Arguments handed on untouched to another function. */
import type { CellMatrix } from "../../units/cell.ts";
import type { TableParameter } from "../record/record.ts";

const MOST = 24; // more than any function takes

const handedOn = (): TableParameter<CellMatrix> => ({
  shape: "table",
  type: "anything",
  description: "An argument of that function, in its place",
  optional: true,
  default: null,
  read: (given) => given,
});

export const anything = (): Record<`argument${number}`, TableParameter<CellMatrix>> =>
  Object.fromEntries(Array.from({ length: MOST }, (_, i) => [`argument${i + 1}`, handedOn()]));
