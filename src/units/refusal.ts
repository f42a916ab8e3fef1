import { CellError, type CellValue, type ErrorCode } from "./cell.ts";
import { showGiven } from "./show.ts";

/** #VALUE! for wrong input, #N/A where no answer exists. Only these two show a message in Excel. */
type RefusalCode = Extract<ErrorCode, "#VALUE!" | "#N/A">;

/**
 * Thrown when a question cannot be answered. Carries no stack: a bill of a thousand wrong rows must stay cheap, and the
 * message already says everything.
 */
export class Refusal {
  constructor(
    readonly code: RefusalCode,
    readonly message: string,
  ) {}

  toCell(): CellError {
    return new CellError(this.code, this.message);
  }
}

/** The one grammar of all refusals: `<parameter> must be <rule>; got <value>[; <hint>]`. `got` is already in words. */
export const message = (parameter: string, rule: string, got: string, hint?: string): string =>
  `${parameter} must be ${rule}; got ${got}${hint ? `; ${hint}` : ""}`;

/** Wrong input. */
export const wrong = (parameter: string, rule: string, got: CellValue | undefined, hint?: string): Refusal =>
  new Refusal("#VALUE!", message(parameter, rule, showGiven(got), hint));

/** Right input, but no answer exists: outside a formula's range, no die, not in the data. `got` is already in words. */
export const noAnswer = (parameter: string, rule: string, got: string, hint?: string): Refusal =>
  new Refusal("#N/A", message(parameter, rule, got, hint));
