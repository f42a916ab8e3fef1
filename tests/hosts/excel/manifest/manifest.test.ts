/** The manifests against the rules that can be checked without Excel. */
import { readFileSync } from "node:fs";
import { ManifestUtil } from "@microsoft/app-manifest";
import { describe, expect, it } from "vitest";
import { RECORDS } from "../../../../src/cells/catalogue.ts";
import { manifestFiles } from "../../../../src/hosts/excel/manifest/files.ts";
import { DEFAULT_ORIGIN, type ProjectFile } from "../../../../src/hosts/excel/manifest/model.ts";
import { distFiles } from "../../../../src/tools/package/dist-files.ts";
import { xmlProblems } from "./xml-problems.ts";
import { xmlTree } from "./xml-tree.ts";

const root = process.cwd();
const project = JSON.parse(readFileSync(`${root}/package.json`, "utf8")) as ProjectFile;
const files = manifestFiles(RECORDS, project, DEFAULT_ORIGIN);
const xml = files["manifest/bracket-bill.xml"];
const json = JSON.parse(files["manifest/manifest.json"]);

/** Bundles and pages are made by webpack; that it makes them is checked by the tests of the built bundle. */
const BUILT = ["functions.js", "taskpane.html", "about.html"];
const inDist = [...BUILT, ...Object.keys(distFiles(project, DEFAULT_ORIGIN))];
const exists = (url: string): boolean => inDist.includes(url.replace(`${DEFAULT_ORIGIN}/`, "").replace(/#.*$/, ""));

describe("the XML manifest", () => {
  it("keeps every rule", () => expect(xmlProblems(xml, exists)).toEqual([]));

  const swap = (text: string, first: RegExp, second: RegExp): string => {
    const [a, b] = [first.exec(text)![0], second.exec(text)![0]];
    return text.replace(a, "\u0000").replace(b, a).replace("\u0000", b);
  };
  it.each<[string, string, string]>([
    ["text that is cut off", xml.slice(0, -20), "not well formed"],
    ["an undeclared prefix", xml.replaceAll("bt:Url", "zz:Url"), "not well formed"],
    ["an id that is no GUID", xml.replace(project.bracketBill.addinId, "bracket-bill"), "Id is no GUID"],
    ["a version of three parts", xml.replace(/(<Version>\d+\.\d+\.\d+)\.\d+/, "$1"), "four parts"],
    ["another order of elements", swap(xml, /<Id>.*<\/Id>/, /<Version>.*<\/Version>/), "OfficeApp has another order"],
    ["an element of its own", xml.replace("<Hosts>", "<Motto/><Hosts>"), "Motto is unknown"],
    [
      "a resource that is missing",
      xml.replace(' id="Guide.Tip"', ' id="Guide.Tap"'),
      "Guide.Tip is used but not there",
    ],
    ["a resource given twice", xml.replace(' id="Icon.32"', ' id="Icon.16"'), "Icon.16 is there twice"],
    [
      "a short string of 126",
      xml.replace(/(id="Group.Label" DefaultValue=")[^"]*/, `$1${"x".repeat(126)}`),
      "too long for bt:ShortStrings",
    ],
    [
      "a long string of 251",
      xml.replace(/(id="Guide.Tip" DefaultValue=")[^"]*/, `$1${"x".repeat(251)}`),
      "too long for bt:LongStrings",
    ],
    ["a namespace of 33", xml.replace('DefaultValue="SHOP"', `DefaultValue="${"S".repeat(33)}"`), "namespace"],
    [
      "plain http",
      xml.replaceAll('https://localhost:3000/functions.js"', 'http://localhost:3000/functions.js"'),
      "not https",
    ],
    ["a file that is not there", xml.replace("assets/icon-80.png", "assets/icon-81.png"), "not in dist"],
    [
      "runtimes that come second",
      swap(xml, /<Runtimes>[\s\S]*<\/Runtimes>/, /<AllFormFactors>[\s\S]*<\/AllFormFactors>/),
      "Runtimes is not first",
    ],
    [
      "a page of its own for the ribbon",
      xml.replace('<FunctionFile resid="Taskpane.Url"', '<FunctionFile resid="LearnMore.Url"'),
      "one page",
    ],
    ["a short-lived runtime", xml.replace('lifetime="long"', 'lifetime="short"'), "not long-lived"],
    [
      "a pane of its own",
      xml.replace(/(<Action xsi:type="ShowTaskpane">)/, "$1<TaskpaneId>Pane</TaskpaneId>"),
      "TaskpaneId must not",
    ],
    ["equivalent add-ins", xml.replace("<Hosts>", "<EquivalentAddins/><Hosts>"), "EquivalentAddins must not"],
  ])("is refused by these rules with %s", (_, broken, problem) => {
    expect(broken).not.toBe(xml);
    expect(xmlProblems(broken, exists).join("; ")).toContain(problem);
  });

  it("is fresh in manifest/", () => {
    expect(readFileSync(`${root}/manifest/bracket-bill.xml`, "utf8"), "run npm run build").toBe(xml);
    expect(xml.split("\n")[0]).toContain("Generated");
  });

  it("escapes what it is given", () => {
    const odd = { ...project, bracketBill: { ...project.bracketBill, provider: `A & B <"C">` } };
    const text = manifestFiles(RECORDS, odd, DEFAULT_ORIGIN)["manifest/bracket-bill.xml"];
    expect(xmlTree(text).children.find(({ name }) => name === "ProviderName")!.text).toBe(`A & B <"C">`);
  });
});

describe("the unified manifest", () => {
  const schema = JSON.parse(
    readFileSync(
      `${root}/node_modules/@microsoft/app-manifest/build/json-schemas/teams/v${json.manifestVersion}/MicrosoftTeams.schema.json`,
      "utf8",
    ),
  );
  const problems = (manifest: object) => ManifestUtil.validateManifestAgainstSchema(manifest as never, schema);

  it("keeps the official schema of its version", async () => expect(await problems(json)).toEqual([]));

  it("is refused by that schema without a namespace or with a made-up property", async () => {
    const without = structuredClone(json);
    delete without.extensions[0].runtimes[0].customFunctions.namespace.id;
    expect((await problems(without)).join()).toContain("namespace");
    expect(await problems({ ...json, motto: "x" })).not.toEqual([]);
  });

  it("lists no function itself, for then functions.json would not be read, and asks for no view", () => {
    const runtime = json.extensions[0].runtimes[0];
    expect(Object.keys(runtime.customFunctions).sort()).toEqual(["metadataUrl", "namespace"]);
    expect(runtime.actions).toEqual([{ id: "ShowPane", type: "openPage" }]);
  });

  it("names only files that exist, and icons beside it", () => {
    const urls = [...JSON.stringify(json).matchAll(/"(https:\/\/localhost[^"]*)"/g)].map(([, url]) => url!);
    expect(urls.filter((url) => !exists(url))).toEqual([]);
    expect(Object.values(json.icons).every((icon) => inDist.includes(`manifest/${icon}`))).toBe(true);
  });
});

describe("both manifests", () => {
  it("say the same: namespace, version, page, functions; but have identities of their own", () => {
    const tree = xmlTree(xml);
    const text = (name: string) => tree.children.find((child) => child.name === name)!.text;
    const runtime = json.extensions[0].runtimes[0];
    expect(text("Version")).toBe(`${json.version}.0`);
    expect(json.version).toBe(project.version);
    expect(xml).toContain(`id="Taskpane.Url" DefaultValue="${runtime.code.page}"`);
    expect(xml).toContain(`id="Functions.Namespace" DefaultValue="${runtime.customFunctions.namespace.id}"`);
    expect(text("Id")).not.toBe(json.id);
    expect(json.extensions[0].alternates[0].hide.customOfficeAddin.officeAddinId).toBe(text("Id"));
    expect(xml).toContain(`id="Functions.Metadata.Url" DefaultValue="${runtime.customFunctions.metadataUrl}"`);
  });

  it("can be told apart where both are installed: by name, ribbon group and icon", () => {
    const own = xmlTree(xml).children.find(({ name }) => name === "DisplayName")!.attributes["DefaultValue"];
    const group = json.extensions[0].ribbons[0].tabs[0].groups[0];
    expect(json.name.short).not.toBe(own);
    expect(xml).not.toContain(`DefaultValue="${group.label}"`);
    for (const { url } of group.icons) expect(xml).not.toContain(url);
    const files = distFiles(project, DEFAULT_ORIGIN);
    expect(files["assets/app-icon-32.png"]).not.toEqual(files["assets/icon-32.png"]);
  });

  it("follow the origin, with a folder and without a last slash", () => {
    const elsewhere = manifestFiles(RECORDS, project, "https://shop.example/addins/bill/");
    for (const text of Object.values(elsewhere)) {
      expect(text).not.toContain("localhost");
      expect(text).toContain("https://shop.example/addins/bill/taskpane.html");
    }
    expect(elsewhere["manifest/bracket-bill.xml"]).toContain("<AppDomain>https://shop.example</AppDomain>");
  });

  it.each(["http://localhost:3000", "localhost:3000", "", "https://", "https://a b", 'https://x"/><a'])(
    "refuse the origin %j",
    (origin) => expect(() => manifestFiles(RECORDS, project, origin)).toThrow("origin must be an https address"),
  );
});
