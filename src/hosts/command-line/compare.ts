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
    const [{ plan: old }, { plan: now }] = [planOfWorkbook(before, context), planOfWorkbook(after, context)];
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
      const unread = couldNotBeRead(change, differences);
      const isOneSided = change !== "changed" || unread !== "";
      const told = isOneSided ? differences.filter(({ what }) => FIRST.includes(what)) : differences;
      return wrapped(
        `${part.padEnd(PART_WIDTH)}${change.padEnd(CHANGE_WIDTH)}${unread}${told.map((each) => said(each, system, isOneSided)).join(", ")}`,
        WIDTH,
        PART_WIDTH + CHANGE_WIDTH,
      );
    }),
    ...wrapped(
      `${"Job".padEnd(PART_WIDTH)}${job.map((each) => said(each, system, false)).join(", ") || "the same"}`,
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
/** Of a line that is there on both sides and has a quantity on one: why the other side of everything is missing. */
function couldNotBeRead(change: string, differences: readonly Difference[]): string {
  const quantity = differences.find(({ what }) => what === "Quantity");
  if (change !== "changed" || !quantity) return "";
  if (quantity.before.value === undefined) return "could not be read before; now ";
  return quantity.after.value === undefined ? "cannot be read any more; before " : "";
}

/** "Quantity 10 -> 20"; of a line that has one side alone "Quantity 20", and both of its status. */
function said({ what, before, after }: Difference, system: UnitSystem, isOneSided: boolean): string {
  const [was, is] = [shown(before, system), shown(after, system)];
  if (isOneSided && before.value === undefined) return `${what} ${is}`;
  return isOneSided && after.value === undefined ? `${what} ${was}` : `${what} ${was} -> ${is}`;
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
