/** Finished jobs: what a line was estimated at a station, and what the shop has recorded. */
import { type FinishedWork, LEAST_JOBS } from "../../calc/time/own-factor.ts";
import { seconds } from "../../calc/time/seconds.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import { type Columns, positive, type Row, readTable } from "../parameters/read-table.ts";
import { anyTable, isEmptyRange } from "../parameters/shop-table.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";

const FINISHED_COLUMNS = {
  part: { headers: ["Part", "Line", "Job"], kind: "text", optional: true },
  station: { headers: ["Station"], kind: "text" },
  estimated: { headers: ["Estimated"], kind: "seconds", rule: positive },
  recorded: { headers: ["Recorded"], kind: "seconds", optional: "cell", rule: positive },
  // An estimate that already held a factor of the shop's own is taken back to what it was without it.
  own: { headers: ["Own factor"], kind: "number", optional: true, rule: positive },
} as const satisfies Columns;

type FinishedRow = Row<typeof FINISHED_COLUMNS>;
type Recorded = FinishedRow & { readonly recorded: number };

const asFinished = ({ row, part, station, estimated, recorded, own }: Recorded, count: number): FinishedWork => ({
  part: part ?? "",
  station,
  estimated: seconds(estimated / (own ?? 1)),
  recorded: seconds(recorded),
  ...(row - 1 === count ? {} : { place: row - 1 }),
});

/** A row without recorded minutes is of work that waits for them. */
const isRecorded = (row: FinishedRow): row is Recorded => row.recorded !== undefined;

/** Rows of the range that wait, the header is row 1. */
export const waitingRows = (given: CellMatrix, { system }: Pick<ReadContext, "system">): number[] =>
  readTable(given, FINISHED_COLUMNS, "finished", system)
    .filter((row) => !isRecorded(row))
    .map(({ row }) => row);

const FINISHED = anyTable(
  "finished table",
  `Finished jobs, a line and station each row, ${LEAST_JOBS} or more of a station; a header alone for none yet`,
  FINISHED_COLUMNS,
  (row) => row,
);

/** A workbook has the table before its first job is finished. */
export const finished = (): TableParameter<FinishedWork[]> => ({
  ...FINISHED,
  read: (given, name, context) => {
    if (isEmptyRange(given)) throw wrong(name, "given", null);
    return FINISHED.read(given, name, context)
      .filter(isRecorded)
      .map((row, i) => asFinished(row, i + 1));
  },
});
