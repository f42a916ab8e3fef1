/**
 * `bench:cutting-replay [bills] [work units]`: random bills on random stock and a random shear; every plan is replayed.
 * Prints what failed and how many blanks were impossible; exit 1 when any plan fails.
 */
import { planCuts, replay } from "../../calc/cutting/index.ts";
import { randomBill } from "./cutting/shop-bills.ts";

const bills = Number(process.argv[2] ?? 1000);
const units = Number(process.argv[3] ?? 3_000_000);
let failed = 0;
let impossible = 0;
let cuts = 0;
let sheets = 0;
for (let seed = 1; seed <= bills; seed++) {
  const { blanks, stock, limits, weightPerArea } = randomBill(seed);
  try {
    const plan = planCuts(blanks, stock, limits, { units, weightPerArea });
    const faults = replay(plan, blanks, stock, limits, weightPerArea);
    if (faults.length > 0) throw new Error(faults[0]);
    impossible += plan.leftOut.length;
    cuts += plan.cuts.length;
    sheets += plan.sheets.reduce((sum, { count }) => sum + count, 0);
  } catch (error) {
    failed++;
    process.stdout.write(`${JSON.stringify({ seed, message: (error as { message: string }).message })}\n`);
  }
}
process.stdout.write(`${JSON.stringify({ total: { bills, failed, left_out_lines: impossible, sheets, cuts } })}\n`);
process.exitCode = failed > 0 ? 1 : 0;
