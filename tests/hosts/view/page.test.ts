/** The page for people without Excel, by clicking and typing in a real Chromium. */

import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Session } from "../../../src/hosts/view/session.ts";
import { trade } from "../../../src/hosts/view/trade.ts";
import { writeWorkbookModel } from "../../../src/job/xlsx/write.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { PARTS } from "../../../src/tools/sample/stage-job/bill/job.ts";
import type { Kept, ToSave } from "../../../src/tools/view/copy-file.ts";
import { axeFindings } from "../axe-findings.ts";
import { launchedBrowser } from "../excel/browser.ts";
import { FILES, type Look, type OpenedPage, openedPage } from "./opened-page.ts";

/** A workbook with no bill in it. */
const EMPTY = new Uint8Array(
  writeWorkbookModel(
    {
      title: "Notes",
      sheets: [
        { name: "Notes", widths: [10], cells: [{ row: 1, column: 1, value: "nothing" }], print: { landscape: false } },
      ],
    },
    () => undefined,
  ),
);
const SAMPLE = new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"));
/** The page answers when it has calculated, however busy the machine is. */
const soon = (read: () => unknown) => expect.poll(read, { timeout: 40_000 });

let browser: Browser;
/** For what changes nothing in the workbook. */
let read: OpenedPage;
beforeAll(async () => {
  browser = await launchedBrowser();
  read = await openedPage(browser, SAMPLE);
}, 120_000);
afterAll(async () => {
  await read?.close();
  await browser.close();
});

async function visit(
  name: string,
  { isRefused = false, ...look }: Look & { readonly isRefused?: boolean },
  check: (opened: OpenedPage) => Promise<void>,
): Promise<void> {
  const opened = await openedPage(browser, SAMPLE, look);
  try {
    await checked(name, opened, check, isRefused);
  } finally {
    await opened.close();
  }
}

/** The same on the page that all readers share, from the list of lines on. */
async function reading(
  name: string,
  { width = 1280, height = 860, colorScheme = "light" }: Look,
  check: (opened: OpenedPage) => Promise<void>,
): Promise<void> {
  await read.page.setViewportSize({ width, height });
  await read.page.emulateMedia({ colorScheme });
  await place(read.page, "Problems");
  await checked(name, read, check);
}

async function checked(
  name: string,
  opened: OpenedPage,
  check: (opened: OpenedPage) => Promise<void>,
  isRefused = false,
): Promise<void> {
  await check(opened);
  await opened.shot(name);
  // The browser itself complains of a save that is refused.
  expect(opened.complaints.filter((words) => !(isRefused && words.includes("409")))).toEqual([]);
  expect(opened.strangers).toEqual([]);
}

/** A cell of the open sheet by its address. */
const cell = (page: Page, column: string, row: number) =>
  page.locator(`.grid [data-row="${row - 1}"] [data-column="${column.charCodeAt(0) - 65}"]`);
const place = (page: Page, name: string) => page.locator("#places").getByRole("button", { name, exact: true }).click();
async function table(page: Page, group: string, name?: string): Promise<void> {
  await place(page, group);
  if (name) await page.getByRole("tab", { name, exact: true }).click();
  await page.locator(".grid td").first().waitFor();
}
async function type(page: Page, column: string, row: number, text: string): Promise<void> {
  await cell(page, column, row).dblclick();
  await page.locator(".editing input").waitFor();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type(text === "" ? " " : text);
  await page.keyboard.press("Enter");
}
const figure = (page: Page, name: string) =>
  page.locator(`#line dt:text-is("${name}") + dd`).textContent({ timeout: 10_000 });
const status = (page: Page) => page.locator("#line .badge").textContent();
const said = (page: Page) => page.locator("#message").textContent();
const counter = (page: Page, name: string) =>
  page.locator("#counters button").filter({ hasText: name }).locator("b").textContent();
const settled = (page: Page) => page.locator("body:not(.old)").waitFor();

/** The status of the bill's first line as its plan says it, with the thickness as it is or typed anew. */
function planned(thickness?: string): string {
  const session = new Session(SAMPLE, trade);
  const { sheet } = session.board()!.header;
  if (thickness !== undefined) session.edit({ sheet, row: 4, column: 4, typed: thickness });
  return session.line(2).report!.status;
}

