/**
 * Rules of the XML manifest that can be checked without a network, from Microsoft's reference of the manifest (element
 * order, string lengths, resources) and of shared runtimes; memory of that reference, unverified in Excel itself.
 */
import { everyNode, type XmlNode, xmlTree } from "./xml-tree.ts";

const ORDER: Record<string, readonly string[]> = {
  OfficeApp: [
    "Id",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "VersionOverrides",
  ],
  VersionOverrides: ["Description", "Requirements", "Hosts", "Resources"],
  Host: ["Runtimes", "AllFormFactors", "DesktopFormFactor", "MobileFormFactor"],
  DesktopFormFactor: ["GetStarted", "FunctionFile", "ExtensionPoint"],
  ExtensionPoint: ["Script", "Page", "Metadata", "Namespace", "OfficeTab"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
  Group: ["Label", "Icon", "Control"],
  Control: ["Label", "Supertip", "Icon", "Action"],
  Action: ["TaskpaneId", "SourceLocation"],
  Resources: ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"],
};
const GUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i;
const LONGEST: Record<string, number> = { "bt:ShortStrings": 125, "bt:LongStrings": 250 };

/** `exists` says whether the file behind an address is there. */
export function xmlProblems(text: string, exists: (url: string) => boolean): string[] {
  let app: XmlNode;
  try {
    app = xmlTree(text);
  } catch (problem) {
    return [`not well formed: ${(problem as Error).message}`];
  }
  const nodes = everyNode(app);
  return [
    ...(/EquivalentAddins/.test(text) ? ["EquivalentAddins must not stand in it"] : []),
    ...identityProblems(app),
    ...nodes.flatMap(orderProblems),
    ...resourceProblems(nodes),
    ...addressProblems(nodes, exists),
    ...runtimeProblems(nodes),
  ];
}

const textOf = (parent: XmlNode, name: string): string => parent.children.find((one) => one.name === name)?.text ?? "";
const named = (nodes: readonly XmlNode[], name: string): XmlNode[] => nodes.filter((node) => node.name === name);

function identityProblems(app: XmlNode): string[] {
  const problems = [];
  if (!GUID.test(textOf(app, "Id"))) problems.push("Id is no GUID");
  if (!/^\d+(\.\d+){3}$/.test(textOf(app, "Version"))) problems.push("Version has not four parts");
  if (textOf(app, "Permissions") !== "ReadWriteDocument") problems.push("Permissions are not ReadWriteDocument");
  return problems;
}

function orderProblems({ name, children }: XmlNode): string[] {
  const order = ORDER[name];
  if (!order) return [];
  const places = children.map((child) => order.indexOf(child.name));
  const problems = children.filter((_, i) => places[i]! < 0).map((child) => `${child.name} is unknown in ${name}`);
  if (places.some((place, i) => i > 0 && place < places[i - 1]!)) problems.push(`${name} has another order`);
  return problems;
}

function resourceProblems(nodes: readonly XmlNode[]): string[] {
  const resources = named(nodes, "Resources").flatMap(({ children }) => children);
  const entries = resources.flatMap((list) => list.children.map((entry) => ({ list: list.name, entry })));
  const ids = entries.map(({ entry }) => entry.attributes["id"]!);
  const used = nodes.flatMap(({ attributes }) => attributes["resid"] ?? []);
  const value = ({ attributes }: XmlNode) => attributes["DefaultValue"] ?? "";
  return [
    ...used.filter((id) => !ids.includes(id)).map((id) => `${id} is used but not there`),
    ...ids.filter((id, i) => ids.indexOf(id) !== i).map((id) => `${id} is there twice`),
    ...ids.filter((id) => !used.includes(id)).map((id) => `${id} is there but not used`),
    ...ids.filter((id) => id.length > 32).map((id) => `${id} has more than 32 characters`),
    ...entries
      .filter(({ list, entry }) => value(entry).length > (LONGEST[list] ?? Number.POSITIVE_INFINITY))
      .map(({ list, entry }) => `${entry.attributes["id"]} is too long for ${list}`),
    ...entries.filter(({ entry }) => value(entry) === "").map(({ entry }) => `${entry.attributes["id"]} is empty`),
    ...entries
      .filter(
        ({ entry }) => entry.attributes["id"] === "Functions.Namespace" && !/^[A-Za-z][\w.]{0,31}$/.test(value(entry)),
      )
      .map(() => "the namespace must be a name of at most 32 characters"),
  ];
}

function addressProblems(nodes: readonly XmlNode[], exists: (url: string) => boolean): string[] {
  const LOCATED = ["bt:Image", "bt:Url", "IconUrl", "HighResolutionIconUrl", "SupportUrl", "SourceLocation"];
  const addresses = nodes
    .filter(({ name, attributes }) => LOCATED.includes(name) && attributes["resid"] === undefined)
    .map(({ attributes }) => attributes["DefaultValue"] ?? "");
  return [
    ...addresses.filter((url) => !url.startsWith("https://")).map((url) => `${url} is not https`),
    ...addresses.filter((url) => url.startsWith("https://") && !exists(url)).map((url) => `${url} is not in dist`),
  ];
}

/** A shared runtime is one page: whatever names a page must name the same. */
function runtimeProblems(nodes: readonly XmlNode[]): string[] {
  const problems = [];
  for (const host of nodes.filter(({ name, attributes }) => name === "Host" && attributes["xsi:type"] === "Workbook"))
    if (host.children[0]?.name !== "Runtimes") problems.push("Runtimes is not first in Host");
  const pages = [
    ...named(nodes, "Runtime"),
    ...named(nodes, "FunctionFile"),
    ...[...named(nodes, "Page"), ...named(nodes, "Action")].flatMap(({ children }) =>
      named(children, "SourceLocation"),
    ),
  ].map(({ attributes }) => attributes["resid"]);
  if (pages.length < 4 || new Set(pages).size !== 1)
    problems.push("Runtime, FunctionFile, Page and Action do not name one page");
  if (named(nodes, "TaskpaneId").length > 0) problems.push("TaskpaneId must not stand beside a shared runtime");
  if (named(nodes, "Runtime").some(({ attributes }) => attributes["lifetime"] !== "long"))
    problems.push("the runtime is not long-lived");
  return problems;
}
