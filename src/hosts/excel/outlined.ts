/**
 * The functions bundle is loaded with every workbook, so it holds only the outline of a long record: all that the guide
 * and the registration need, but not its calculation. That one is in the worker's file, loaded when it is first asked.
 */
import type { AnyRecord, Parameter } from "../../cells/record/record.ts";
import { CellError } from "../../units/cell.ts";
import { message } from "../../units/refusal.ts";

/** Answered by an outline: the call belongs into the worker. Seen in a cell only where a runtime has no workers. */
export const ELSEWHERE = new CellError(
  "#N/A",
  message("runtime", "the one that Excel shares with the pane", "one without workers"),
);

export type Outline = Omit<AnyRecord, "calculate" | "parameters"> & {
  readonly parameters: Readonly<Record<string, Omit<Parameter<unknown>, "read">>>;
};

/** What of a record is plain data. */
export const outlineOf = ({ calculate: _, parameters, ...rest }: AnyRecord): Outline => ({
  ...rest,
  parameters: Object.fromEntries(
    Object.entries(parameters).map(([key, { read: __, ...parameter }]) => [key, parameter]),
  ),
});

const elsewhere = (): never => {
  throw ELSEWHERE;
};

/** A record again, whose calls all say that they belong elsewhere. */
export const outlined = ({ parameters, ...rest }: Outline): AnyRecord => ({
  ...rest,
  parameters: Object.fromEntries(
    Object.entries(parameters).map(([key, parameter]) => [key, { ...parameter, read: elsewhere }]),
  ) as unknown as AnyRecord["parameters"],
  calculate: elsewhere,
});
