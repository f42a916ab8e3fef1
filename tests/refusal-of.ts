import { Refusal } from "../src/units/refusal.ts";

/** The sentence a call is refused with; "answered" where it is not. */
export function refusalOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof Refusal) return error.message;
    throw error;
  }
  return "answered";
}
