/** The built functions bundle in a real Chromium. */

import { readFileSync } from "node:fs";
import { runInNewContext } from "node:vm";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import { functionId } from "../../../src/hosts/excel/function-id.ts";
import type { CellError } from "../../../src/units/cell.ts";
import { launchedBrowser } from "./browser.ts";
import { builtAddIn, releasedAddIn } from "./built.ts";
import { callInPage } from "./call-in-page.ts";
import { parameterCount, wrongAnswers, wrongRefusals } from "./checked-bundle.ts";
import { EXAMPLES, type KnownAnswer, publishedAnswers } from "./known-answers.ts";
import { type Opened, openedPane } from "./opened-pane.ts";
import { served } from "./served.ts";

/** A bundle with one wrong function and one that takes long, both put there on purpose. */
const BROKEN = [
  {
    file: "src/cells/functions/bend-setback.ts",
    source: `import { bendSetback as right } from RIGHT;
      export const bendSetback = { ...right, calculate: (inputs, call) => right.calculate(inputs, call) * 1.001 };`,
  },
  {
    file: "src/cells/functions/tolerance-length.ts",
    source: `import { toleranceLength as right } from RIGHT;
      export const toleranceLength = { ...right, long: true, calculate(inputs, call) {
        if (typeof document !== "undefined") return -1; // a worker has none
        fetch("/seen-from-the-worker");
        return right.calculate(inputs, call); } };`,
  },
];

let browser: Browser;
let known: readonly KnownAnswer[];
/** What the good bundle answers otherwise than it is known, and what it asked the network for meanwhile. */
let wrong: readonly string[];
let asked: readonly string[];
const opened: Record<string, Opened & { folder: string }> = {};
const closers: (() => Promise<void>)[] = [];

beforeAll(async () => {
  const published = await publishedAnswers();
  expect(published.length).toBeGreaterThan(50);
  expect(EXAMPLES).toHaveLength(RECORDS.length);
  known = [...published, ...EXAMPLES];
  browser = await launchedBrowser();
  closers.push(() => browser.close());
  for (const [name, building] of [
    ["good", releasedAddIn()],
    ["broken", builtAddIn("broken", { replace: BROKEN })],
  ] as const) {
    const folder = await building;
    const server = await served(folder);
    closers.push(server.close);
    opened[name] = { ...(await openedPane(browser, server.origin)), folder };
  }
  const { page, requests } = opened["good"]!;
  requests();
  wrong = await wrongAnswers(page, known);
  asked = requests();
}, 300_000);
afterAll(async () => {
  for (const close of closers) await close();
});

class CellErrorStandIn extends Error {
  constructor(_: string, message?: string) {
    super(message);
  }
}

