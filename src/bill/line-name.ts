import type { LineAnswer } from "./plan.ts";

/** A line without a name of its own is called by its place in the bill. */
export const lineName = ({ part, row }: Pick<LineAnswer, "part" | "row">): string =>
  part === "" ? `line ${row - 1}` : part;
