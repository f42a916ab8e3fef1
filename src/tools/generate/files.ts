/** Every generated file of the repository and what it must hold. One line here makes a file generated and checked. */
import { CATALOGUE_FILE, catalogueSource } from "./catalogue.ts";
import { VERSION_FILE, versionSource } from "./version.ts";

export const generatedFiles = (root: string): Readonly<Record<string, string>> => ({
  [CATALOGUE_FILE]: catalogueSource(root),
  [VERSION_FILE]: versionSource(root),
});
