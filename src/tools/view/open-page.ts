/** Opens an address in the person's own browser, by the system's own way of opening things (common knowledge of each). */
import { spawn } from "node:child_process";

const OPENERS: Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>> = {
  win32: ["rundll32", "url.dll,FileProtocolHandler"],
  darwin: ["open"],
};

/** Where nothing opens it, the printed address is still there. */
export function openPage(url: string): void {
  const [command, ...args] = OPENERS[process.platform] ?? ["xdg-open"];
  const opener = spawn(command, [...args, url], { stdio: "ignore", detached: true });
  opener.on("error", () => undefined);
  opener.unref();
}