describe("the lines of a bill", () => {
  it("counts and lists them as the plan does, the worst first, and opens the first problem with its picture", () =>
    visit("lines", {}, async ({ page }) => {
      const { lines } = new Session(SAMPLE, trade).board()!;
      const of = (wanted: string) => String(lines.filter(({ status: is }) => is === wanted).length);
      await settled(page);
      expect([await counter(page, "stop"), await counter(page, "check"), await counter(page, "clear")]).toEqual([
        of("stop"),
        of("check"),
        of("clear"),
      ]);
      expect(await counter(page, "late")).toMatch(/^\d+$/);
      const first = lines.find(({ status: is }) => is === "stop")!;
      await soon(() => page.locator("#line h2").textContent()).toContain(first.part);
      await soon(() => page.locator("#line figure svg").count()).toBeGreaterThan(0);
      await soon(() => page.locator("#line .sentence").first().textContent()).toBe(first.reason);
      await page.locator("#counters button").filter({ hasText: "check" }).click();
      await soon(() => page.locator("[role=option]").count()).toBe(Number(of("check")));
      await page.locator("#counters button").filter({ hasText: "check" }).click();
      await soon(() => page.locator("[role=option]").count()).toBe(lines.length);
      await page.locator("#counters button").filter({ hasText: "late" }).click();
      await soon(() => page.locator("[role=option]").count()).toBe(Number(await counter(page, "late")));
      const reasons = await page.locator("[role=option] .reason").allTextContents();
      expect(reasons.filter((reason) => reason === "—")).toEqual([]);
      expect(reasons.join()).toMatch(/Late by \d+\.\d working hours\./);
    }));

  it("a whole task by keyboard alone: open, next problem, apply its fix, undo, add a line, save", () =>
    visit("by-keyboard", {}, async ({ page, saved }) => {
      const focused = () => page.evaluate(() => document.activeElement?.getAttribute("role"));
      await soon(focused).toBe("listbox"); // at once: the keys that the foot names act from the first screen on
      await settled(page);
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      await page.keyboard.press("F6");
      await soon(focused).toBe("listbox");
      const title = () => page.locator("#line h2").textContent();
      const first = await title();
      await page.evaluate(() => (document.activeElement as HTMLElement).blur());
      await page.keyboard.press("n");
      await soon(title).not.toBe(first);
      // On to the first that has a fix which makes it clear, and that nobody need be asked for.
      const clears = page.locator("#line .apply", { hasText: "then clear", hasNotText: "customer" });
      for (let i = 0; i < 30 && !(await clears.count()); i++) {
        const before = await title();
        await page.keyboard.press("n");
        await soon(title).not.toBe(before);
      }
      const stops = await counter(page, "clear");
      const mended = (await title())!.split(" ")[0]!;
      await page.keyboard.press("f");
      await soon(() => said(page)).toMatch(/^\d+ lines? changed, .*\d+ now clear/);
      await soon(() => status(page)).toContain("CLEAR");
      await soon(async () => Number(await counter(page, "clear"))).toBeGreaterThan(Number(stops));
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => status(page)).not.toContain("CLEAR");
      await soon(async () => (await title())!.split(" ")[0]).toBe(mended);
      await soon(() => counter(page, "clear")).toBe(stops);
      await page.keyboard.press("ControlOrMeta+l");
      await soon(() => page.locator("#address").textContent()).toBe(`A${PARTS.length + 5}`);
      for (const typed of ["NEW-1", "", "12", "A36", "3/16", "2; 3", "90", "24"]) {
        if (typed !== "") await page.keyboard.type(typed);
        await page.keyboard.press("Tab");
      }
      await soon(() => page.locator("#line h2").textContent()).toContain("NEW-1");
      await soon(() => status(page)).not.toContain("STOP");
      await page.keyboard.press("Escape");
      await page.keyboard.press("Tab");
      expect(await page.evaluate(() => document.activeElement?.closest(".grid"))).toBeNull();
      await page.keyboard.press("ControlOrMeta+s");
      await soon(() => said(page)).toBe("Saved as copy.xlsx");
      const board = new Session(saved[0]!, trade).board()!;
      expect(board.lines.at(-1)!.part).toBe("NEW-1");
      expect(board.lines.length).toBe(PARTS.length + 1);
    }));

  it("the next line begins at its top, and the focus stays in the pane", () =>
    visit("top", {}, async ({ page }) => {
      await settled(page);
      const title = () => page.locator("#line h2").textContent();
      const first = await title();
      await page.getByRole("button", { name: "Show in the table" }).focus();
      await page.locator("#line").evaluate((pane) => pane.scrollTo(0, 400));
      await page.keyboard.press("n");
      await soon(title).not.toBe(first);
      expect(await page.locator("#line").evaluate((pane) => pane.scrollTop)).toBe(0);
      expect(await page.evaluate(() => document.activeElement?.closest("#line") !== null)).toBe(true);
    }));

  it("a fix is applied by a click, says what changed by it, and is taken back beside it", () =>
    visit("fixed", {}, async ({ page }) => {
      await page.locator("[role=option]", { hasText: "RT-08" }).click(); // a flange that barely rests on its die
      await soon(() => page.locator("#line h2").textContent()).toContain("RT-08");
      const button = page.locator("#line .apply");
      const wanted = /^Use die (.*), then clear$/.exec((await button.textContent())!)![1]!;
      await button.click();
      await soon(() => status(page)).toContain("CLEAR");
      await soon(() => said(page)).toContain("1 line changed, 1 now clear.");
      await page.getByRole("button", { name: "Show in the table" }).click();
      await soon(() => cell(page, "I", 22).textContent()).toBe(wanted);
      await page.locator("#message").getByRole("button", { name: "Undo" }).click();
      await soon(() => status(page)).toContain("CHECK");
      await soon(() => cell(page, "I", 22).textContent()).not.toBe(wanted);
    }));

  it("what only the customer can agree to is asked before a key applies it, and the bill says so then", () =>
    visit("asked", {}, async ({ page }) => {
      await page.locator("[role=option]", { hasText: "DF-09" }).click(); // no brake has the force: a thinner sheet
      await soon(() => page.locator("#line h2").textContent()).toContain("DF-09");
      await page.keyboard.press("f");
      await soon(() => said(page)).toContain("if the customer agrees?");
      expect(await status(page)).toContain("STOP");
      await page.keyboard.press("Enter");
      await soon(() => status(page)).not.toContain("STOP");
      await soon(() => page.locator("#line .about").textContent()).toContain(
        "offered in 0.1875 in, asked for 0.2500 in",
      );
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => status(page)).toContain("STOP");
      await soon(() => page.locator("#line .about").textContent()).not.toContain("offered");
    }));

  it("a fix that needs a column the bill has not adds it by the same key, and undoing takes both back", () =>
    visit("column", {}, async ({ page }) => {
      await page.locator("[role=option]", { hasText: "WW-08" }).click();
      await soon(() => page.locator("#line .apply").textContent()).toMatch(/^Add the column Brake, use die /);
      await page.keyboard.press("f");
      await soon(() => status(page)).toContain("CLEAR");
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => status(page)).toContain("CHECK");
      await soon(() => said(page)).toBe("Undone.");
      await page.keyboard.press("n");
      await soon(() => said(page)).toBe("");
    }));

  it("letters of the list can be turned off", () =>
    reading("letters", {}, async ({ page }) => {
      await page.getByRole("button", { name: "Letters on" }).click();
      await page.locator("[role=listbox]").focus();
      const before = await page.locator("#line h2").textContent();
      await page.keyboard.press("n");
      await page.keyboard.press("ArrowDown");
      await soon(() => page.locator("#line h2").textContent()).not.toBe(before);
      expect(await page.locator("[aria-selected=true][role=option]").getAttribute("data-row")).toBe(
        await page.locator("[role=option]").nth(1).getAttribute("data-row"),
      );
      await page.getByRole("button", { name: "Letters off" }).click();
      await page.getByRole("button", { name: "Letters on" }).waitFor();
    }));
});

