/** Says on standard error how long a step took. */
const say = (name, start) => console.error(`${name}: ${((performance.now() - start) / 1000).toFixed(1)} s`);

export function timed(name, action) {
  const start = performance.now();
  const result = action();
  if (typeof result?.then !== "function") {
    say(name, start);
    return result;
  }
  return result.finally(() => say(name, start));
}
