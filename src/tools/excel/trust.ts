/** The command by which a system trusts a certificate for this user alone, and the one that takes that back. */
import { AUTHORITY } from "./certificate.ts";

interface TrustCommands {
  readonly trust: readonly string[];
  readonly remove: readonly string[];
}

/** Undefined where Excel does not run and nothing is to be trusted. */
export function trustCommands(platform: NodeJS.Platform, authority: string, home: string): TrustCommands | undefined {
  if (platform === "win32")
    return {
      trust: ["certutil", "-user", "-addstore", "Root", authority],
      remove: ["certutil", "-user", "-delstore", "Root", AUTHORITY],
    };
  if (platform === "darwin") {
    const keychain = `${home}/Library/Keychains/login.keychain-db`;
    return {
      trust: ["security", "add-trusted-cert", "-r", "trustRoot", "-k", keychain, authority],
      remove: ["security", "remove-trusted-cert", authority],
    };
  }
  return undefined;
}

export const inWords = (command: readonly string[]): string =>
  command.map((word) => (/[\s"]/.test(word) ? `"${word}"` : word)).join(" ");
