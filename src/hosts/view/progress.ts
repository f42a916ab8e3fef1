import { missing } from "../../units/certain.ts";

/** Says that something is being calculated once it takes half a second, with the seconds so far and a way to end it. */
const AFTER_MS = 500;

/** The room for it is kept: nothing moves. */
export function progressAfter(words: HTMLElement, stop: HTMLElement): (isBusy: boolean) => void {
  let since: number | undefined;
  let timer: ReturnType<typeof setInterval> | undefined;
  return (isBusy) => {
    if (isBusy === (since !== undefined)) return;
    clearInterval(timer);
    since = isBusy ? performance.now() : undefined;
    if (!isBusy) {
      words.textContent = "";
      stop.hidden = true;
      return;
    }
    timer = setInterval(() => {
      stop.hidden = false;
      words.textContent = `Recalculating, ${Math.round((performance.now() - (since ?? missing())) / 1000)} s`;
    }, AFTER_MS);
  };
}
