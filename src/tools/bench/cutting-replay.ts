/**
 * `bench:cutting-replay [bills] [work units] [shop]`: random bills on random stock and a random shear, or bills of a shop; every
 * plan is replayed. Prints what failed, how many blanks were impossible and which floors were too full; exit 1 when any fails.
 */
import { planCuts, replay } from "../../calc/cutting/index.ts";
import { randomBill, shopBill } from "./cutting/shop-bills.ts";

const bills = Number(process.argv[2] ?? 1000);
const units = Number(process.argv[3] ?? 3_000_000);
const billOf = process.argv[4] === "shop" ? shopBill : randomBill;
let failed = 0;
let crowded = 0;
let impossible = 0;
let cuts = 0;
let sheets = 0;
for (let seed = 1; seed <= bills; seed++) {
  const { blanks, stock, limits, weightPerArea } = billOf(seed);
  try {
    const plan = planCuts(blanks, stock, limits, { units, weightPerArea });
    // A floor that is too full is said in the plan; it is counted, and the rest is replayed.
    const room = { stacks: Math.max(4, plan.stacks), longStacks: Math.max(2, plan.longStacks) };
    if (plan.warnings.length > 0) crowded++;
    const faults = replay(plan, blanks, stock, { ...limits, ...room }, weightPerArea);
    if (faults.length > 0) throw new Error(faults[0]);
    impossible += plan.leftOut.length;
    cuts += plan.cuts.length;
    sheets += plan.sheets.reduce((sum, { count }) => sum + count, 0);
  } catch (error) {
    failed++;
    process.stdout.write(`${JSON.stringify({ seed, message: (error as { message: string }).message })}\n`);
  }
}
process.stdout.write(
  `${JSON.stringify({ total: { bills, failed, crowded, left_out_lines: impossible, sheets, cuts } })}\n`,
);
process.exitCode = failed > 0 ? 1 : 0;
