/** The page's steps of a sheet say what the row of the paper's cut list says. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { cutsInOrder } from "../../src/bill/cut/cuts-in-order.ts";
import { offcutsOf } from "../../src/bill/cut/offcuts.ts";
import { releaseOf, releaseToCut } from "../../src/bill/release.ts";
import { says } from "../../src/bill/says.ts";
import { SHEAR_COLUMNS } from "../../src/cells/tables/shop-tables.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { bookOf } from "../../src/job/workbook-book.ts";
import { groupHead } from "../../src/papers/cut-group.ts";
import { cutSheets } from "../../src/papers/cut-sheets.ts";
import { escapeMarkup } from "../../src/papers/drawing/svg.ts";
import { shearPages } from "../../src/papers/shear-cuts.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";

const { plan } = jobPlan(bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx")))))!;
const said = cutSheets(plan).flatMap(({ cuts }) => cuts.map(({ says }) => says));
const rows = plan.groups.flatMap((group) => cutsInOrder(group, plan.shop, offcutsOf(plan.groups)));

describe("a step of the page", () => {
  it("names what measures, strokes, turning and lifting of every cut", () => {
    expect(said.length).toBe(rows.length);
    const counts = (fits: (words: string) => boolean) => said.filter(fits).length;
    for (const by of ["gauge", "front stop", "mark"] as const)
      expect(
        counts((words) => new RegExp(` in, ${by}`).test(words)),
        by,
      ).toBe(rows.filter(({ row }) => row.by === by).length);
    expect(counts((words) => / turn;/.test(words))).toBe(rows.filter(({ row }) => row.turn).length);
    expect(rows.some(({ row }) => row.turn)).toBe(true);
    expect(counts((words) => / lb(, [a-z ]+)?; (each through [^;]+; )?([^;]+ drops: catcher; )?set /.test(words))).toBe(
      rows.filter(({ lift }) => lift !== "").length,
    );
    const strokes = said.map((words) => Number(/; ([\d,]+) strokes?;/.exec(words)![1]!.replace(",", "")));
    expect(strokes.reduce((sum, count) => sum + count)).toBe(rows.reduce((sum, { row }) => sum + row.strokes, 0));
  });

  it("says which parts wait for somebody to accept their checks, and no other", () => {
    const held = plan.lines.filter((line) => releaseToCut(line) === "HOLD").map(({ part }) => part);
    const named = said.flatMap((words) => words.match(/HOLD \S+?(?=[,;])/g) ?? []).map((words) => words.slice(5));
    expect(named.length).toBeGreaterThan(0);
    for (const part of named) expect(held).toContain(part);
  });
});

describe("a cut sheet of the pack", () => {
  const pages = plan.groups.flatMap((group) =>
    (group.plan ? shearPages(group, plan, offcutsOf(plan.groups)) : []).map((page, i) => {
      const on = group.plan!.patterns[i]!.yields.map(({ blank }) => group.lineOf.get(blank));
      return { group, page, lines: plan.lines.filter((line) => line.plan && on.includes(line.plan)) };
    }),
  );

  it("says what hold-down, knife and narrow strips ask for at its own pieces, notes as well", () => {
    const asked = pages.flatMap(({ page, lines }) =>
      lines.flatMap(({ findings }) =>
        findings
          .filter(({ about }) => ["hold-down", "narrow strip", "blade gap"].includes(about))
          .map((finding) => ({ page, sentence: escapeMarkup(says(finding, plan.shop.system)) })),
      ),
    );
    expect(asked.length).toBeGreaterThan(0);
    for (const { page, sentence } of asked) expect(page).toContain(sentence);
  });

  it("tells of edges as the mill left them what to check and which column plans a trim, and nowhere else", () => {
    const isMill = ({ group, page }: (typeof pages)[number]) =>
      page.includes("Check the datum corner square before the first cut") &&
      page.includes(`set Edge trim of ${group.shear!.name} under Shears`);
    for (const one of pages) expect(isMill(one)).toBe(one.page.includes("mill edges, nothing trimmed"));
    expect(pages.some(isMill)).toBe(true);
    expect(SHEAR_COLUMNS.trim.headers).toContain("Edge trim");
  });

  it("the pull list says how many tags of one kind are printed", () => {
    const offcuts = offcutsOf(plan.groups);
    const many = offcuts.filter(({ count }) => count > 1);
    expect(many.length).toBeGreaterThan(0);
    for (const { group, tag, count } of many) expect(groupHead(group, plan, offcuts)).toContain(`${count} x ${tag}: `);
  });

  it("a mark is scribed from an edge that the cut names", () => {
    const marks = said.filter((words) => / in, mark/.test(words));
    expect(marks.length).toBeGreaterThan(0);
    for (const words of marks) expect(words).toMatch(/mark: (far|near) edge;/);
  });

  it("says of a blank that waits what is left whole, and who lets it go; zinc that is welded later holds no sheet", () => {
    for (const { page, lines } of pages) {
      const held = lines.filter((line) => releaseToCut(line) === "HOLD").map(({ part }) => part);
      const [, named = ""] = /<b class="held-mark">HOLD ([^<]*)<\/b> Cut only when released/.exec(page) ?? [];
      expect(named.split(", ").filter(Boolean).sort()).toEqual(held.sort());
      // A sheet of waiting parts alone is not cut at all, not even into strips.
      const isAll = held.length === lines.length;
      expect(/until then leave whole, to wait with this sheet: .*\(cut \d+\).*Released by/.test(page)).toBe(
        held.length > 0 && !isAll,
      );
      expect(/until then leave the sheet whole, make none of these cuts\..*Released by/.test(page)).toBe(isAll);
    }
    const sheetsHeld = (isAll: boolean) =>
      pages.filter(({ lines }) => {
        const held = lines.filter((line) => releaseToCut(line) === "HOLD").length;
        return held > 0 && (held === lines.length) === isAll;
      });
    expect([sheetsHeld(true).length > 0, sheetsHeld(false).length > 0]).toEqual([true, true]);
    const abouts = (isLater: boolean) =>
      plan.lines
        .filter((line) => releaseOf(line) === "HOLD" && (releaseToCut(line) === "cut, then HOLD") === isLater)
        .map(({ findings }) => findings.filter(({ status }) => status === "check").map(({ about }) => about));
    expect(abouts(true)).toContainEqual(["galvanized"]);
    expect(abouts(false).length).toBeGreaterThan(0);
    for (const found of abouts(false)) expect(found).not.toEqual(["galvanized"]);
  });
});
