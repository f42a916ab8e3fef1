/**
 * npm run advisories
 * Asks the package registry, through npm, for known advisories about what is shipped. Exit 0 none, 1 some, 2 not run.
 */
import { spawnSync } from "node:child_process";
import { verdictOf } from "./verdict.ts";

const npm = process.env["npm_execpath"];
const [command, first] = npm?.endsWith("js") ? [process.execPath, [npm]] : ["npm", []];
const { stdout } = spawnSync(command, [...first, "audit", "--omit=dev", "--json"], {
  encoding: "utf8",
  shell: process.platform === "win32" && first.length === 0,
  stdio: ["ignore", "pipe", "ignore"],
});
const { line, code } = verdictOf(stdout ?? "");
console.log(line);
process.exitCode = code;
