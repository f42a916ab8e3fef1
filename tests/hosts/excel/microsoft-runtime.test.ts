/** The built functions behind Microsoft's own runtime in a real Chromium, with values as Excel sends them. */
import { readFileSync } from "node:fs";
import { availableParallelism, loadavg } from "node:os";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import { CellError, type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { launchedBrowser } from "./browser.ts";
import { releasedAddIn } from "./built.ts";
import { isSame } from "./checked-bundle.ts";
import { ExcelHost, type HostOptions, type Metadata } from "./excel-host.ts";
import { type Answerer, EXAMPLES, type KnownAnswer, publishedAnswers } from "./known-answers.ts";
import { hasOfficeJs, PLATFORMS, routeOfficeJs, SKIPPED } from "./office-js.ts";
import { served } from "./served.ts";

const LONG = 120_000;
const ENOUGH = 500; // published rows, at least
let browser: Browser;
let server: Awaited<ReturnType<typeof served>>;
let metadata: Metadata;
let excel: ExcelHost;
let published: readonly KnownAnswer[];
const opened = (options: HostOptions = {}) => ExcelHost.open(browser, server.origin, metadata, options);

describe.skipIf(!hasOfficeJs)(`Microsoft's custom functions runtime${SKIPPED}`, () => {
  beforeAll(async () => {
    const folder = await releasedAddIn();
    metadata = JSON.parse(readFileSync(`${folder}/functions.json`, "utf8"));
    published = await publishedAnswers();
    server = await served(folder);
    browser = await launchedBrowser();
    excel = await opened();
  }, 300_000);
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  /** What is not as published, or not cell for cell as the command line answers the same call. */
  const wrong = async (known: readonly KnownAnswer[]): Promise<string[]> => {
    const found: string[] = [];
    const call: Answerer = async (name, given) => {
      const answer = await excel.call(name, given);
      const headless = asShown(shopFunctions.call(name, given).value);
      if (!isNear(answer, headless))
        found.push(`${name}: ${JSON.stringify(answer)}, but without Excel ${JSON.stringify(headless)}`);
      return answer;
    };
    const answers = await Promise.all(known.map((row) => row.answeredBy(call)));
    known.forEach((row, i) => {
      if (!isSame(answers[i]!, row)) found.push(`${row.what}: ${JSON.stringify(answers[i])}`);
    });
    return found;
  };

  it("answers every record's example", { timeout: LONG }, async () => {
    expect(EXAMPLES).toHaveLength(RECORDS.length);
    expect(await wrong(EXAMPLES)).toEqual([]);
  });

  it(`answers at least ${ENOUGH} published figures of tests/reference`, { timeout: LONG }, async () => {
    console.log(`${published.length} published figures through Microsoft's runtime`);
    expect(published.length).toBeGreaterThanOrEqual(ENOUGH);
    expect(await wrong(published)).toEqual([]);
  });

  it("spills a block cell by cell as the command line answers it", async () => {
    const expected = shopFunctions.call("FUNCTIONS", []).value as CellMatrix;
    const answer = (await excel.call("FUNCTIONS", [])) as CellMatrix;
    expect(answer).toEqual(expected.map((row) => row.map((cell) => cell ?? "")));
    expect(answer.length).toBe(RECORDS.length + 1);
  });

  const column = [[0.04], [null], [new CellError("#DIV/0!")], ["abc"], [new CellError("#REF!")]];
  const rest = [
    [[0.16], [null], [0.16], [0.16], [0.16]],
    [[90], [null], [90], [90], [90]],
  ];
  it.each<[string, HostOptions]>([
    ["null, errors as objects", { blank: null }],
    ['"", errors as objects', { blank: "" }],
    ["null, errors as data types", { blank: null, richData: true }],
  ])("keeps every cell of a range in its own place: blanks as %s", async (_, options) => {
    const host = await opened(options);
    expect(await host.call("BEND.SETBACK", [column, ...rest])).toEqual([
      [0.2],
      [""],
      [new CellError("#DIV/0!")],
      [new CellError("#VALUE!", expect.stringMatching(/^thickness must be .*; got "?abc/))],
      [new CellError("#VALUE!", expect.stringContaining("#REF!"))], // may come in but not go out
    ]);
    await host.page.context().close();
  });

  it.each([
    [null, 2],
    ["", 2],
    [0, 0],
  ] as const)("tells an Excel that sends blanks as %j by its canary", async (blank, seen) => {
    const host = await opened({ blank });
    expect(await host.call("EMPTY.CELLS", [[[null], [null]]])).toBe(seen);
    await host.page.context().close();
  });

  it("shows a refusal's own code and sentence, thrown or from a worker", async () => {
    const [thrown, worker] = await Promise.all([
      excel.call("BEND.SETBACK", ["abc", 0.16, 90]),
      excel.call("BEND.ORDER", ["1;2;1", 90, 0.125, 0.125]),
    ]);
    expect(thrown).toEqual(new CellError("#VALUE!", expect.stringMatching(/^thickness must be /)));
    expect(worker).toEqual(new CellError("#VALUE!", expect.stringMatching(/^outlines must be /)));
  });

  it("loads the worker's file only when a long function is asked", { timeout: LONG }, async () => {
    const host = await opened();
    const loads = () => host.asked.filter((url) => url.includes("/long.js")).length;
    await host.call("BEND.SETBACK", [0.04, 0.16, 90]);
    expect(loads()).toBe(0);
    const { example } = RECORDS.find(({ name }) => name === "BEND.ORDER")!;
    expect(example.formula).toContain("BEND.ORDER");
    await host.call("BEND.ORDER", ["1;2;1", 90, 0.125, 0.125]);
    expect(loads()).toBe(1);
    await host.page.context().close();
  });

  it("cancels a long call: its worker ends, and the next call is answered by a fresh one", {
    timeout: LONG,
  }, async () => {
    const host = await opened();
    const first = await host.start("BEND.ORDER", ["1;2;1", 90, 0.125, 0.125]);
    const second = await host.start("BEND.ORDER", ["1;2;1", 90, 0.125, 0.125]);
    await expect.poll(() => host.asked.some((url) => url.includes("/long.js"))).toBe(true);
    await first.cancel();
    const [cancelled, answered] = await Promise.all([first.answer, second.answer]);
    expect(isCellError(cancelled)).toBe(true);
    expect(answered).toEqual(new CellError("#VALUE!", expect.stringMatching(/^outlines must be /)));
    await host.page.context().close();
  });

  it("with the functions.json of an older version: answers as with the newer argument omitted, and says so", async () => {
    const host = await opened();
    const before = await host.call("BEND.SETBACK", [0.04, 0.16, 90]);
    expect(await host.call("VERSION", [])).not.toContain("function list");
    host.metadata = {
      ...metadata,
      functions: metadata.functions.map((one) =>
        one.name === "BEND.SETBACK" ? { ...one, parameters: one.parameters.slice(0, 3) } : one,
      ),
    };
    expect(await host.call("BEND.SETBACK", [0.04, 0.16, 90])).toBe(before);
    expect(await host.call("VERSION", [])).toContain("function list of another version");
    await host.page.context().close();
  });

  it.each(Object.entries(PLATFORMS))("%s: its host file loads behind the page's policy", async (name, { file }) => {
    const host = await opened({ platform: name as keyof typeof PLATFORMS });
    expect(host.asked.filter((url) => url.endsWith(`/${file}`))).toHaveLength(1);
    expect(await host.page.evaluate("violations")).toEqual([]);
    expect(host.missing).toEqual([]);
    // Outside of Excel on the web there is no frame around the page to talk to, and office.js says just that.
    expect(host.complaints.filter((words) => !words.includes("conversationId"))).toEqual([]);
    const ids = await host.page.evaluate("Object.keys(CustomFunctions._association.mappings)");
    expect((ids as string[]).sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
    expect(await host.call("BEND.SETBACK", [0.04, 0.16, 90])).toBe(0.2);
    await host.page.context().close();
  });

  it("is ready within 150 ms after office.js", { timeout: LONG }, async ({ skip }) => {
    const times: number[] = [];
    // Until one is quick enough: the quickest of nine is judged, and no later one can make it slower.
    while (times.length < 9 && !times.some((ms) => ms <= 150)) times.push(await readyAfter(browser, server.origin));
    times.sort((a, b) => a - b);
    console.log(`functions.js registered ${times.map((ms) => ms.toFixed(0)).join(", ")} ms after office.js had run`);
    // What else the machine is doing can only add to it.
    if (times[0]! > 150 && loadavg()[0]! > availableParallelism()) skip("the machine is too busy to say");
    expect(times[0]).toBeLessThanOrEqual(150);
  });
});

/** Two engines may differ in the last digits of a sine or a power, and in nothing else. */
function isNear(a: CellValue | CellMatrix, b: CellValue | CellMatrix): boolean {
  if (Array.isArray(a) && Array.isArray(b)) {
    const others = b.flat();
    return a.length === b.length && a.flat().every((cell, i) => isNear(cell, others[i]!));
  }
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b) <= 1e-12 * Math.max(1, Math.abs(b));
  if (isCellError(a) && isCellError(b)) return a.code === b.code && a.message === b.message;
  return a === b;
}

/** As it must leave Excel's runtime: blanks as empty text, a sentence with #VALUE! and #N/A only. */
function asShown(value: CellValue | CellMatrix): CellValue | CellMatrix {
  const cell = (one: CellValue): CellValue =>
    isCellError(one)
      ? new CellError(one.code, /^#(?:VALUE!|N\/A)$/.test(one.code) ? one.message : undefined)
      : (one ?? "");
  if (!Array.isArray(value)) return cell(value);
  const rows = value.map((row) => row.map(cell));
  return rows.length === 1 && rows[0]!.length === 1 ? rows[0]![0]! : rows;
}

/** Milliseconds from the end of office.js to the end of functions.js, in a fresh page. */
async function readyAfter(browser: Browser, origin: string): Promise<number> {
  const page = await browser.newPage();
  const marked = (name: string, body: string) => `${body}\nperformance.mark(${JSON.stringify(name)});`;
  await routeOfficeJs(page);
  await page.route("**/office.js", (route) =>
    route.fulfill({
      contentType: "text/javascript",
      body: marked("office", readFileSync("node_modules/@microsoft/office-js/dist/office.js", "utf8")),
    }),
  );
  await page.route("**/functions.js*", async (route) => {
    const response = await route.fetch();
    await route.fulfill({ response, body: marked("functions", await response.text()) });
  });
  await page.goto(`${origin}/taskpane.html?${PLATFORMS.Windows.query}`);
  await page.waitForFunction('performance.getEntriesByName("functions").length > 0');
  const [from, to] = await page.evaluate(() =>
    ["office", "functions"].map((name) => performance.getEntriesByName(name)[0]!.startTime),
  );
  await page.close();
  return to! - from!;
}
