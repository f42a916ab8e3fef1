/** What money is counted in stands in the heading of its column, as any unit; where the job does not say, none is assumed. */
import type { BillPlan } from "../bill/plan.ts";

export const inCurrency = (heading: string, { shop: { job } }: BillPlan): string =>
  job.currency === undefined ? heading : `${heading}, ${job.currency}`;
