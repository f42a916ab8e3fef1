import { CellError, type ErrorCode } from "./cell.ts";

/**
 * Thrown when a question cannot be answered. Carries no stack: a bill of a thousand wrong rows must stay cheap, and the
 * message already says everything. #VALUE! for wrong input, #N/A where no answer exists.
 */
export class Refusal {
  constructor(
    readonly code: Extract<ErrorCode, "#VALUE!" | "#N/A">,
    readonly message: string,
  ) {}

  toCell(): CellError {
    return new CellError(this.code, this.message);
  }
}
