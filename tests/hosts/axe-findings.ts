/** What axe-core finds on a page, each finding as its rule and the first place. */
import axe from "axe-core";
import type { Page } from "playwright-core";

/** Which findings count: all, or those that shut somebody out. */
type Counted = "all" | "serious";

/** Rules that pass are not written out place by place: on a long page that took longer than to look. */
export const axeFindings = (page: Page, counted: Counted = "all"): Promise<string[]> =>
  page.evaluate(`${axe.source}; axe.run({ resultTypes: ["violations"] }).then(({ violations }) => violations
    .filter(({ impact }) => ${counted === "all"} || impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => id + " " + nodes[0].html))`);