describe("the tables of a workbook", () => {
  it("an edited thickness changes flat, tons and status at once, beside the grid and on the sheet of answers", () =>
    visit("edited", {}, async ({ page }) => {
      await table(page, "Bill");
      await cell(page, "A", 5).click();
      await soon(() => status(page)).toContain(planned().toUpperCase());
      const before = [await figure(page, "Flat"), await figure(page, "Force")];
      await type(page, "E", 5, "1/4");
      await soon(() => figure(page, "Thickness")).toMatch(/^0\.25(?:0)? in/);
      await soon(() => status(page)).toContain(planned("1/4").toUpperCase());
      const after = [await figure(page, "Flat"), await figure(page, "Force")];
      expect(after[0]).not.toBe(before[0]);
      expect(after[1]).not.toBe(before[1]);
      await page.getByRole("tab", { name: "Answers" }).click();
      await soon(() => cell(page, "F", 9).textContent()).toBe(Number.parseFloat(after[0]!).toFixed(3));
      await cell(page, "A", 9).click();
      await soon(() => page.locator("#line h2").textContent()).toContain("DF-01");
    }));

  it("a wrong entry is marked where it stands, with what may stand there, and stops its line alone", () =>
    visit("wrong", {}, async ({ page }) => {
      await table(page, "Bill");
      await type(page, "D", 5, "steel");
      await soon(() => cell(page, "D", 5).getAttribute("aria-invalid")).toBe("true");
      await soon(() => cell(page, "D", 5).getAttribute("title")).toMatch(/must be .*; got "steel"/);
      await cell(page, "D", 5).click();
      await soon(() => page.locator("#cell .fault").textContent()).toMatch(/"Material" must be/);
      await soon(() => status(page)).toContain("STOP");
      await soon(() => page.locator("#line .sentence").first().textContent()).toMatch(/must be .*; got "steel"/);
      await page.getByRole("tab", { name: "Answers" }).click();
      await soon(() => cell(page, "M", 9).textContent()).toContain("stop");
      await soon(() => cell(page, "M", 9).getAttribute("class")).toContain("status stop");
      await soon(() => cell(page, "F", 10).textContent()).toMatch(/^\d/); // the other lines are right as before
    }));

  it("a calculated cell and a table's header cannot be typed over, and say why; a formula is refused", () =>
    reading("locked", {}, async ({ page }) => {
      await table(page, "Bill");
      await cell(page, "E", 4).dblclick();
      await soon(() => said(page)).toContain("header of the table Parts");
      await type(page, "C", 5, "=1+1");
      await soon(() => said(page)).toContain("edit formulas in Excel");
      expect(await cell(page, "C", 5).textContent()).toBe("48");
      await page.getByRole("tab", { name: "Answers" }).click();
      await cell(page, "G", 10).dblclick();
      await soon(() => said(page)).toContain("filled by the formula in A9");
      await soon(() => page.locator(".editing").count()).toBe(0);
    }));

  it("is typed by keyboard alone: arrows, a figure to begin, Enter, Escape; the next table by a key", () =>
    visit("keyboard", {}, async ({ page }) => {
      await table(page, "Bill");
      await cell(page, "B", 5).click();
      await page.keyboard.press("ArrowRight");
      await soon(() => page.locator("#address").textContent()).toBe("C5");
      await page.keyboard.press("9");
      await page.keyboard.type("6");
      await page.keyboard.press("Enter");
      await soon(() => cell(page, "C", 5).textContent()).toBe("96");
      await page.keyboard.press("7");
      await page.keyboard.press("Escape");
      expect(await cell(page, "C", 5).textContent()).toBe("96");
      const tab = () => page.getByRole("tab", { selected: true }).textContent();
      for (const [key, name] of [
        ["Alt+PageDown", "Job"],
        ["Alt+PageDown", "Answers"],
        ["Control+PageUp", "Job"],
      ] as const) {
        await page.keyboard.press(key);
        await soon(tab).toBe(name);
        await soon(() => page.evaluate(() => document.activeElement?.getAttribute("role"))).toBe("grid");
      }
      await page.keyboard.press("F6");
      await page.keyboard.press("Shift+F6");
      await soon(() => page.evaluate(() => document.activeElement?.getAttribute("role"))).toBe("grid");
    }));

  it("rows are put in and taken out, and taken back", () =>
    visit("rows", {}, async ({ page }) => {
      await table(page, "Bill");
      await cell(page, "A", 6).click();
      const part = await cell(page, "A", 6).textContent();
      await page.keyboard.press("Insert");
      await soon(() => cell(page, "A", 6).textContent()).toBe("NEW");
      await soon(() => cell(page, "A", 7).textContent()).toBe(part);
      await page.getByRole("button", { name: "Remove row" }).click();
      await soon(() => cell(page, "A", 6).textContent()).toBe(part);
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => cell(page, "A", 6).textContent()).toBe("NEW");
    }));

  it("many cells are pasted as one change", () =>
    visit("pasted", {}, async ({ page }) => {
      await table(page, "Bill");
      await cell(page, "C", 5).click();
      const old = await cell(page, "D", 6).textContent();
      await page.evaluate(() => {
        const data = new DataTransfer();
        data.setData("text/plain", "11\tA36\n12\t304\n");
        document.activeElement!.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true }));
      });
      await soon(() => cell(page, "D", 6).textContent()).toBe("304");
      await soon(() => cell(page, "C", 5).textContent()).toBe("11");
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => cell(page, "D", 6).textContent()).toBe(old);
      await soon(() => cell(page, "C", 5).textContent()).toBe("48");
    }));

  it("an edit is taken back and made again, by key and by button, from another sheet too", () =>
    visit("undone", {}, async ({ page }) => {
      await table(page, "Bill");
      await cell(page, "A", 5).click();
      await soon(() => figure(page, "Thickness")).toMatch(/^0\.188 in \(3\/16\)/);
      await soon(() => page.locator("#undo").isDisabled()).toBe(true);
      await type(page, "E", 5, "1/4");
      await soon(() => cell(page, "E", 5).textContent()).toBe("1/4");
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => cell(page, "E", 5).textContent()).toBe("3/16");
      await soon(() => said(page)).toBe("Undone.");
      await page.locator("#redo").click();
      await soon(() => cell(page, "E", 5).textContent()).toBe("1/4");
      await soon(() => page.locator("#redo").isDisabled()).toBe(true);
      // From another sheet the one with the edit is shown again.
      await page.getByRole("tab", { name: "Answers" }).click();
      await page.locator("#undo").click();
      await soon(() => page.getByRole("tab", { selected: true }).textContent()).toBe("Parts");
      await soon(() => cell(page, "E", 5).textContent()).toBe("3/16");
      await soon(() => page.locator("#address").textContent()).toBe("E5");
      await soon(() => figure(page, "Thickness")).toMatch(/^0\.188 in \(3\/16\)/);
    }));

  it("headings stay in sight, the part stays beside its figures, and numbers stand right whatever they were typed as", () =>
    reading("headings", {}, async ({ page }) => {
      await table(page, "Bill");
      await page.locator(".grid").evaluate((grid) => grid.scrollTo(400, 900));
      await soon(() => cell(page, "A", 40).count()).toBe(1);
      const top = (await page.locator(".grid").boundingBox())!.y;
      await soon(async () => (await page.locator(".grid .heading").boundingBox())!.y - top < 40).toBe(true);
      expect(
        (await cell(page, "A", 40).boundingBox())!.x - (await page.locator(".grid").boundingBox())!.x,
      ).toBeLessThan(60);
      const aligned = (column: string) => cell(page, column, 40).evaluate((one) => getComputedStyle(one).textAlign);
      expect([await aligned("D"), await aligned("E")]).toEqual(["left", "right"]);
    }));

  it("the function guide stands behind More", () =>
    reading("functions", {}, async ({ page }) => {
      await place(page, "More");
      await page.getByRole("tab", { name: "Functions" }).click();
      await page.getByLabel("What do you want to know?").fill("setback");
      await soon(() => page.locator(".guide details").first().textContent()).toContain("BEND.SETBACK");
    }));
});

