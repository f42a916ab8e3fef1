/**
 * A browser that prints to PDF: the one of the environment variable CHROMIUM, else one that is installed here, else on
 * Linux the one that comes with the packages.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { accessSync, constants, existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { DevToolsPipe } from "./devtools-pipe.ts";

const NAMES = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "chrome",
  "microsoft-edge",
  "msedge",
];
/** Where browsers stand that are on no PATH. */
const PLACES = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];
const LONGEST_MS = 120_000;

const runs = (path: string): boolean => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

export const findBrowser = async (): Promise<string | undefined> => installedBrowser() ?? (await packagedBrowser());

async function packagedBrowser(): Promise<string | undefined> {
  if (process.platform !== "linux" || process.env["CHROMIUM"]) return undefined;
  try {
    const { default: packaged } = await import("@sparticuz/chromium");
    return await packaged.executablePath();
  } catch {
    return undefined; // no room to unpack it, or not for this processor
  }
}

function installedBrowser(): string | undefined {
  const named = process.env["CHROMIUM"];
  if (named !== undefined && named !== "") return existsSync(named) ? named : undefined;
  const onPath = (process.env["PATH"] ?? "")
    .split(delimiter)
    .flatMap((folder) => NAMES.flatMap((name) => [join(folder, name), join(folder, `${name}.exe`)]));
  return [...onPath, ...PLACES].find((path) => existsSync(path) && runs(path));
}

/**
 * The page's PDF. `profile` is an empty folder for the browser's own use. Throws where the browser does not print, or is
 * ended by `cancel`.
 */
export async function printToPdf(
  browser: string,
  page: string,
  profile: string,
  cancel: AbortSignal,
): Promise<Uint8Array> {
  const child = spawn(browser, [...ARGUMENTS, `--user-data-dir=${profile}`], {
    stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"],
  });
  const end = () => child.kill("SIGKILL");
  const timer = setTimeout(end, LONGEST_MS);
  cancel.addEventListener("abort", end);
  try {
    const pipe = new DevToolsPipe(child);
    const { targetId } = await pipe.ask("Target.createTarget", { url: "about:blank" });
    const { sessionId } = await pipe.ask("Target.attachToTarget", { targetId, flatten: true });
    const session = String(sessionId);
    await pipe.ask("Page.enable", {}, session);
    const loaded = pipe.once("Page.loadEventFired");
    await pipe.ask("Page.navigate", { url: page }, session);
    await loaded;
    const { data } = await pipe.ask("Page.printToPDF", { preferCSSPageSize: true, printBackground: true }, session);
    return new Uint8Array(Buffer.from(String(data), "base64"));
  } finally {
    clearTimeout(timer);
    cancel.removeEventListener("abort", end);
    end();
    if (child.exitCode === null && child.signalCode === null && child.pid !== undefined) await once(child, "exit");
  }
}

const ARGUMENTS = [
  "--headless",
  // A browser run by a superuser, as in a container, has no sandbox; the page is our own, without scripts or requests.
  ...(process.platform === "linux" && process.getuid?.() === 0 ? ["--no-sandbox"] : []),
  "--disable-gpu",
  "--no-first-run",
  "--no-default-browser-check",
  "--disable-extensions",
  "--disable-background-networking",
  "--remote-debugging-pipe",
];
