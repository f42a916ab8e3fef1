/** Brings the arguments of a call into shape: one slot per parameter, and what takes part in broadcasting. */
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { message, Refusal } from "../../units/refusal.ts";
import { isSingle, shapeOf } from "../record/broadcast.ts";
import { type AnyParameter, type AnyRecord, publicName } from "../record/record.ts";
import { asMatrix } from "./as-matrix.ts";

export type Argument = CellValue | CellMatrix | undefined;

export interface Slot {
  readonly key: string;
  readonly name: string;
  readonly parameter: AnyParameter;
  readonly matrix: CellMatrix;
  /** A list whose range is one part's list; it does not take part in broadcasting. */
  readonly wholeList: boolean;
}

/** One slot per parameter, with the argument as a matrix. */
export function arrange(record: AnyRecord, given: readonly Argument[]): Slot[] {
  const parameters = Object.entries(record.parameters);
  if (given.length > parameters.length)
    throw new Refusal(
      "#VALUE!",
      message("arguments", `at most ${parameters.length} for ${record.name}`, String(given.length)),
    );
  const lists = parameters.map(([key, { shape }], i) =>
    shape === "list" ? asMatrix(given[i], publicName(key)) : undefined,
  );
  // One list argument with a part in every cell makes the others lists of parts too: {90;90} beside {"2;3";"2;4"}.
  const manyParts = lists.some((matrix) => matrix && !isOneList(matrix));
  const slots = parameters.map(([key, parameter], i): Slot => {
    const matrix = lists[i] ?? asMatrix(given[i], publicName(key));
    const wholeList = lists[i] !== undefined && (isSingle(shapeOf(matrix)) || !manyParts);
    return { key, name: publicName(key), parameter, matrix, wholeList };
  });
  refuseListBesideRange(slots);
  return slots;
}

/** A range is one part's list unless its cells hold lists as text, one part a cell. */
function isOneList(matrix: CellMatrix): boolean {
  if (isSingle(shapeOf(matrix))) return true;
  return !matrix.some((row) => row.some((cell) => typeof cell === "string" && cell.includes(";")));
}

function refuseListBesideRange(slots: readonly Slot[]): void {
  const list = slots.find(({ wholeList, matrix }) => wholeList && !isSingle(shapeOf(matrix)));
  if (!list) return;
  const other = slots.find((slot) => broadcasts(slot) && !isSingle(shapeOf(slot.matrix)));
  if (other)
    throw new Refusal(
      "#VALUE!",
      message(
        list.name,
        `one cell a part where another argument is a range (${other.name})`,
        "a range",
        'write each part\'s list as text in one cell: "2; 3.5; 2"',
      ),
    );
}

export const isTable = ({ parameter }: Slot): boolean => parameter.shape === "table" || parameter.shape === "data";
export const broadcasts = (slot: Slot): boolean => !isTable(slot) && !slot.wholeList;
