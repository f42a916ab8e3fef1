/** A tool of the shop by its name, as it stands in its table. */
import { type CellValue, isBlank } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";

const read = (given: CellValue, name: string): string | number => {
  if (isBlank(given)) throw wrong(name, "given", given);
  if (typeof given === "string") return given.trim();
  if (typeof given === "number" && Number.isFinite(given)) return given;
  throw wrong(name, "a tool's name", given);
};

export const toolName = (description: string): CellParameter<string | number> => ({
  shape: "cell",
  type: "tool",
  description,
  optional: false,
  default: null,
  read,
});

export const optionalToolName = (description: string): CellParameter<string | number | undefined> => ({
  ...toolName(description),
  optional: true,
  read: (given, name) => (isBlank(given) ? undefined : read(given, name)),
});
