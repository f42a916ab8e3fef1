/** What src/hosts/THREATS.md promises, as far as it can be read from the sources. */
import { describe, expect, it } from "vitest";
import { RECORDS, shopFunctions } from "../../src/cells/catalogue.ts";
import { exampleArguments } from "../../src/tools/fuzz/example-arguments.ts";
import { KEYS } from "../../src/tools/fuzz/values.ts";
import type { CellMatrix } from "../../src/units/cell.ts";
import { codeOnly, filesBelow, type SourceFile } from "./sources.ts";

const product = filesBelow("src").filter(({ path }) => !path.startsWith("src/tools/"));
const using = (files: readonly SourceFile[], pattern: RegExp): string[] =>
  files.filter(({ text }) => pattern.test(codeOnly(text))).map(({ path }) => path);

describe("the program", () => {
  it("runs no text as a program", () => {
    expect(using(product, /\beval\s*\(|\bnew\s+Function\b|\bsetTimeout\s*\(\s*["'`]|\bnode:vm\b/)).toEqual([]);
  });

  it("makes no markup out of text in a page", () => {
    expect(using(product, /\b(?:inner|outer)HTML\b|\binsertAdjacentHTML\b|\bdocument\.write/)).toEqual([]);
  });

  it("starts no other program but the browser that prints, and that without a shell", () => {
    const starting = product.filter(({ text }) => /from "node:child_process"/.test(text));
    expect(
      starting.filter(({ path }) => !path.startsWith("src/hosts/command-line/print/")).map(({ path }) => path),
    ).toEqual([]);
    expect(using(starting, /\bexec(?:File)?(?:Sync)?\s*\(|\bshell\s*:/)).toEqual([]);
  });

  it("asks no network from functions, pane or command line; the pages ask only the server they came from", () => {
    const network = /\bfetch\s*\(|\bXMLHttpRequest\b|\bWebSocket\b|\bEventSource\b|\bsendBeacon\b|\bimportScripts\b/;
    const asking = "src/hosts/install/served-files.ts"; // by the names of a list that lies beside it
    const served = ["src/hosts/view/files.ts", "src/hosts/view/week/week-files.ts"];
    expect(using(product, network)).toEqual([asking, ...served]);
    expect(
      product.filter(({ text }) => /from "node:(?:https?|net|dgram|tls|dns)"/.test(text)).map(({ path }) => path),
    ).toEqual([]);
    const pages = product.filter(({ path }) => served.includes(path)).map(({ text }) => text);
    const asked = [...pages.join("\n").matchAll(/fetch\(([^,)]*)/g)].map(([, to]) => to);
    // By a fixed word, or by one below the number of a job.
    expect(asked.filter((to) => !/^(?:"[a-z]+"|`\$\{i\}\/[a-z]+`)$/.test(to!))).toEqual([]);
  });
});

describe("every page has a policy that lets nothing in from elsewhere", () => {
  const pages = [...filesBelow("src/hosts", ".html"), ...product].filter(({ text }) => /<html\b/.test(text));
  const policies = [
    ...pages.filter(({ text }) => text.includes("Content-Security-Policy")),
    ...filesBelow("src/tools/view").filter(({ text }) => text.includes("content-security-policy")),
  ];

  it("in the page itself, or from the server that serves it", () => {
    const without = pages.filter(({ text }) => !text.includes("Content-Security-Policy")).map(({ path }) => path);
    // Their server sends it with every answer.
    expect(without).toEqual(["src/hosts/view/html.ts"]);
    expect(policies.length).toBe(pages.length - without.length + 1);
  });

  it.each(policies.map(({ path, text }) => [path, text] as const))("%s", (_, text) => {
    const policy = /default-src '[^"]*/.exec(text)?.[0] ?? "";
    expect(policy).toMatch(/^default-src 'none'/);
    expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*(?:unsafe-inline|\*|http:|data:)/);
    if (policy.includes("connect-src")) expect(policy).toMatch(/connect-src 'self'/);
  });
});

describe("keys from a workbook reach no prototype", () => {
  const names = () =>
    [Object.prototype, Array.prototype, Function.prototype].map((each) => Object.getOwnPropertyNames(each));
  const before = JSON.stringify(names());
  const tables = RECORDS.flatMap((record) =>
    Object.values(record.parameters).flatMap(({ shape }, place) =>
      shape === "table" || shape === "data" ? [[record.name, place] as const] : [],
    ),
  );

  it.each(tables)("%s, argument %i", (name, place) => {
    const record = RECORDS.find((each) => each.name === name)!;
    for (const key of KEYS) {
      const given = exampleArguments(record);
      while (given.length <= place) given.push(undefined);
      const [header = ["Name"], ...rows] = (Array.isArray(given[place]) ? given[place] : []) as CellMatrix;
      given[place] = [[...header, key], ...rows.map((row) => [...row, key])];
      shopFunctions.call(name, given);
      given[place] = [header.map(() => key), header.map(() => key)];
      shopFunctions.call(name, given);
    }
    expect(JSON.stringify(names())).toBe(before);
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
  });
});

describe("text stays text", () => {
  const dangerous = ["=1+1", "+1", "-1", "@A1", '=HYPERLINK("http://x.invalid")', "\t=1"];

  it("a part called like a formula comes back as the same text, never calculated", () => {
    const bill: CellMatrix = [
      ["Part", "Material", "Thickness (in)", "Flanges (in)", "Width (in)", "Quantity"],
      ...dangerous.map((part) => [part, "A36", 0.25, 24, 12, 1]),
    ];
    const stock: CellMatrix = [
      ["Stock", "Material", "Thickness (in)", "Length (in)", "Width (in)", "Price"],
      ["4x8", "A36", 0.25, 96, 48, 300],
    ];
    const shears: CellMatrix = [
      ["Shear", "Rated thickness (in)", "Cut length (in)"],
      ["Shear 1", 0.3125, 98],
    ];
    const { value } = shopFunctions.call("CUT.PLAN", [bill, shears, stock]);
    const texts = (value as CellMatrix).flat().filter((each) => typeof each === "string");
    for (const part of dangerous) expect(texts.some((each) => (each as string).includes(part.trim()))).toBe(true);
  });
});
