/** Asks the page's own folder for every file of the build. */
import { FILE_LIST, type FileList, wrongType } from "./file-list.ts";

export interface Served {
  readonly list: FileList;
  readonly contents: ReadonlyMap<string, Uint8Array>;
  /** One sentence per file, in words a server's administrator can act on. */
  readonly problems: readonly string[];
}

/** `seen` is told of every file as it comes. Throws where not even the list can be had. */
export async function servedFiles(seen: (path: string) => void): Promise<Served> {
  const list = JSON.parse(new TextDecoder().decode((await asked(FILE_LIST)).content)) as FileList;
  const contents = new Map<string, Uint8Array>();
  const problems: string[] = [];
  for (const path of [...list.files, FILE_LIST]) {
    seen(path);
    try {
      const { content, type } = await asked(path);
      contents.set(path, content);
      const wrong = wrongType(path, type);
      if (wrong) problems.push(`${path} ${wrong}`);
    } catch (problem) {
      problems.push((problem as Error).message);
    }
  }
  return { list, contents, problems };
}

/** Only ever a file beside the page, and never an old copy of it. */
async function asked(path: string): Promise<{ content: Uint8Array; type: string | null }> {
  const response = await fetch(path, { cache: "no-store" }).catch(() => undefined);
  if (!response) throw new Error(`${path} cannot be reached`);
  if (!response.ok) throw new Error(`${path} is missing on the server (${response.status})`);
  return { content: new Uint8Array(await response.arrayBuffer()), type: response.headers.get("content-type") };
}
