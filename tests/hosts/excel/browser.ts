/**
 * A real headless Chromium: the one of the environment variable CHROMIUM, else the one that comes with the packages. It
 * is launched with --no-sandbox alone: the package's own list of arguments turns web security off.
 */
import { tmpdir } from "node:os";
import packaged from "@sparticuz/chromium";
import { type Browser, chromium } from "playwright-core";
import { withLock } from "../../../src/tools/start/lock.mjs";

/** Two test files that unpack at the same time would each run a half-written file. */
const LOCK = `${tmpdir()}/bracket-bill-chromium-unpacked.lock`;

export async function launchedBrowser(): Promise<Browser> {
  const executablePath = process.env["CHROMIUM"] ?? (await withLock(LOCK, () => packaged.executablePath()));
  return chromium.launch({ executablePath, args: ["--no-sandbox"] });
}
