/**
 * What can be run, and the source file it begins with. Paths are from src; the task runs in the caller's folder, or
 * `inRoot`. `alone`: it needs no package but those that `npm ci --omit=dev` installs.
 */
export const TASKS = {
  demo: { source: "tools/demo/main.ts", alone: true },
  shop: { source: "hosts/command-line/main.ts", alone: true },
  generate: { source: "tools/generate/main.ts", inRoot: true },
  sample: { source: "tools/sample/main.ts", inRoot: true }, // run by generate, as its last step
  record: { source: "tools/generate/record.ts", inRoot: true },
  build: { source: "tools/package/build.ts", inRoot: true },
  package: { source: "tools/package/main.ts", inRoot: true },
  view: { source: "tools/view/main.ts" },
  excel: { source: "tools/excel/main.ts", inRoot: true },
  "bench:airbend": { source: "tools/bench/airbend.ts" },
  "bench:cutting": { source: "tools/bench/cutting.ts" },
  "bench:recalc": { source: "tools/bench/recalc.ts" },
  "bench:order": { source: "tools/bench/order.ts" },
  "bench:view": { source: "tools/bench/view.ts" },
  "bench:bill": { source: "tools/bench/bill.ts" },
  "bench:scheduling": { source: "tools/bench/scheduling.ts" },
  "bench:week": { source: "tools/bench/week.ts" },
  fuzz: { source: "tools/fuzz/calls.ts" },
  "mutate:constants": { source: "tools/mutate/main.ts", inRoot: true },
  "fuzz:files": { source: "tools/fuzz/files.ts" },
  "bench:functions": { source: "tools/bench/functions.ts" },
  "bench:cutting-shop": { source: "tools/bench/cutting-shop.ts" },
  "bench:cutting-replay": { source: "tools/bench/cutting-replay.ts" },
  bench: { source: "tools/bench/all.ts", inRoot: true },
  mutate: { source: "tools/mutate/mutation.ts", inRoot: true },
  advisories: { source: "tools/advisories/main.ts", inRoot: true },
};
