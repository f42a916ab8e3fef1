/** The release archive: same files in, same bytes out, whether a build packs it or the install page. */
import { strToU8, type Zippable, zipSync } from "fflate";

/** Zip has no time zone and begins in 1980; a fixed time keeps the clock out of the archive. */
const TIME = new Date(1980, 0, 1);

export type Files = ReadonlyMap<string, Uint8Array>;

export const zip = (files: Files): Uint8Array => {
  const sorted = [...files].sort(([a], [b]) => (a < b ? -1 : 1));
  const entries: Zippable = Object.fromEntries(sorted.map(([path, content]) => [path, [content, { level: 9 }]]));
  return zipSync(entries, { mtime: TIME });
};

/** The app package that an administrator uploads: the unified manifest and its icons, nothing else. */
const APP_PACKAGE = ["manifest.json", "color.png", "outline.png"];
/** What a person looks for at the top of an archive; in dist they end in .txt, which every web server knows. */
const DOCUMENTS = {
  "CHANGELOG.md": "changelog.txt",
  LICENSE: "license.txt",
  "THIRD-PARTY-NOTICES.txt": "third-party-notices.txt",
  "first-run.xlsx": "first-run.xlsx",
};

/** `dist` by path. All of it is served, so all of it goes to web/; what is installed stands in manifest/ too. */
export function releaseFiles(dist: Files): Files {
  const inDist = (path: string): Uint8Array => {
    const content = dist.get(path);
    if (!content) throw new Error(`dist must hold ${path}; got a build without it`);
    return content;
  };
  const app = new Map(APP_PACKAGE.map((name) => [name, inDist(`manifest/${name}`)]));
  return new Map([
    ["READ-ME-FIRST.txt", strToU8(README)],
    ...Object.entries(DOCUMENTS).map(([name, path]): [string, Uint8Array] => [name, inDist(path)]),
    ["manifest/bracket-bill.xml", inDist("manifest/bracket-bill.xml")],
    ["manifest/bracket-bill-app.zip", zip(app)],
    ...[...dist].map(([path, content]): [string, Uint8Array] => [`web/${path}`, content]),
  ]);
}

const README = `web/                           put these files on the web server the manifests name, then open install.html there
manifest/bracket-bill.xml      the add-in's manifest: the one to install
manifest/bracket-bill-app.zip  the same add-in as an app package with the unified manifest
first-run.xlsx                 open it first in an Excel that has the add-in: it says what is right there and what is not
Install one of the two, not both. README.md of the project says how.
`;
