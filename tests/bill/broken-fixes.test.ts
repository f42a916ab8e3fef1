/** The fixer broken on purpose: one that proves nothing would be found out. */
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import type * as fixes from "../../src/bill/lines/fix.ts";

beforeAll(() => {
  vi.resetModules(); // other test files may have loaded the right one
  // Whatever is wrong, it promises that another punch and the grain make it clear, and does not plan the line again.
  vi.doMock("../../src/bill/lines/fix.ts", async (original) => ({
    ...(await original<typeof fixes>()),
    fixOf: (...[row, , now]: Parameters<typeof fixes.fixOf>): fixes.Fix | undefined =>
      now === "clear" || row.grain === "across"
        ? undefined
        : { changes: [{ kind: "grain", grain: "across" }], reaches: "clear" },
  }));
});
afterAll(() => {
  vi.doUnmock("../../src/bill/lines/fix.ts");
  vi.resetModules(); // the next test file loads the right one again
});

it("a fixer that proves nothing breaks its promises, and the test of fixes says so", { timeout: 300_000 }, async () => {
  const { brokenIn, fixesTyped } = await import("./typed-fixes.ts");
  const tried = fixesTyped(40);
  const broken = brokenIn(tried);
  expect(tried.length).toBeGreaterThanOrEqual(40);
  // A promise kept by luck is not a failure.
  expect(broken.length).toBeGreaterThan(tried.length / 2);
});
