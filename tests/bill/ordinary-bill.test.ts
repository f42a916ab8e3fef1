/** A tool that cries wolf is not read: on ordinary bills at most one line in ten asks for a look, and few stop. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { problemsOf } from "../../src/bill/problems.ts";
import { SHOP } from "../cells/example/tables.ts";
import { ordinaryBill } from "./ordinary-bill.ts";
import { planned, shopOf } from "./shop.ts";

const BILLS = 300;

it(`of ${BILLS} ordinary bills at most one line in ten is a check, and one in a hundred a stop`, {
  timeout: 900_000,
}, () => {
  // Sheets in any number: what runs out does not depend on the part.
  const sheets = SHOP.stock[0]!.indexOf("Sheets");
  const shop = shopOf({ stock: SHOP.stock.map((row, i) => (i === 0 ? row : row.with(sheets, null))) });
  const [counts, why] = [{ clear: 0, check: 0, stop: 0 }, new Map<string, number>()];
  for (const bill of fc.sample(ordinaryBill, { numRuns: BILLS, seed: 18 }))
    for (const { status, findings } of planned(bill, shop).lines) {
      counts[status]++;
      for (const { about, kind } of problemsOf(findings))
        why.set(`${about}: ${kind}`, (why.get(`${about}: ${kind}`) ?? 0) + 1);
    }
  const lines = counts.clear + counts.check + counts.stop;
  const reasons = JSON.stringify([counts, [...why].sort(([, a], [, b]) => b - a)]);
  expect(lines).toBeGreaterThan(BILLS * 20);
  expect(counts.check / lines, reasons).toBeLessThan(0.1);
  expect(counts.stop / lines, reasons).toBeLessThan(0.01);
});
