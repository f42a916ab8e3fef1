/**
 * The only thing `npm run` ever calls. Refuses an old Node before any syntax that an old Node could stumble over is
 * loaded; everything else is in run.mjs.
 */
const LEAST = [20, 19]; // vitest and webpack of the lock file need it; package.json says the same under "engines"
const [major, minor] = process.versions.node.split(".").map(Number);
if (major < LEAST[0] || (major === LEAST[0] && minor < LEAST[1])) {
  console.error(`Node must be version ${LEAST.join(".")} or later; got ${process.versions.node}`);
  process.exitCode = 1;
} else {
  import("./run.mjs").then(({ run }) => run(process.argv.slice(2)));
}
