/** A kill during `recalc --in-place` leaves the old file or the new one. KILLS=200 kills more often. */
import { spawn, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import { packageOf } from "../../sheet/make-package.ts";
import { builtCommand } from "./built-command.ts";

const KILLS = Number(process.env["KILLS"] ?? 8);
const ROWS = 20_000; // enough that reading, calculating and writing each take a while

let home: string;
/** Without the caller's folder that npm leaves behind: the command runs in `home`. */
const { INIT_CWD: _, ...env } = process.env;
const bundle = () => join(home, "main.js");
const file = () => join(home, "book.xlsx");

beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), "shop-kill-"));
  await builtCommand(home);
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

const rows = Array.from(
  { length: ROWS },
  (_, i) => `<row r="${i + 1}"><c r="A${i + 1}"><v>${i}</v></c><c r="B${i + 1}"><f>A${i + 1}*2+1</f><v>0</v></c></row>`,
).join("");
const before = packageOf({ sheets: { Sheet1: `<sheetData>${rows}</sheetData>` } });

it(`is the old file or the new one after each of ${KILLS} kills`, async () => {
  mkdirSync(home, { recursive: true });
  writeFileSync(file(), before);
  const started = performance.now();
  const whole = spawnSync(process.execPath, [bundle(), "recalc", "book.xlsx", "--in-place"], { cwd: home, env });
  const duration = performance.now() - started;
  expect(whole.status).toBe(0);
  const after = readFileSync(file());
  expect(after.equals(before)).toBe(false);

  const seen = { old: 0, new: 0 };
  for (let i = 0; i < KILLS; i++) {
    writeFileSync(file(), before);
    const child = spawn(process.execPath, [bundle(), "recalc", "book.xlsx", "--in-place"], {
      cwd: home,
      env,
      stdio: "ignore",
    });
    const gone = new Promise((resolve) => child.once("exit", resolve));
    // Spread over the run, denser towards its end, where the file is written.
    await wait(duration * (1 - ((KILLS - i) / (KILLS + 1)) ** 2 * 0.9));
    child.kill("SIGKILL");
    await gone;
    const found = readFileSync(file());
    if (found.equals(before)) seen.old++;
    else if (found.equals(after)) seen.new++;
    else expect.fail(`a mix after kill ${i + 1}`);
  }
  expect(seen.old + seen.new).toBe(KILLS);
  console.log(`${KILLS} kills: ${seen.old} times the old file, ${seen.new} times the new one`);
}, 600_000);
