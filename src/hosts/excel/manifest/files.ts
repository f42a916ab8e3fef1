/** The manifests as files, for one origin. */
import type { AnyRecord } from "../../../cells/record/record.ts";
import { functionsJson } from "../metadata.ts";
import { jsonManifest } from "./json.ts";
import { manifestModel, type ProjectFile } from "./model.ts";
import { xmlManifest } from "./xml.ts";

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

export function manifestFiles(records: readonly AnyRecord[], project: ProjectFile, origin: string) {
  const model = manifestModel(project, origin);
  const metadata = functionsJson(records, model.urls.page);
  return {
    "functions.json": json(metadata),
    "manifest/bracket-bill.xml": xmlManifest(model),
    "manifest/manifest.json": json(jsonManifest(model)),
  };
}
