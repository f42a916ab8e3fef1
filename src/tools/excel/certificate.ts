/**
 * A certificate for this computer's own https, made here. It is signed by an authority of its own whose key is thrown
 * away at once: nobody, we included, can sign anything else with what the computer is asked to trust.
 */
import { chmodSync, existsSync, lstatSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const DAYS = 30;
const MS_PER_DAY = 86_400_000;
const NAMES = ["localhost", "127.0.0.1"];
export const AUTHORITY = "Bracket Bill on this computer";

export interface Certificate {
  readonly key: string;
  readonly cert: string;
  /** File of the authority's certificate: what is trusted, and what is removed again. */
  readonly authority: string;
  readonly isNew: boolean;
}

const file = (folder: string, name: string) => join(folder, `localhost-${name}.pem`);

/** The one of an earlier run while it is valid; else a new one. `folder` is readable by its owner only. */
export async function certificateIn(folder: string, now: Date): Promise<Certificate> {
  refuseOthers(folder);
  const authority = file(folder, "authority");
  const made = readMade(folder);
  if (made && Date.parse(made.until) > now.getTime()) return { ...made, authority, isNew: false };
  const { createCA, createCert } = await import("mkcert");
  const about = { organization: AUTHORITY, countryCode: "ZZ", state: "-", locality: "-", validity: DAYS };
  const ca = await createCA(about);
  const { key, cert } = await createCert({ ca, domains: NAMES, validity: DAYS });
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const until = new Date(now.getTime() + (DAYS - 1) * MS_PER_DAY).toISOString();
  writeFileSync(authority, ca.cert);
  writeFileSync(file(folder, "key"), JSON.stringify({ key, cert, until }), { mode: 0o600 });
  chmodSync(file(folder, "key"), 0o600);
  return { key, cert, authority, isNew: true };
}

/** Whoever can write the folder could lay a key of theirs there, and this computer would be asked to trust it. */
function refuseOthers(folder: string): void {
  const found = lstatSync(folder, { throwIfNoEntry: false });
  if (!found || process.platform === "win32") return; // a new one is its owner's alone; Windows keeps no such bits
  const refuse = (got: string): never => {
    throw new Error(
      `${folder} must be a folder that only you can write; got ${got}; remove it or take the rights away`,
    );
  };
  if (!found.isDirectory()) refuse("a file or a link");
  if (found.uid !== process.getuid?.()) refuse("another user's");
  if ((found.mode & 0o022) !== 0) refuse("one that others can write");
}

function readMade(folder: string): { key: string; cert: string; until: string } | undefined {
  if (!existsSync(file(folder, "authority"))) return undefined;
  try {
    return JSON.parse(readFileSync(file(folder, "key"), "utf8"));
  } catch {
    return undefined; // none, or damaged: another is made
  }
}

export const removeCertificate = (folder: string): void => {
  for (const name of ["authority", "key"]) rmSync(file(folder, name), { force: true });
};
