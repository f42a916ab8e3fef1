import { noAnswer } from "../../units/refusal.ts";

/** The columns of machines that only times need, by their headers. */
export const MOTION = {
  openStroke: "Open stroke",
  approachSpeed: "Approach speed",
  bendSpeed: "Bend speed",
  returnSpeed: "Return speed",
  gaugeSpeed: "Gauge speed",
} as const;
export const PACE = { strokesPerMinute: "Strokes per minute", cutsPerBlank: "Cuts per blank" } as const;

/** What a table may leave out until a time is asked for. */
export function complete<T extends object>(
  given: Partial<T>,
  columns: Readonly<Record<keyof T, string>>,
  table: string,
  name: string,
): T {
  for (const [key, column] of Object.entries<string>(columns))
    if (given[key as keyof T] === undefined)
      throw noAnswer(table, `a table with a column "${column}" and a figure for ${name}`, "none");
  return given as T;
}
