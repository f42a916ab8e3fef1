/** Shows that something is being calculated once it takes half a second, with the seconds so far and a way to end it. */
const AFTER_MS = 500;

export function progressAfter(bar: HTMLElement, words: HTMLElement): (isBusy: boolean) => void {
  let since: number | undefined;
  let timer: ReturnType<typeof setInterval> | undefined;
  return (isBusy) => {
    if (isBusy === (since !== undefined)) return;
    clearInterval(timer);
    since = isBusy ? performance.now() : undefined;
    if (!isBusy) {
      bar.hidden = true;
      return;
    }
    timer = setInterval(() => {
      bar.hidden = false;
      words.textContent = `Calculating, ${Math.round((performance.now() - since!) / 1000)} s`;
    }, AFTER_MS);
  };
}
