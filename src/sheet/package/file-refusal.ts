/** Why a file is not recalculated. The name is part of the report's contract; the message is for the reader. */
type RefusalReason =
  | "not-a-zip"
  | "damaged"
  | "encrypted"
  | "signed"
  | "external-entity"
  | "too-large"
  | "unsafe-path"
  | "not-a-workbook"
  | "unreadable"
  | "unwritable"
  | "time"
  | "memory"
  | "internal";

export class FileRefusal {
  constructor(
    readonly reason: RefusalReason,
    readonly message: string,
  ) {}
}

/** In the one grammar of refusals: what, the rule, what was found, and where it helps what to do. */
export function refuse(
  reason: RefusalReason,
  subject: string,
  rule: string,
  got: string | number,
  remedy?: string,
): never {
  throw refusal(reason, subject, rule, got, remedy);
}

export const refusal = (
  reason: RefusalReason,
  subject: string,
  rule: string,
  got: string | number,
  remedy?: string,
): FileRefusal =>
  new FileRefusal(reason, `${subject} must be ${rule}; got ${got}${remedy === undefined ? "" : `; ${remedy}`}`);
