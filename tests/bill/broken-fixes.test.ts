/** The fixer broken on purpose: one that proves nothing would be found out. */
import { expect, it, vi } from "vitest";
import type * as fixes from "../../src/bill/lines/fix.ts";
import { brokenIn, fixesTyped } from "./typed-fixes.ts";

// It promises of whatever is wrong that another punch and the grain make it clear, and does not plan the line again.
vi.mock("../../src/bill/lines/fix.ts", async (original) => ({
  ...(await original<typeof fixes>()),
  fixOf: (...[row, , now]: Parameters<typeof fixes.fixOf>): fixes.Fix | undefined =>
    now === "clear" || row.grain === "across"
      ? undefined
      : { changes: [{ kind: "grain", grain: "across" }], reaches: "clear" },
}));

it("a fixer that proves nothing breaks its promises, and the test of fixes says so", { timeout: 300_000 }, () => {
  const tried = fixesTyped(40);
  const broken = brokenIn(tried);
  expect(tried.length).toBeGreaterThanOrEqual(40);
  // A promise kept by luck is no fault.
  expect(broken.length).toBeGreaterThan(tried.length / 2);
});
