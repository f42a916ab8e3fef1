/** The routes that BILL.ROUTE has chosen, read back from its spill (or typed by hand) by part. */

import { type Columns, oneOf } from "../parameters/read-table.ts";
import { anyTable } from "../parameters/shop-table.ts";
import type { TableParameter } from "../record/record.ts";
import type { BillLine, RouteName } from "../tables/bill.ts";
import { ROUTES } from "../tables/bill.ts";

const COLUMNS = {
  part: { headers: ["Part"], kind: "text" },
  route: { headers: ["Route"], kind: "text", optional: "cell", rule: oneOf(...ROUTES, "") },
} as const satisfies Columns;

export interface RouteRow {
  readonly part: string;
  readonly route: RouteName | undefined;
}

export const routes = (): TableParameter<RouteRow[]> =>
  anyTable(
    "routes",
    "What BILL.ROUTE spills; blank: the shear where it can",
    COLUMNS,
    ({ part, route }) => ({
      part,
      route: route === undefined || route === "" ? undefined : (route.toLowerCase() as RouteName),
    }),
    true,
  );

/** Parts of one name follow the rows of that name in order; the last of them stands for any more. */
export function routeFinder(rows: readonly RouteRow[]): (line: BillLine) => RouteName | undefined {
  const waiting = new Map<string, (RouteName | undefined)[]>();
  for (const { part, route } of rows) waiting.set(part, [...(waiting.get(part) ?? []), route]);
  return ({ part }) => {
    const found = waiting.get(part);
    return found && found.length > 1 ? found.shift() : found?.[0];
  };
}
