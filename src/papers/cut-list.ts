/** The cut list: what is pulled for every material and thickness and how it is cut, then the lines that are not cut and why. */
import { offcutsOf } from "../bill/cut/offcuts.ts";
import { hasTable } from "../bill/nouns/shop.ts";
import type { BillPlan } from "../bill/plan.ts";
import { isQuoted } from "../bill/plan.ts";
import { notCheckedSays } from "../bill/says.ts";
import { groupHead } from "./cut-group.ts";
import { jetPages } from "./jet-pages.ts";
import { leftOut } from "./left-out.ts";
import { heading, paragraph } from "./page.ts";
import { shearPages } from "./shear-cuts.ts";

/** What is pulled for a material, thickness and machine, then its sheets one after another; the groups are the plan's, nothing is planned here. */
export function cutListPages(plan: BillPlan): string[] {
  const offcuts = offcutsOf(plan.groups);
  const heads = plan.groups.map((group) => groupHead(group, plan, offcuts));
  const sheets = plan.groups.flatMap((group) =>
    group.plan ? shearPages(group, plan, offcuts) : jetPages(group, plan),
  );
  const pages = heads.length === 0 ? [] : [[heading("Pull list"), ...heads].join("\n"), ...sheets];
  const left = plan.lines.filter((line) => !isQuoted(line));
  const noStock = hasTable(plan.shop, "stock") ? "" : notCheckedSays(["stock"]);
  if (pages.length > 0 && left.length === 0) return pages;
  const nothing = pages.length === 0 ? paragraph(`No sheet is cut. ${noStock}`) : "";
  return [...pages, `${heading("Cut list: not cut")}${nothing}${leftOut(left, plan.shop.system)}`];
}
