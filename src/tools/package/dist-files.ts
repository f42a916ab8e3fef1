/** What a build adds to the bundles: everything made from the catalogue, the icons, and the licenses of what is bundled. */
import { RECORDS } from "../../cells/catalogue.ts";
import { appIcon, colorIcon, outlineIcon } from "../../hosts/excel/icons/draw.ts";
import { manifestFiles } from "../../hosts/excel/manifest/files.ts";
import { ICON_SIZES, type ProjectFile, RIBBON_ICON_SIZES } from "../../hosts/excel/manifest/model.ts";

export { DEFAULT_ORIGIN } from "../../hosts/excel/manifest/model.ts";
export { notices } from "./notices.ts";
export { outlineModules } from "./outline-modules.ts";

/** Path in dist -> content. */
export const distFiles = (project: ProjectFile, origin: string): Record<string, string | Buffer> => ({
  ...manifestFiles(RECORDS, project, origin),
  ...Object.fromEntries(ICON_SIZES.map((size) => [`assets/icon-${size}.png`, colorIcon(size)])),
  ...Object.fromEntries(RIBBON_ICON_SIZES.map((size) => [`assets/app-icon-${size}.png`, appIcon(size)])),
  // The sizes that the unified manifest prescribes.
  "manifest/color.png": appIcon(192),
  "manifest/outline.png": outlineIcon(32),
});
