/** `npm test`: every check there is, one after the other, each with its time; all run even when one has failed. */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { timed } from "./timed.mjs";

/** Arguments go to vitest: `npm test -- tests/units` runs the tests of one folder. */
export function runChecks(root, args) {
  const node = (...command) => spawnSync(process.execPath, command, { cwd: root, stdio: "inherit" }).status === 0;
  const steps = {
    types: () => node(bin(root, "typescript", "tsc"), "--noEmit", "-p", "."),
    lint: () => node(bin(root, "@biomejs/biome", "biome"), "check", "--error-on-warnings"),
    tests: () => node(bin(root, "vitest", "vitest"), "run", ...args),
  };
  const failed = Object.entries(steps).flatMap(([name, run]) => (timed(name, run) ? [] : [name]));
  console.error(failed.length > 0 ? `failed: ${failed.join(", ")}` : "all checks passed");
  return failed.length > 0 ? 1 : 0;
}

/** The script behind a command of a package, run by this Node: no shell, no PATH. */
function bin(root, name, command) {
  const folder = `${root}/node_modules/${name}`;
  const { bin: found } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  return `${folder}/${typeof found === "string" ? found : found[command]}`;
}
