/** What is said at the head of the page, and running what a person asked for, or saying why not. */
import { missing } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { Ended } from "./engine.ts";

export const say = (...words: (Node | string)[]) =>
  (document.getElementById("message") ?? missing()).replaceChildren(...words);
/** What may be done next, as a button beside what is said. */
export const offer = (words: string, action: () => Promise<void>): HTMLElement => {
  const made = element("button", { type: "button" }, words);
  made.addEventListener("click", () => void attempt(action));
  return made;
};
/**
 * Runs what a person asked for; what goes wrong is said, being stopped by them is not a fault. Answers whether it was
 * done.
 */
export async function attempt(action: () => Promise<unknown>): Promise<boolean> {
  try {
    await action();
    return true;
  } catch (problem) {
    say(problem instanceof Ended ? "Stopped; nothing was changed." : (problem as Error).message);
    return false;
  }
}
