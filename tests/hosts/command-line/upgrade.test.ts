/** Every released sample with a bill is brought up to date: the same lines, statuses and prices as the tables said before. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { planChanges } from "../../../src/bill/changes/plan-changes.ts";
import { upgrade } from "../../../src/hosts/command-line/upgrade.ts";
import type { Book } from "../../../src/job/book.ts";
import { jobPlan } from "../../../src/job/job-plan.ts";
import { SCHEMA, schemaOf } from "../../../src/job/schema.ts";
import { bookOf } from "../../../src/job/workbook-book.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { RELEASED } from "../../../src/tools/generate/recorded-release.ts";
import { run } from "./shop-book.ts";

const LONG = 300_000;
const home = mkdtempSync(join(tmpdir(), "upgrade-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));
const bookIn = (path: string): Book => bookOf(readWorkbook(new Uint8Array(readFileSync(path))));
const files = readdirSync(RELEASED).flatMap((version) =>
  readdirSync(`${RELEASED}/${version}`).map((name) => `${version}/${name}`),
);

/** On the sheet Price, read by where it stands there. */
function storedTotal(book: Book): number | undefined {
  const row = book.find(({ name }) => name === "Price")?.rows.find(([first]) => first === "Total");
  return typeof row?.[9] === "number" ? row[9] : undefined;
}

describe.each(files.filter((name) => !name.includes("first-run")))("shop upgrade of the sample %s", (name) => {
  const from = `${RELEASED}/${name}`;
  const out = join(home, name.replace("/", "-"));

  it("keeps what the bill comes to, carries today's number, and says what it did", { timeout: LONG }, async () => {
    const { exit, text } = await run(upgrade, from, out);
    expect(exit).toBe(0);
    expect(text).toContain('table Shears: column "Knife gap (in)" is now "Blade gap (in)"');
    const [before, after] = [bookIn(from), bookIn(out)];
    // What the old sheets stored and the new plan says: a customer who has the old quote must hear of it.
    const total = storedTotal(before);
    const price = jobPlan(after)!.plan.money.charges.total;
    if (total !== undefined && Math.abs(total - price) > 0.005)
      expect(text).toContain(`\nprice: ${total.toFixed(2)} -> ${price.toFixed(2)}\n`);
    else expect(text).not.toMatch(/^price: \d/m);
    expect([schemaOf(before), schemaOf(after)]).toEqual([1, SCHEMA]);
    const { lines, job } = planChanges(jobPlan(before)!.plan, jobPlan(after)!.plan);
    // The job became a table: only what hangs on its dates may come in.
    const added = ["Done", "Late lines", "Must leave by"];
    expect(
      lines
        .flatMap(({ differences }) => differences)
        .filter(({ what, before: was }) => was.value !== undefined || !added.includes(what)),
    ).toEqual([]);
    expect(job.filter(({ what, before: was }) => was.value !== undefined || !added.includes(what))).toEqual([]);
    expect(await run(upgrade, out, join(home, "again.xlsx"))).toMatchObject({
      exit: 0,
      text: `${out} is up to date; nothing was written\n`,
    });
  });
});

it("refuses a workbook of a later release, and one without a bill", async () => {
  const later: Book = [{ name: "Read me", rows: [["Schema", SCHEMA + 1]] }];
  const { upgraded } = await import("../../../src/job/upgrade/upgraded.ts");
  expect(() => upgraded(later, () => [])).toThrow(
    expect.objectContaining({ message: expect.stringContaining("schema must be at most") }),
  );
  expect(() => upgraded([], () => [])).toThrow(
    expect.objectContaining({ message: expect.stringContaining("a table of parts") }),
  );
});
