/** The outputs that README.md shows are true; after a deliberate change: `npm test -- tests/tools/demo/readme -u`. */
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { calc } from "../../../src/hosts/command-line/calc.ts";
import { root } from "../../house-rules/sources.ts";
import { readmeOutputs, withOutputs } from "./readme-outputs.ts";

const folder = mkdtempSync(join(tmpdir(), "readme-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const README = `${root}/README.md`;
/** The guide: README.md and the pages it leads to. */
const GUIDE = ["", "manifest/", "sample-workbooks/", "src/data/", "src/hosts/command-line/"];
/** What a developer reads. */
const BEHIND = ["DEVELOPERS.md", "tests/README.md", "src/sheet/README.md", "src/hosts/excel/README.md"];
const guide = () => GUIDE.map((place) => readFileSync(`${root}/${place}README.md`, "utf8")).join("\n");

it("shows what npm start, start and compare print", { timeout: 300_000 }, async () => {
  cpSync(`${root}/sample-workbooks`, join(folder, "sample-workbooks"), { recursive: true });
  const outputs = await readmeOutputs(folder);
  const page = readFileSync(README, "utf8");
  for (const name of outputs.keys()) expect(page).toContain(`<!-- true output: ${name} -->`);
  await expect(withOutputs(page, outputs)).toMatchFileSnapshot(README);
});

it("shows commands that every shell takes as they stand: no comment, no quotes in quotes, no second dashes", () => {
  const commands = [...guide().matchAll(/^(?:\| `)?((?:node shop|npm) [^`|\n]*)/gm)].map(([, command]) => command!);
  expect(commands.length).toBeGreaterThan(15);
  expect(commands.filter((command) => / #|'[^']*"|"[^"]*'[^"]*$| -- /.test(command.replace(/"[^"]*"/g, "")))).toEqual(
    [],
  );
});

it("shows formulas that are answered, with the answer where it says one", async () => {
  const shown = [...guide().matchAll(/^\| `node shop calc "([^"]+)"` \| (.*) \|$/gm)];
  expect(shown.length).toBeGreaterThan(4);
  for (const [, formula, words] of shown) {
    let text = "";
    const out = (said: string) => {
      text += said;
    };
    const streams = { out, note: () => undefined, input: async () => "", interactive: false };
    expect(await calc([formula!], { functions: shopFunctions, version: "", ...streams }), formula).toBe(0);
    if (/^[\d.]+ in$/.test(words!)) expect(text.trim()).toBe(words);
  }
});

it("is short enough to be read, and leads to pages that are there", () => {
  expect(readFileSync(README, "utf8").split(/\s+/).length).toBeLessThanOrEqual(1200);
  for (const page of [...GUIDE.map((place) => `${place}README.md`), ...BEHIND]) {
    const links = [...readFileSync(`${root}/${page}`, "utf8").matchAll(/\]\((?!https?:)([^)#]+)\)/g)];
    for (const [, link] of links) expect(existsSync(join(root, dirname(page), link!)), `${page}: ${link}`).toBe(true);
  }
});