describe("the file", () => {
  it("what is saved opens again with the edit and its answers, and the rest of the file untouched", () =>
    visit("saved", {}, async ({ page, saved }) => {
      await table(page, "Bill");
      await type(page, "E", 5, "1/4");
      await soon(() => cell(page, "E", 5).textContent()).toBe("1/4");
      await page.getByRole("button", { name: "Save a copy" }).click();
      await soon(() => said(page)).toBe("Saved as copy.xlsx");
      const [before, after] = [readWorkbook(SAMPLE), readWorkbook(saved[0]!)];
      const parts = after.sheets.find(({ name }) => name === "Parts")!;
      expect(parts.values[4]![4]).toBe("1/4");
      const changed = after.package.entries
        .filter((entry, i) => entry.crc !== before.package.entries[i]!.crc)
        .map(({ name }) => name);
      expect(changed.length).toBeGreaterThan(1);
      expect(changed.every((name) => /worksheets\/sheet\d+\.xml$/.test(name))).toBe(true);
    }));

  it("what somebody else wrote is not written over: it is said, and another name is offered", () => {
    const save = ({ name }: ToSave): Kept =>
      name === "other.xlsx"
        ? { words: "Saved as other.xlsx", name, version: "2" }
        : { words: "copy.xlsx is there already: nothing was written.", name: "other.xlsx", version: undefined };
    return visit("conflict", { save, isRefused: true }, async ({ page }) => {
      await page.getByRole("button", { name: "Save a copy" }).click();
      await soon(() => said(page)).toContain("nothing was written");
      await page.getByRole("button", { name: "Save as other.xlsx" }).click();
      await soon(() => said(page)).toBe("Saved as other.xlsx");
    });
  });

  it("a file that changed on disk is named when the person comes back to the page", () => {
    let now = SAMPLE;
    return visit("changed", { bytes: () => now }, async ({ page }) => {
      now = EMPTY;
      await page.evaluate(() => dispatchEvent(new Event("focus")));
      await soon(() => said(page)).toContain("was changed on disk");
      await page.getByRole("button", { name: "Open it again" }).click();
      await soon(() => page.locator(".start h2").textContent()).toBe("Start a bill");
    });
  });

  it("a workbook that is dropped is opened", () =>
    visit("dropped", { bytes: () => EMPTY }, async ({ page }) => {
      await page.evaluate(
        (bytes) => {
          const data = new DataTransfer();
          data.items.add(new File([new Uint8Array(bytes)], "theirs.xlsx"));
          dispatchEvent(new DragEvent("drop", { dataTransfer: data }));
        },
        [...SAMPLE],
      );
      await soon(() => page.locator("#file").textContent()).toBe("theirs.xlsx");
      await soon(() => page.locator("[role=option]").count()).toBe(PARTS.length);
    }));

  it("a workbook without a bill says so, and a bill is started from a pasted list, its columns as the person says", () =>
    visit("started", { bytes: () => EMPTY }, async ({ page }) => {
      await soon(() => page.locator(".missing").textContent()).toContain("no bill");
      await page
        .getByLabel("or paste it here")
        .fill(
          "Part no\tMatl\tThk\tLegs\tAngle\tAcross\tQty\nA-1\tA36\t1/4\t2; 3\t90\t12\t10\nB-2\t304\t11 ga\t2; 3\t90\t12\t4",
        );
      await soon(() => page.locator(".start [role=status]").textContent()).toMatch(/2 lines read|cannot be read/);
      const across = page.getByLabel("Column F Across is read as");
      expect(await across.inputValue()).toBe("");
      await across.selectOption("Width");
      await soon(() => page.locator(".start [role=status]").textContent()).toBe("2 lines read.");
      await page.getByRole("button", { name: "Start a bill" }).click();
      await soon(() => page.locator("[role=option]").count()).toBe(2);
      await soon(() => said(page)).toContain("is begun: save it to keep it");
    }));
});