describe("the built bundle", () => {
  it("registers exactly the functions of functions.json", async () => {
    const { page, folder } = opened["good"]!;
    const ids = await page.evaluate(() => [
      ...(globalThis as unknown as { associated: Map<string, unknown> }).associated.keys(),
    ]);
    const listed = JSON.parse(readFileSync(`${folder}/functions.json`, "utf8")).functions.map(
      ({ id }: { id: string }) => id,
    );
    expect(ids.sort()).toEqual(listed.sort());
    expect(ids).toHaveLength(RECORDS.length);
  });

  it("answers the published figures of tests/reference and every record's example, so that no function is left out", () => {
    expect(wrong).toEqual([]);
  });

  it("refuses nonsense in every function that takes anything, naming the argument", async () => {
    const takers = RECORDS.filter(({ parameters }) => Object.keys(parameters).length > 0);
    expect(await wrongRefusals(opened["good"]!.page, takers)).toEqual([]);
  });

  it("answers ranges with blocks, blanks with empty text, and leaves an error cell in its own place", async () => {
    const { page } = opened["good"]!;
    const column = [[0.04], [null], [{ code: "#DIV/0!" } as never], ["abc"]];
    expect(
      await callInPage(page, "BEND.SETBACK", [column, [[0.16], [null], [0.16], [0.16]], [[90], [null], [90], [90]]], 4),
    ).toEqual([
      [0.2],
      [""],
      [{ error: { code: "#DIV/0!" } }],
      [{ error: { code: "#VALUE!", message: expect.stringContaining("thickness must be") } }],
    ]);
  });

  it("asks the network for nothing and needs no eval while it calculates", async () => {
    const { page, complaints } = opened["good"]!;
    // The worker's own file is fetched once, from where functions.js came from.
    expect(asked).toHaveLength(1);
    expect(asked.filter((url) => !url.includes("/long.js?"))).toEqual([]);
    expect(await page.evaluate("violations")).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it("needs nothing of a page: it registers and answers where there is no document, window or network", () => {
    const associated = new Map<string, (...given: unknown[]) => unknown>();
    const CustomFunctions = {
      Error: CellErrorStandIn,
      associate: (id: string, run: () => unknown) => associated.set(id, run),
    };
    runInNewContext(readFileSync(`${opened["good"]!.folder}/functions.js`, "utf8"), { CustomFunctions });
    expect([...associated.keys()].sort()).toEqual(RECORDS.map(({ name }) => functionId(name)).sort());
    // Arrays of the other context have another prototype: compared as text.
    expect(JSON.stringify(associated.get("BEND_SETBACK")!([[0.04]], [[0.16]], [[90]], null, {}))).toBe("[[0.2]]");
    // A long calculation is not even in the file, and says so.
    expect(() => associated.get("BEND_ORDER")!(...Array(9).fill([[1]]))).toThrow(/^runtime must be /);
  });

  it("weighs at most 60 KB gzip, 120 KB with the page", () => {
    const { folder } = opened["good"]!;
    const weight = (file: string) => gzipSync(readFileSync(`${folder}/${file}`), { level: 9 }).length;
    const functions = weight("functions.js");
    const page = ["pane.js", "pane.css", "taskpane.html"].map(weight).reduce((sum, size) => sum + size, functions);
    expect(functions).toBeLessThanOrEqual(60 * 1024);
    expect(page).toBeLessThanOrEqual(120 * 1024);
  });
});

describe("these checks themselves", () => {
  it("find the one function that was broken on purpose", async () => {
    const found = await wrongAnswers(opened["broken"]!.page, known);
    expect(found).not.toEqual([]);
    expect(found.filter((sentence) => !sentence.includes("BEND.SETBACK"))).toEqual([]);
  });

  it("see a request and a forbidden eval", async () => {
    const { page, requests } = opened["broken"]!;
    requests();
    await page.route("**/probe.js", (route) =>
      route.fulfill({ contentType: "text/javascript", body: 'try { eval("1") } catch {} fetch("functions.json")' }),
    );
    await page.addScriptTag({ url: "probe.js" });
    await expect.poll(() => requests().some((url) => url.endsWith("functions.json"))).toBe(true);
    expect(await page.evaluate("violations")).toContain("script-src");
  });
});

describe("a long function", () => {
  it("answers from a worker", async () => {
    const { page, requests } = opened["broken"]!;
    expect(await callInPage(page, "TOLERANCE.LENGTH", [250, "m", "mm"], 3)).toEqual([[0.5]]);
    // The watch over the network reaches into the worker: this one asks on purpose.
    await expect.poll(() => requests().some((url) => url.endsWith("/seen-from-the-worker"))).toBe(true);
  });

  it("is worked step by step there too, when a quick function asks for its working", async () => {
    const part = ["1;2;1", 90, 0.125, 0.125];
    const [given, count] = [["BEND.ORDER", ...part], parameterCount("WORKING")];
    const expected = shopFunctions.call("WORKING", given).value as CellError;
    expect(expected.message).toMatch(/^outlines must be /); // no tools given: the refusal comes from the real function
    expect(await callInPage(opened["good"]!.page, "WORKING", given, count)).toEqual({ error: { ...expected } });
  });

  it("brings its refusal and error cells back from there", async () => {
    const { page } = opened["broken"]!;
    expect(await callInPage(page, "TOLERANCE.LENGTH", [[[250], ["abc"]], "m", "mm"], 3)).toEqual([
      [0.5],
      [{ error: { code: "#VALUE!", message: expect.stringContaining("nominal must be") } }],
    ]);
  });
});
