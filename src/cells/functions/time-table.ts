import { type OwnFactor, ownFactors } from "../../calc/time/own-factor.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { showNumber } from "../../units/show.ts";
import { defineFunction } from "../record/record.ts";
import { finished } from "../tables/finished.ts";

const HEADERS = ["Station", "Jobs", "Own factor", "Low", "High", "Spread", "Note"] as const;

export const timeTable = defineFunction({
  name: "TIME.TABLE",
  question: "What do finished jobs say: by how much do the shop's minutes differ from the estimate?",
  parameters: { finished: finished() },
  long: true,
  result: { kind: "table", columns: HEADERS },
  example: {
    formula:
      '=ROUND(INDEX(SHOP.TIME.TABLE({"Station","Estimated (min)","Recorded (min)";"Brake",40,50;"Brake",60,75;"Brake",20,25}),2,3),3)',
    answer: 1.117,
  },
  source:
    "mean of ln(recorded / estimated) with prior N(0, 0.2^2), a job 0.35 (conjugate normal prior; widths chosen), three jobs at least",
  calculate: ({ finished }, { work }): CellMatrix => [
    [...HEADERS],
    ...(finished.length === 0 ? [["", "", "", "", "", "", "no finished jobs yet"]] : []),
    ...ownFactors(finished, work).map((found) => [
      found.station,
      found.jobs,
      found.factor,
      found.low,
      found.high,
      found.spread ?? "",
      noteOf(found),
    ]),
  ],
});

const noteOf = ({ outliers, isFew }: OwnFactor): string =>
  [
    ...outliers.map(
      ({ place, part, ratio }) =>
        `row ${place + 1}${part === "" ? "" : ` (${part})`} took ${showNumber(ratio, 2)} times its estimate and is left out: look at it again`,
    ),
    isFew ? "fewer than three jobs: no factor yet" : "",
  ]
    .filter(Boolean)
    .join("; ");