describe("what is cut and bent", () => {
  it("shows the plan's sheets one after another, and names the cut under the pointer", () =>
    reading("cuts", {}, async ({ page }) => {
      await place(page, "Cutting");
      const planned = new Session(SAMPLE, trade).cuts();
      await soon(() => page.locator(".cuts h2").textContent()).toBe(
        `Pattern 1 of ${planned.length}: ${planned[0]!.title}`,
      );
      const [, second] = planned[0]!.cuts;
      await page.locator(".cuts li").nth(1).hover();
      await soon(() => page.locator(".cuts .named").textContent()).toBe(`Cut ${second!.number}: ${second!.says}`);
      await soon(() => page.locator(`.cuts line.marked[data-cut="${second!.number}"]`).count()).toBeGreaterThan(0);
      await page.getByRole("button", { name: "Next pattern" }).click();
      await soon(() => page.locator(".cuts h2").textContent()).toContain(`Pattern 2 of ${planned.length}`);
      // Any sheet is one click away, or one key from the one that is shown.
      const small = page.locator(".cut-strip button");
      expect(await small.count()).toBe(planned.length);
      await small.nth(planned.length - 1).click();
      await soon(() => page.locator(".cuts h2").textContent()).toContain(`Pattern ${planned.length} of`);
      await page.keyboard.press("ArrowRight");
      await soon(() => page.locator(".cuts h2").textContent()).toContain("Pattern 1 of");
      expect(await page.locator(".cut-strip [tabindex='0']").count()).toBe(1);
    }));

  it("marks the hit that collides, after those that can be made", () =>
    reading("collides", {}, async ({ page }) => {
      await page.locator("[role=option]", { hasText: "LC-10" }).click();
      await soon(() => page.locator("#line figure.fails figcaption").textContent()).toContain("meets the punch");
      await soon(() => page.locator("#line figure.fails .ring").count()).toBe(1);
      await soon(() => page.locator("#line figcaption b").allTextContents()).toContain("Hit 1: end of bend 1");
      expect(await page.locator("#line figure", { hasText: "Hit 1: end of bend 1" }).locator(".ring").count()).toBe(0);
    }));

  it("shows every hit of a line as a picture", () =>
    reading("hits", {}, async ({ page }) => {
      await page.locator("[role=option]", { hasText: "LC-05" }).click();
      await soon(() => page.locator("#line h2").textContent()).toContain("LC-05");
      await soon(() => page.locator("#line figcaption b").allTextContents()).toEqual(
        expect.arrayContaining(["Hit 1: end of bend 1", "Flat", "Bent"]),
      );
      await soon(() => page.locator("#line figcaption b", { hasText: /^Hit \d/ }).count()).toBe(4);
    }));
});

