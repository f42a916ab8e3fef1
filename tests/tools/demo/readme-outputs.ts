/** What the commands of README.md print, run as they stand there: a folder of their own, the sample workbooks beside it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Command } from "../../../src/hosts/command-line/command.ts";
import { compare } from "../../../src/hosts/command-line/compare.ts";
import { start } from "../../../src/hosts/command-line/start.ts";
import { noCustomFunctions } from "../../../src/sheet/evaluate/custom-functions.ts";
import { demo } from "../../../src/tools/demo/demo.ts";

const PARTS = "sample-workbooks/booth-parts.csv";
const REVISED = "sample-workbooks/booth-parts-rev-b.csv";
const SHOP = "sample-workbooks/stage-job.xlsx";
/** So many rows of a long output: enough to know it by. */
const SHOWN = { compare: 4, "npm start": 14 };

/** @param folder holds the sample workbooks, and what is written goes there. */
export async function readmeOutputs(folder: string): Promise<ReadonlyMap<string, string>> {
  const before = process.env["INIT_CWD"];
  process.env["INIT_CWD"] = folder;
  try {
    const started = await printed(start, "booth.xlsx", "--parts", PARTS, "--shop", SHOP);
    await printed(start, "booth-b.xlsx", "--parts", REVISED, "--shop", SHOP);
    const compared = await printed(compare, "booth.xlsx", "booth-b.xlsx");
    const whole = demo(readFileSync(join(folder, SHOP)), false, () => undefined).text;
    return new Map([
      ["start", started],
      ["compare", head(compared, SHOWN.compare)],
      ["npm start", head(whole, SHOWN["npm start"])],
    ]);
  } finally {
    if (before === undefined) delete process.env["INIT_CWD"];
    else process.env["INIT_CWD"] = before;
  }
}

async function printed(command: Command, ...args: string[]): Promise<string> {
  let text = "";
  await command(args, {
    functions: noCustomFunctions,
    version: "",
    interactive: false,
    input: async () => "",
    out: (words) => {
      text += words;
    },
    note: () => undefined,
  });
  return text.trimEnd();
}

const head = (text: string, rows: number) => [...text.split("\n").slice(0, rows), "..."].join("\n");

const BLOCK = /(<!-- true output: ([a-z ]+) -->\n```text\n)[\s\S]*?(```)/g;

/** The page with every such block filled anew. */
export const withOutputs = (page: string, outputs: ReadonlyMap<string, string>): string =>
  page.replace(BLOCK, (_, head: string, name: string, end: string) => {
    const output = outputs.get(name);
    if (output === undefined) throw new Error(`output must be one of ${[...outputs.keys()].join(", ")}; got ${name}`);
    return `${head}${output}\n${end}`;
  });
