/** Why a file is not recalculated. The name is part of the report's contract; the message is for the reader. */
export type RefusalReason =
  | "not-a-zip"
  | "damaged"
  | "encrypted"
  | "signed"
  | "strict-namespace"
  | "external-entity"
  | "too-large"
  | "unsafe-path"
  | "not-a-workbook"
  | "unreadable"
  | "time"
  | "memory"
  | "internal";

export class FileRefusal {
  constructor(
    readonly reason: RefusalReason,
    readonly message: string,
  ) {}
}

export function refuse(reason: RefusalReason, message: string): never {
  throw new FileRefusal(reason, message);
}
