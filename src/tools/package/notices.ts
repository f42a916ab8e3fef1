/** Third-party notices: name, version, license and license text of every package whose code went into a bundle. */
import { existsSync, readdirSync, readFileSync } from "node:fs";

const PACKAGE_FOLDER = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/;
const LICENCE_FILE = /^(licen[cs]e|notice|copying)/i;

/** `sources`: paths of the bundled files. A package without a license text stops the build: it could not be passed on. */
export function notices(sources: Iterable<string>): string {
  const folders = new Set<string>();
  for (const source of sources) {
    const folder = PACKAGE_FOLDER.exec(source)?.[1];
    if (folder && existsSync(`${folder}/package.json`)) folders.add(folder);
  }
  const entries = [...folders].map(notice).sort();
  return ["Third-party software contained in the files beside this one.", ...entries].join(`\n\n${"-".repeat(72)}\n\n`);
}

function notice(folder: string): string {
  const { name, version, license, author } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  const files = readdirSync(folder)
    .filter((file) => LICENCE_FILE.test(file))
    .sort();
  const standard = files.length === 0 && typeof author === "string" ? STANDARD[license] : undefined;
  if (files.length === 0 && !standard) throw new Error(`${name} must bring a license text; got none in its package`);
  if (standard) return [`${name} ${version} (${license})`, `Copyright (c) ${author}`, standard].join("\n\n");
  const texts = files.map((file) => readFileSync(`${folder}/${file}`, "utf8").replace(/\r\n/g, "\n").trim());
  return [`${name} ${version} (${license})`, ...texts].join("\n\n");
}

/** Of a package that names its license and its author and brings no text: the license's own, word for word. */
const STANDARD: Readonly<Record<string, string>> = {
  ISC: `Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee is hereby granted, provided that the above copyright notice and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT, INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF THIS SOFTWARE.`,
};
