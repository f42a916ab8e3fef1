/** Everything the two manifests say, once: identity, addresses, texts. Both are written from this. */
import { NAMESPACE } from "../../../cells/catalogue.ts";

/** What is read from package.json. */
export interface ProjectFile {
  readonly version: string;
  readonly bracketBill: {
    /** GUID of the XML add-in. Never changes: Excel knows installed copies by it. */
    readonly addinId: string;
    /** GUID of the app package with the unified manifest; another one, since both kinds may be installed side by side. */
    readonly appId: string;
    readonly provider: string;
  };
}

export const DEFAULT_ORIGIN = "https://localhost:3000";
export const ICON_SIZES = [16, 32, 64, 80, 128] as const;
export const RIBBON_ICON_SIZES = [16, 32, 80] as const; // the three that both manifests require

/** Requirement sets without which the functions do not work: error codes with text, and the runtime shared with the page. */
export const REQUIREMENTS = [
  { name: "CustomFunctionsRuntime", minVersion: "1.3" },
  { name: "SharedRuntime", minVersion: "1.1" },
] as const;

export type ManifestModel = ReturnType<typeof manifestModel>;

/** `origin` is where dist is served, "https://host[:port][/folder]". */
export function manifestModel(project: ProjectFile, origin: string) {
  const base = checkedOrigin(origin);
  const page = `${base}/taskpane.html`;
  return {
    ...project.bracketBill,
    version: project.version,
    namespace: NAMESPACE,
    name: "Bracket Bill",
    /** Of the app package: where both are installed they must be told apart until the other one is hidden. */
    appName: "Bracket Bill app",
    shortDescription: "Cell functions for a bill of sheet metal brackets: bend, shear, waterjet.",
    description:
      "Cell functions that answer a metal shop's bracket bill: flat blank, press brake force and radius, shear, waterjet, weight and tolerances, each with its source. The machine's plate decides.",
    accentColor: "#1F3A45",
    host: new URL(base).host,
    urls: {
      page,
      script: `${base}/functions.js`,
      metadata: `${base}/functions.json`,
      support: `${base}/about.html#support`,
      privacy: `${base}/about.html#privacy`,
      terms: `${base}/about.html#terms`,
      site: `${base}/about.html`,
    },
    icons: ICON_SIZES.map((size) => ({ size, url: `${base}/assets/icon-${size}.png` })),
    ribbonIcons: RIBBON_ICON_SIZES.map((size) => ({ size, url: `${base}/assets/icon-${size}.png` })),
    appRibbonIcons: RIBBON_ICON_SIZES.map((size) => ({ size, url: `${base}/assets/app-icon-${size}.png` })),
    ribbon: {
      group: "Bracket Bill",
      appGroup: "Bracket Bill app",
      button: "Function guide",
      tip: "Search the functions, see what each argument means and a worked example of each.",
    },
    welcome: {
      title: "Bracket Bill is ready",
      description: `Type =${NAMESPACE}.BEND.SETBACK(0.04,0.16,90) in a cell: 0.2 says that it works. The guide is on the Home tab.`,
    },
  };
}

/** Excel loads nothing over plain http, and a slash too many would miss every file. */
function checkedOrigin(origin: string): string {
  const trimmed = origin.trim().replace(/\/+$/, "");
  if (!/^https:\/\/[a-z0-9.-]+(:\d+)?(\/[\w.~-]+)*$/i.test(trimmed))
    throw new Error(`origin must be an https address such as ${DEFAULT_ORIGIN}; got ${origin || "nothing"}`);
  return trimmed;
}