describe("the look", () => {
  it.each([
    ["wide-light", { width: 1440, height: 900, colorScheme: "light" }],
    ["wide-dark", { width: 1440, height: 900, colorScheme: "dark" }],
    ["laptop", { width: 1280, height: 800, colorScheme: "light" }],
    ["tablet", { width: 820, height: 1100, colorScheme: "light" }],
    ["phone-light", { width: 390, height: 844, colorScheme: "light" }],
    ["phone-dark", { width: 390, height: 844, colorScheme: "dark" }],
  ] as const)(
    "%s: nothing outside the grid is clipped or lies on something else, and axe-core finds nothing",
    (name, look) =>
      // Where the line is a screen of its own, the way back leads through what was opened before.
      (look.width < 1024 ? visit : reading)(name, look, async ({ page, shot }) => {
        await settled(page);
        const seen = async (what: string) => {
          await soon(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(look.width);
          await soon(() => clipped(page)).toEqual([]);
          await soon(() => overlapping(page)).toEqual([]);
          expect(await axeFindings(page), what).toEqual([]);
          await shot(`${name}-${what}`);
        };
        await seen("list");
        await page.locator("[role=option]", { hasText: "LC-05" }).click();
        await soon(() => page.locator("#line svg").count()).toBeGreaterThan(3);
        await seen("line");
        if (look.width < 1024) {
          // One thing a screen: the list, the line, its drawing, and back.
          await page.locator("[role=listbox]").waitFor({ state: "hidden" });
          await page.getByRole("button", { name: "Drawings, hit by hit" }).click();
          await page.locator("#line .figures").waitFor({ state: "hidden" });
          await seen("drawing");
          await page.locator("#back").click();
          await page.locator("#line .figures").waitFor();
          await page.locator("#back").click();
          await page.locator("[role=listbox]").waitFor();
          // From a drawing to the list by its name: back leads to no line that was opened before.
          await page.locator("[role=option]", { hasText: "LC-05" }).click();
          await page.getByRole("button", { name: "Drawings, hit by hit" }).click();
          await place(page, "Problems");
          await page.locator("[role=listbox]").waitFor();
          await soon(() => page.evaluate(() => history.state)).toBe(null);
          await page.locator("[role=option]", { hasText: "LC-05" }).click();
          await page.locator("#back").click();
          await page.locator("[role=listbox]").waitFor();
        }
        await table(page, "Bill");
        await seen("bill");
        await place(page, "Cutting");
        await page.locator(".cuts figure svg").waitFor();
        await seen("cuts");
        const least = (selector: string) =>
          page
            .locator(selector)
            .evaluateAll((all) => Math.min(...all.map((one) => one.getBoundingClientRect().height)));
        // The sheet with most cuts: the small ones keep their height, and letters can be read.
        const cuts = new Session(SAMPLE, trade).cuts().map((sheet) => sheet.cuts.length);
        await page
          .locator(".cut-strip button")
          .nth(cuts.indexOf(Math.max(...cuts)))
          .click();
        await soon(() => least(".cut-strip svg")).toBe(48); // 3 rem
        await soon(() => least(".cuts figure text")).toBeGreaterThanOrEqual(7);
        // No way to another place is out of sight.
        const last = await page.locator("#places button").last().boundingBox();
        expect(last!.x + last!.width).toBeLessThanOrEqual(look.width);
        await place(page, "More");
        await page.locator(".start h2").waitFor();
        await seen("start");
      }),
  );

  it("the checks for clipping and overlap find what is wrong", () =>
    reading("spoiled", {}, async ({ page }) => {
      await page.locator("[role=option]", { hasText: "LC-05" }).click();
      await soon(() => page.locator("#line svg").count()).toBeGreaterThan(3);
      // As a rule, not on the elements: the line may be drawn again when an answer arrives.
      await page.evaluate(() => {
        const spoiled = new CSSStyleSheet();
        spoiled.replaceSync(".sentence, .note { width: 1500px } #line dl { margin-top: -40px }");
        document.adoptedStyleSheets = [spoiled];
      });
      await soon(() => clipped(page)).not.toEqual([]);
      await soon(() => overlapping(page)).not.toEqual([]);
      await page.evaluate(() => {
        document.adoptedStyleSheets = [];
      });
    }));
});

const clipped = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("header *, #bar *, #cell, #message, #line *, .start *, footer *:not(#places *)")]
      .filter((one) => !(one instanceof SVGElement) || one.tagName === "svg")
      .filter((one) => one.getBoundingClientRect().right > innerWidth + 0.5)
      .map((one) => `${one.tagName} ${one.textContent!.slice(0, 30)}`),
  );
