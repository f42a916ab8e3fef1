import { spawn, spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const repository = process.cwd();
const pretend = (version: string): string =>
  `data:text/javascript,Object.defineProperty(process,"versions",{value:{...process.versions,node:"${version}"}})`;

/** A project of one task that tells what it was given: the starter's own files, everything else made up. */
const SHOP = `
import { readFileSync } from "node:fs";
import { word } from "./word.ts";
const input = readFileSync(0, "utf8");
console.log(JSON.stringify({ word, args: process.argv.slice(2), folder: process.cwd(), root: process.env["PROJECT_ROOT"], input }));
process.exitCode = 7;
`;

let root = "";
const env = { ...process.env, INIT_CWD: undefined };
const start = (args: string[], options: { cwd?: string; input?: string; env?: object } = {}) =>
  spawnSync(process.execPath, [join(root, "src/tools/start/start.mjs"), ...args], {
    cwd: root,
    input: "",
    encoding: "utf8",
    ...options,
    env: { ...env, ...options.env } as NodeJS.ProcessEnv,
  });
const source = (name: string) => join(root, "src/hosts/command-line", name);

beforeAll(() => {
  root = realpathSync(mkdtempSync(join(tmpdir(), "starter-")));
  cpSync(join(repository, "src/tools/start"), join(root, "src/tools/start"), { recursive: true });
  mkdirSync(source("."), { recursive: true });
  mkdirSync(join(root, "parts"));
  writeFileSync(source("main.ts"), SHOP);
  writeFileSync(source("word.ts"), 'export const word: string = "first";\n');
  mkdirSync(join(root, "src/tools/view"), { recursive: true });
  writeFileSync(join(root, "src/tools/view/main.ts"), 'console.log("a task for developing");\n');
  writeFileSync(join(root, "tsconfig.json"), "{}\n");
  writeFileSync(join(root, "package.json"), '{"type":"module"}\n');
  // One package, already there: npm's own record agrees with the lock file, so nothing is fetched.
  const lock = {
    packages: { "": { dependencies: { esbuild: "*" } }, "node_modules/esbuild": { version: "1.2.3" } },
  };
  writeFileSync(join(root, "package-lock.json"), JSON.stringify(lock));
  mkdirSync(join(root, "node_modules"));
  writeFileSync(join(root, "node_modules/.package-lock.json"), JSON.stringify(lock));
  symlinkSync(join(repository, "node_modules/esbuild"), join(root, "node_modules/esbuild"), "junction");
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

describe("the starter", () => {
  it.each(["18.20.4", "20.18.3", "16.0.0"])("refuses Node %s by name", (version) => {
    const run = spawnSync(process.execPath, ["--import", pretend(version), "src/tools/start/start.mjs", "shop"], {
      encoding: "utf8",
    });
    expect(run.status).toBe(1);
    expect(run.stderr).toContain(`Node must be version 20.19 or later; got ${version}`);
    expect(run.stdout).toBe("");
  });

  it.each([["nonsense"], [], ["constructor"]])("refuses a task it does not know: %s", (...args) => {
    const run = start(args);
    expect(run.status).toBe(64);
    expect(run.stderr).toMatch(/^task must be one of test, demo, shop/);
  });

  it("passes arguments, standard input and the exit code through; its own words go to standard error", () => {
    const run = start(["shop", "calc", "--json", "=1+1", "two words"], { input: "=2\n=3\n" });
    expect(JSON.parse(run.stdout)).toEqual({
      word: "first",
      args: ["calc", "--json", "=1+1", "two words"],
      folder: root,
      root,
      input: "=2\n=3\n",
    });
    expect(run.status).toBe(7);
    expect(run.stderr).toMatch(/^build: /);
  });

  it("runs the task in the caller's folder, by npm or directly", () => {
    const parts = join(root, "parts");
    expect(JSON.parse(start(["shop"], { cwd: parts }).stdout).folder).toBe(parts);
    expect(JSON.parse(start(["shop"], { env: { INIT_CWD: parts } }).stdout).folder).toBe(parts);
  });

  it("builds once, and again when a source has changed", () => {
    expect(start(["shop"]).stderr).toBe("");
    writeFileSync(source("word.ts"), 'export const word: string = "second";\n');
    const run = start(["shop"]);
    expect(run.stderr).toMatch(/^build: /);
    expect(JSON.parse(run.stdout).word).toBe("second");
    expect(start(["shop"]).stderr).toBe("");
  });

  it("a touched file with the same contents needs no build", () => {
    utimesSync(source("word.ts"), new Date(), new Date(Date.now() + 5000));
    expect(start(["shop"]).stderr).toBe("");
  });

  it("a source that does not build says so and leaves no half build", () => {
    const sound = readFileSync(source("word.ts"), "utf8");
    writeFileSync(source("word.ts"), "export const word = ;\n");
    const run = start(["shop"]);
    expect(run.status).toBe(70);
    expect(run.stdout).toBe("");
    expect(run.stderr).toContain("main.ts must build");
    writeFileSync(source("word.ts"), sound);
    expect(start(["shop"]).status).toBe(7);
  });

  it("two first builds at once both run, and neither reads half of the other's", async () => {
    writeFileSync(source("word.ts"), 'export const word: string = "third";\n');
    const runs = Array.from(
      { length: 3 },
      () =>
        new Promise<string>((resolve) => {
          const child = spawn(process.execPath, [join(root, "src/tools/start/start.mjs"), "shop"], {
            cwd: root,
            stdio: ["ignore", "pipe", "ignore"],
          });
          let text = "";
          child.stdout.on("data", (part) => {
            text += part;
          });
          child.on("close", () => resolve(text));
        }),
    );
    for (const text of await Promise.all(runs)) expect(JSON.parse(text).word).toBe("third");
  });
});

describe("installing", () => {
  const mark = () => join(root, "node_modules/.installed");
  const helper = () => join(root, "node_modules/helper");
  /** A stand-in for npm that notes how it was called and keeps the one development package or not: no network. */
  const fakeNpm = (status: number, milliseconds = 0) => {
    const file = join(root, "npm-stand-in.js");
    writeFileSync(
      file,
      `import { appendFileSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
const helper = ${JSON.stringify(helper())};
console.log("from npm");
appendFileSync(${JSON.stringify(join(root, "npm-calls"))}, process.argv.slice(2).join(" ") + "\\n");
rmSync(helper, { recursive: true, force: true });
if (process.argv.includes("--include=dev")) mkdirSync(helper);
if (process.argv.includes("--include=dev") && ${status} === 0) writeFileSync(helper + "/package.json", "{}");
setTimeout(() => process.exit(${status}), ${milliseconds});`,
    );
    return { npm_execpath: file };
  };
  const calls = () => {
    const file = join(root, "npm-calls");
    const lines = existsSync(file) ? readFileSync(file, "utf8").trim().split("\n") : [];
    rmSync(file, { force: true });
    return lines.map((line) => line.split(" ").slice(0, 2).join(" "));
  };
  /** The installs that a task caused. */
  const installs = (task: "shop" | "view", status = 0) => {
    start([task], { env: fakeNpm(status) });
    return calls();
  };
  const forget = () => {
    rmSync(mark(), { force: true });
    rmSync(join(root, "node_modules/.package-lock.json"), { force: true });
  };
  const changeLock = () => {
    const lock = join(root, "package-lock.json");
    writeFileSync(lock, `${readFileSync(lock, "utf8")}\n`);
  };

  beforeAll(() => {
    const lock = {
      packages: {
        "": { dependencies: { esbuild: "*" }, devDependencies: { helper: "*" } },
        "node_modules/esbuild": { version: "1.2.3" },
        "node_modules/helper": { version: "4.5.6", dev: true },
      },
    };
    writeFileSync(join(root, "package-lock.json"), JSON.stringify(lock));
  });

  it("happens when the mark is missing, from the lock file, runs no script, on standard error", () => {
    forget();
    const run = start(["shop"], { env: fakeNpm(0) });
    expect(readFileSync(join(root, "npm-calls"), "utf8")).toMatch(/^ci --omit=dev --ignore-scripts /);
    expect(calls()).toHaveLength(1);
    expect(run.stdout).not.toContain("from npm");
    expect(run.stderr).toContain("from npm");
    expect(run.stderr).toMatch(/^install of what it runs on: /m);
    expect(run.status).toBe(7);
    expect(installs("shop")).toEqual([]);
  });

  it("leaves the development packages for the task that needs them, which installs once for all", () => {
    forget();
    expect(installs("shop")).toEqual(["ci --omit=dev"]);
    expect(installs("view")).toEqual(["ci --include=dev"]);
    expect(installs("view")).toEqual([]);
    expect(installs("shop")).toEqual([]);
  });

  it("is whole at once when such a task comes first, and stays whole when the lock file changes", () => {
    forget();
    expect(installs("view")).toEqual(["ci --include=dev"]);
    changeLock();
    expect(installs("shop")).toEqual(["ci --include=dev"]);
    expect(installs("view")).toEqual([]);
  });

  it("of development packages that was interrupted is done again, and is not taken for a whole one before", () => {
    forget();
    installs("shop");
    expect(installs("view", 3)).toEqual(["ci --include=dev"]);
    expect(existsSync(mark())).toBe(false);
    expect(installs("shop")).toEqual(["ci --omit=dev"]);
    expect(installs("view")).toEqual(["ci --include=dev"]);
    expect(existsSync(join(helper(), "package.json"))).toBe(true);
  });

  it("happens again when the lock file changes or a package has gone", () => {
    forget();
    installs("shop");
    changeLock();
    expect(installs("shop")).toEqual(["ci --omit=dev"]);
    rmSync(join(root, "node_modules/esbuild"), { recursive: true });
    expect(installs("shop")).toEqual(["ci --omit=dev"]);
    symlinkSync(join(repository, "node_modules/esbuild"), join(root, "node_modules/esbuild"), "junction");
  });

  it("by hand counts: npm's own record lists every package of the lock file", () => {
    forget();
    installs("view");
    rmSync(mark());
    cpSync(join(root, "package-lock.json"), join(root, "node_modules/.package-lock.json"));
    expect(installs("view")).toEqual([]);
    rmSync(mark());
    rmSync(helper(), { recursive: true });
    expect(installs("shop")).toEqual([]);
    expect(installs("view")).toEqual(["ci --include=dev"]);
  });

  it("that fails leaves no mark and ends the run", () => {
    forget();
    const run = start(["shop"], { env: fakeNpm(3) });
    expect(run.status).toBe(3);
    expect(run.stdout).toBe("");
    expect(existsSync(mark())).toBe(false);
    calls();
  });

  it("happens once for two first runs, and takes over the lock of a run that died", async () => {
    forget();
    const dead = spawnSync(process.execPath, ["-e", ""]).pid;
    writeFileSync(join(root, ".install-lock"), String(dead));
    const runs = [0, 1].map(
      () =>
        new Promise<number | null>((resolve) => {
          const child = spawn(process.execPath, [join(root, "src/tools/start/start.mjs"), "shop"], {
            cwd: root,
            stdio: "ignore",
            env: { ...env, ...fakeNpm(0, 600) } as NodeJS.ProcessEnv,
          });
          child.on("close", resolve);
        }),
    );
    expect(await Promise.all(runs)).toEqual([7, 7]);
    expect(calls()).toHaveLength(1);
    expect(existsSync(join(root, ".install-lock"))).toBe(false);
  });
});

describe("the checks of npm test", () => {
  /** Stand-ins for the three programs: each says its name and its last argument, and ends as it is told. */
  const checked = (ends: { types?: number; lint?: number; tests?: number }) => {
    const programs = {
      typescript: ["tsc", ends.types],
      "@biomejs/biome": ["biome", ends.lint],
      vitest: ["vitest", ends.tests],
    };
    for (const [name, [command, end = 0]] of Object.entries(programs)) {
      const folder = join(root, "node_modules", name);
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, "package.json"), JSON.stringify({ bin: { [command!]: "run.cjs" } }));
      writeFileSync(
        join(folder, "run.cjs"),
        `setTimeout(() => { console.log("${command} of " + process.argv.at(-1)); process.exitCode = ${end}; }, ${command === "vitest" ? 300 : 0});`,
      );
    }
    return start(["test", "tests/units"]);
  };
  beforeAll(() => {
    writeFileSync(join(root, "package-lock.json"), JSON.stringify({ packages: { "": {} } }));
    writeFileSync(join(root, "node_modules/.package-lock.json"), JSON.stringify({ packages: {} }));
  });

  it("pass when all three do; arguments go to the tests, what passes says nothing", () => {
    const run = checked({});
    expect(run.stdout).toBe("vitest of tests/units\n");
    expect(run.stderr).toMatch(/^types: [\d.]+ s$/m);
    expect(run.stderr).toMatch(/all checks passed\n$/);
    expect(run.status).toBe(0);
  });

  it("all run when one has failed; what the others found stands below the tests, and the end names them", () => {
    const run = checked({ types: 2, lint: 1 });
    expect(run.stdout).toBe("vitest of tests/units\ntsc of .\nbiome of --error-on-warnings\n");
    expect(run.stderr).toMatch(/failed: types, lint\n$/);
    expect(run.status).toBe(1);
  });

  it("fail when the tests do", () => {
    const run = checked({ tests: 1 });
    expect(run.stderr).toMatch(/failed: tests\n$/);
    expect(run.status).toBe(1);
  });
});
