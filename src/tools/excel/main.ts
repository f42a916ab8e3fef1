/**
 * `npm run excel [-- --remove | --offer-addin IN.xlsx OUT.xlsx]`: builds the add-in and serves it on https://localhost:3000 for trying in Excel. Asks
 * before the computer is made to trust a certificate, and says how that is taken back.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { homedir } from "node:os";
import { resolve } from "node:path";
import { createInterface } from "node:readline/promises";
import { parseArgs } from "node:util";
import type { ProjectFile } from "../../hosts/excel/manifest/model.ts";
import { buildAddIn } from "../package/build-add-in.ts";
import { certificateIn, removeCertificate } from "./certificate.ts";
import { offerCommand } from "./offer-command.ts";
import { serveDist } from "./serve-dist.ts";
import { inWords, trustCommands } from "./trust.ts";

const PORT = 3000; // as the manifest for trying says
const WRONG_USE = 64; // EX_USAGE of sysexits.h

const say = (words: string) => console.error(words);
const run = ([name = "", ...args]: readonly string[]): boolean =>
  spawnSync(name, args, { stdio: ["inherit", 2, 2] }).status === 0;

async function agreed(question: string): Promise<boolean> {
  if (!process.stdin.isTTY) return false; // nobody is there to ask
  const asking = createInterface({ input: process.stdin, output: process.stderr });
  const answer = await asking.question(`${question} [y/N] `);
  asking.close();
  return /^y(?:es)?$/i.test(answer.trim());
}

async function main(args: string[]): Promise<number> {
  const root = process.cwd();
  let remove = false;
  try {
    const options = { remove: { type: "boolean" }, "offer-addin": { type: "boolean" } } as const;
    const { values, positionals } = parseArgs({ args, options, allowPositionals: true });
    remove = values.remove === true;
    if (values["offer-addin"]) {
      const project = JSON.parse(readFileSync(resolve(root, "package.json"), "utf8")) as ProjectFile;
      say(offerCommand(positionals, project, process.env["INIT_CWD"] ?? root));
      return 0;
    }
    if (positionals.length > 0) throw new Error(`npm run excel takes no file by itself; got ${positionals.join(" ")}`);
  } catch (problem) {
    say((problem as Error).message);
    return WRONG_USE;
  }
  const folder = resolve(homedir(), ".bracket-bill");
  if (remove) {
    const commands = trustCommands(process.platform, resolve(folder, "localhost-authority.pem"), homedir());
    const done = commands ? run(commands.remove) : true;
    removeCertificate(folder);
    say(
      done
        ? "The certificate is no longer trusted; its files are removed."
        : "The system did not remove it; see above.",
    );
    return done ? 0 : 1;
  }
  const certificate = await certificateIn(folder, new Date());
  const commands = trustCommands(process.platform, certificate.authority, homedir());
  if (commands && certificate.isNew) {
    say("Excel loads an add-in only over https, so this computer must trust a certificate for localhost.");
    say("It was made here just now, for 30 days, for your user alone; the key that signed it is thrown away.");
    say(`To take it back at any time: npm run excel -- --remove (or: ${inWords(commands.remove)})`);
    if (await agreed(`Run now: ${inWords(commands.trust)} ?`)) run(commands.trust);
    else {
      removeCertificate(folder);
      say("Nothing was installed. Without it Excel will not load the add-in from here.");
      return 1;
    }
  }
  say("Building the add-in, about half a minute");
  await buildAddIn(root);
  await serveDist(resolve(root, "dist"), certificate, PORT);
  say(`Serving https://localhost:${PORT}; Ctrl+C ends it. To try it, load the manifest below into Excel.`);
  say(`How, for web, Windows and Mac, and what to know: https://localhost:${PORT}/install.html`);
  say("Then open sample-workbooks/first-run.xlsx: it says what is right in this Excel and what is not.");
  process.stdout.write(`${resolve(root, "dist/manifest/bracket-bill.xml")}\n`);
  return 0;
}

try {
  process.exitCode = await main(process.argv.slice(2));
} catch (problem) {
  say(problem instanceof Error ? problem.message : String(problem));
  process.exitCode = 1;
}
