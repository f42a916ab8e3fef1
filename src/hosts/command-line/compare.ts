/** `shop compare OLD.xlsx NEW.xlsx [--json]`: two states of one job. Exit 0 where they are equal, 1 where not, 2 refused. */
import { type BillChanges, type Difference, planChanges } from "../../bill/changes/plan-changes.ts";
import { cellOf, unitOf } from "../../cells/bill/changes.ts";
import type { CellValue } from "../../units/cell.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { Command } from "./command.ts";
import { orRefused, planOfWorkbook } from "./job-files.ts";
import { readArguments, UsageError } from "./usage.ts";
import { WIDTH, wrapped } from "./wrapped.ts";

const CHANGED = 1;
const PART_WIDTH = 12;
const CHANGE_WIDTH = 9;

export const compare: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, { json: { type: "boolean" } });
  const [before, after] = positionals;
  if (before === undefined || after === undefined || positionals.length > 2)
    throw new UsageError("compare takes OLD.xlsx and NEW.xlsx");
  return orRefused(context, () => {
    const [old, now] = [planOfWorkbook(before, context), planOfWorkbook(after, context)];
    const { system } = now.shop;
    const changes = planChanges(old, now);
    const isEqual = changes.lines.length === 0 && changes.job.length === 0;
    context.out(`${values.json ? JSON.stringify(asJson(changes, system)) : words(changes, system).join("\n")}\n`);
    return isEqual ? 0 : CHANGED;
  });
};

const asJson = ({ lines, job }: BillChanges, system: UnitSystem) => {
  const differences = (found: readonly Difference[]) =>
    found.map(({ what, before, after }) => ({
      what,
      before: orNull(cellOf(before, system)),
      after: orNull(cellOf(after, system)),
      unit: unitOf(before, system),
    }));
  return {
    version: 1,
    lines: lines.map(({ part, change, differences: found }) => ({ part, change, differences: differences(found) })),
    job: differences(job),
  };
};
const orNull = (cell: CellValue): CellValue => (cell === "" ? null : cell);

function words({ lines, job }: BillChanges, system: UnitSystem): string[] {
  const count = (kind: string) => lines.filter(({ change }) => change === kind).length;
  if (lines.length === 0 && job.length === 0) return ["Nothing has changed."];
  return [
    `${count("added")} ${count("added") === 1 ? "line" : "lines"} added, ${count("gone")} gone, ${count("changed")} changed`,
    ...lines.flatMap(({ part, change, differences }) => {
      const head = `${part.padEnd(PART_WIDTH)}${change.padEnd(CHANGE_WIDTH)}`;
      return wrapped(
        head +
          differences
            .filter(isTold)
            .map((each) => said(each, system, change))
            .join(", "),
        WIDTH,
        PART_WIDTH + CHANGE_WIDTH,
      );
    }),
    ...wrapped(
      `${"Job".padEnd(PART_WIDTH)}${job.map((each) => said(each, system, "changed")).join(", ") || "the same"}`,
      WIDTH,
      PART_WIDTH,
    ),
  ];
}

/** Of a line that comes, goes or could not be read before, a person wants these. */
const FIRST = [
  "Quantity",
  "Material",
  "Thickness",
  "Status",
  "Flat length",
  "Flat width",
  "Price each",
  "Price",
  "Done",
];
const isTold = ({ what, before, after }: Difference): boolean =>
  (before.value !== undefined && after.value !== undefined) || FIRST.includes(what);

/** "Quantity 10 -> 20", of a line that comes or goes its one side alone. */
function said({ what, before, after }: Difference, system: UnitSystem, change: string): string {
  const [was, is] = [shown(before, system), shown(after, system)];
  return `${what} ${change === "added" ? is : change === "gone" ? was : `${was} -> ${is}`}`;
}

function shown(value: Difference["before"], system: UnitSystem): string {
  const cell = cellOf(value, system);
  if (cell === "") return "none";
  if (typeof cell !== "number") return String(cell);
  switch (value.kind) {
    case "money":
      return cell.toFixed(2);
    case "date":
      return new Date(Math.round((cell - EPOCH) * MINUTES) * 60_000).toISOString().slice(0, 16).replace("T", " ");
    case "min":
    case "mass":
      return `${cell.toFixed(1)} ${unitOf(value, system)}`;
    case "length":
      return `${cell.toFixed(system === "in" ? 3 : 2)} ${unitOf(value, system)}`;
    default:
      return String(cell);
  }
}
/** Day of the worksheet on which 1970 begins, and minutes of a day. */
const EPOCH = 25_569;
const MINUTES = 1440;
