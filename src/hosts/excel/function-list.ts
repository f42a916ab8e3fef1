/**
 * Excel keeps its own copy of functions.json for up to 24 hours, so after an update it may call the functions by the
 * list of another version. The number of arguments a call brings tells.
 */
let seenAt: string | undefined;

/** `brought` leaves the invocation object out; `declared` is what this version's list says. */
export function noteCall(name: string, brought: number, declared: number): void {
  if (brought !== declared) seenAt ??= name;
}

/** The function whose call was the first to come by another list, if any did. */
export const calledByAnotherList = (): string | undefined => seenAt;

/** Stands behind the version in the cell; the pane says the same. */
export const OTHER_LIST = "Excel still uses the function list of another version: close every Excel window and reopen";
