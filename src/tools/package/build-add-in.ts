/** Runs webpack with the project's configuration. Throws with the errors where there are any. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import webpack from "webpack";
import type { ProjectFile } from "../../hosts/excel/manifest/model.ts";
import type { Files } from "../../hosts/install/archive.ts";
import { FILE_LIST, fileList } from "../../hosts/install/file-list.ts";

interface BuildOptions {
  /** Where dist will be served; by default the environment variable ORIGIN, else localhost. */
  readonly origin?: string;
  readonly output?: string;
  readonly plugins?: readonly webpack.WebpackPluginInstance[];
}

export async function buildAddIn(root: string, options: BuildOptions = {}): Promise<void> {
  const { default: config } = await import(pathToFileURL(`${root}/webpack.config.mjs`).href);
  const compiler = webpack((await config(options)) as webpack.Configuration[]);
  const stats = await new Promise<webpack.MultiStats>((done, fail) => {
    compiler.run((problem, result) => (problem || !result ? fail(problem) : done(result)));
  });
  await new Promise((closed) => compiler.close(closed));
  if (stats.hasErrors()) throw new Error(stats.toString({ preset: "errors-only" }));
  // Last, when everything is there: the install page asks for each file by this list.
  const output = options.output ?? `${root}/dist`;
  const project = JSON.parse(readFileSync(`${root}/package.json`, "utf8")) as ProjectFile;
  writeFileSync(`${output}/${FILE_LIST}`, fileList(project, [...filesBelow(output).keys()]));
}

/** By their paths from the folder. */
export const filesBelow = (folder: string): Files =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => `${parentPath}/${name}`.replaceAll("\\", "/"))
      .map((path) => [path.slice(folder.length + 1), readFileSync(path)]),
  );

/** Said after a build, so that nobody puts files for localhost on a server. */
export const originNote = (): string =>
  process.env["ORIGIN"]
    ? `built for ${process.env["ORIGIN"]}`
    : "built for https://localhost:3000, good for trying; set ORIGIN to the address that will serve the files";

/** What stops a build is said in one line: a wrong ORIGIN, a package without a license, a missing document. */
export async function orSay(task: () => Promise<void>): Promise<void> {
  try {
    await task();
  } catch (problem) {
    console.error(problem instanceof Error ? problem.message : String(problem));
    process.exitCode = 1;
  }
}