/** Blocks that follow one another must not lie on one another; letters of a drawing neither. */
const overlapping = (page: Page) =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll("#line article > *, #line svg text")].map((one) => ({
      kind: one instanceof SVGElement ? one.closest("svg")! : one.parentElement!,
      words: one.textContent!.slice(0, 30),
      box: one.getBoundingClientRect(),
    }));
    return boxes.flatMap((one, i) =>
      boxes
        .slice(i + 1)
        .filter(
          ({ kind, box }) =>
            kind === one.kind &&
            one.box.bottom > box.top + 2 &&
            box.bottom > one.box.top + 2 &&
            one.box.right > box.left + 2 &&
            box.right > one.box.left + 2,
        )
        .map(({ words }) => `${one.words} / ${words}`),
    );
  });

describe("what it weighs", () => {
  it("page, catalogue and engine stay within their limits", async () => {
    const files = await FILES;
    const size = (fits: (path: string, text: string) => boolean) =>
      [...files]
        .filter(
          ([path, { content }]) => !path.startsWith("start-list") && fits(path, new TextDecoder().decode(content)),
        )
        .reduce((sum, [, { content }]) => sum + gzipSync(content).length, 0);
    const isPage = (path: string) => /^$|^page\./.test(path);
    const isCatalogue = (path: string, text: string) => path.startsWith("trade") || text.includes("BEND.SETBACK");
    expect(size(isPage)).toBeLessThanOrEqual(24 * 1024);
    expect(size((path, text) => isPage(path) || isCatalogue(path, text))).toBeLessThanOrEqual(230 * 1024);
    // With the worksheet engine, which knows no trade; what begins a bill is loaded when somebody does.
    expect(size(() => true)).toBeLessThanOrEqual(360 * 1024);
  });
});
