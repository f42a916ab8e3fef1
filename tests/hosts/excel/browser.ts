/**
 * A real headless Chromium: the one of the environment variable CHROMIUM, else the one that comes with the packages. It
 * is launched with --no-sandbox alone: the package's own list of arguments turns web security off.
 */
import { mkdirSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { setTimeout as wait } from "node:timers/promises";
import packaged from "@sparticuz/chromium";
import { type Browser, chromium } from "playwright-core";

const LOCK = `${tmpdir()}/bracket-bill-chromium.lock`;
const STALE_MS = 120_000; // unpacking takes seconds; a lock this old belongs to a run that died

export async function launchedBrowser(): Promise<Browser> {
  const executablePath = process.env["CHROMIUM"] ?? (await unpacked());
  return chromium.launch({ executablePath, args: ["--no-sandbox"] });
}

/** Two test files that unpack at the same time would each run a half-written file. */
async function unpacked(): Promise<string> {
  while (!locked()) await wait(100);
  try {
    return await packaged.executablePath();
  } finally {
    rmSync(LOCK, { recursive: true, force: true });
  }
}

function locked(): boolean {
  try {
    mkdirSync(LOCK);
    return true;
  } catch {
    const age = Date.now() - (statSync(LOCK, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (age > STALE_MS) rmSync(LOCK, { recursive: true, force: true });
    return false;
  }
}
