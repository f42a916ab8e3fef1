/** `npm test`: every check there is, each with its time; all run even when one has failed. */
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { timed } from "./timed.mjs";

/**
 * Arguments go to vitest: `npm test -- tests/units` runs the tests of one folder. Types and lint are checked while the
 * tests run, which often wait for a browser; what they say is held back until then, so that nothing is mixed up.
 */
export async function runChecks(root, args) {
  const node = (stdio, command) => ended(spawn(process.execPath, command, { cwd: root, stdio }));
  const beside = (...command) => node("pipe", command);
  const types = timed("types", () => beside(bin(root, "typescript", "tsc"), "--noEmit", "-p", "."));
  const lint = timed("lint", () => beside(bin(root, "@biomejs/biome", "biome"), "check", "--error-on-warnings"));
  const tests = timed("tests", () => node("inherit", [bin(root, "vitest", "vitest"), "run", ...args]));
  await tests;
  const failed = [];
  for (const [name, check] of Object.entries({ types, lint, tests })) {
    const { passed, said } = await check;
    if (passed) continue;
    failed.push(name);
    process.stdout.write(said);
  }
  console.error(failed.length > 0 ? `failed: ${failed.join(", ")}` : "all checks passed");
  return failed.length > 0 ? 1 : 0;
}

/** When it has ended: whether it passed, and what it said where that was not shown already. */
function ended(child) {
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream?.setEncoding("utf8").on("data", (text) => {
      said += text;
    });
  return new Promise((done) => {
    child.on("error", ({ message }) => done({ passed: false, said: message }));
    child.on("close", (status) => done({ passed: status === 0, said }));
  });
}

/** The script behind a command of a package, run by this Node: no shell, no PATH. */
function bin(root, name, command) {
  const folder = `${root}/node_modules/${name}`;
  const { bin: found } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  return `${folder}/${typeof found === "string" ? found : found[command]}`;
}
