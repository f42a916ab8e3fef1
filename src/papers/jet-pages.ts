/** The waterjet's sheets, one layout a page: drawing, and what comes off. */

import type { CutGroup } from "../bill/cut/plan-cutting.ts";
import { webOf } from "../bill/lines/cutting.ts";
import { openPlates } from "../bill/open-plates.ts";
import type { BillPlan } from "../bill/plan.ts";
import { notFromPlateSays } from "../bill/says.ts";
import { entryOf } from "../units/certain.ts";
import { show, showNumber, showPlain, showReading } from "../units/show.ts";
import { drawJetSheet } from "./drawing/jet-plan.ts";
import { releaseCell, table, text } from "./page.ts";
import { cutHeading, letterOf, onlyReleased, releasesOf, sheetOf as sheetSays } from "./shear-cuts.ts";

export function jetPages(group: CutGroup, plan: BillPlan): string[] {
  const { jet, lines, lineOf, sheetOf } = group;
  const { system, rates } = plan.shop;
  const releases = releasesOf(plan);
  const notFromPlate = notFromPlateSays(openPlates(lines.map(({ cutting }) => cutting.waterjet)));
  return jet.map((layout, i) => {
    const { repeats, placed } = layout;
    const sheet = entryOf(sheetOf, layout.stock);
    const names = [...new Set(placed.map(({ blank }) => blank))];
    const keys = new Map(names.map((name, k) => [name, letterOf(k)]));
    const held = names.filter((name) => releases.get(entryOf(lineOf, name)) === "HOLD");
    const title = `Cut ${repeats} ${repeats === 1 ? "sheet" : "sheets"} of ${sheet.name}`;
    const size = `${showPlain(sheet.length, system)} x ${showReading(sheet.width, system)}`;
    // An arrow only where a blank is held to it: panels and meshes have no grain.
    const isHeld = names.some((name) => entryOf(lineOf, name).blank.grain !== "");
    const drawn = { title, grain: !isHeld ? undefined : sheet.grain === "long" ? "w" : "h", keys, lineOf } as const;
    const { svg, scale } = drawJetSheet(layout, drawn, system);
    const about = `${size}, ${show(sheet.weight, "mass", system, 4)} each; ${show(webOf(rates), "length", system, 4)} between blanks and along the edges; drawn ${scale}. ${notFromPlate}`;
    return [
      cutHeading(i, jet, sheetSays(group, plan)),
      `<p><strong>${text(title)}</strong>, ${text(about)}</p>`,
      held.length === 0 ? "" : onlyReleased(held.join(", "), "leave it out of the jet's program"),
      `<div class="halves"><figure class="plan">${svg}</figure>`,
      table(
        [
          { title: "Key", short: true },
          { title: "Off this sheet" },
          { title: repeats === 1 ? "Count" : "Count, all sheets", number: true },
          { title: "Size", number: true },
          { title: "Grain along" },
          { title: "Pierces, cut path", number: true },
          { title: "Release" },
        ],
        names.map((name) => {
          const own = placed.filter(({ blank }) => blank === name);
          const line = entryOf(lineOf, name);
          const { length, width } = line.blank;
          return [
            entryOf(keys, name),
            name,
            showNumber(own.length * repeats, 7),
            `${showPlain(length, system)} x ${showReading(width, system)}`,
            line.blank.grain || "as it comes",
            `${showNumber(line.blank.pierces, 7)}, ${show(line.blank.path, "length", system, 4)}`,
            releaseCell(releases.get(line)),
          ];
        }),
        "cuts",
      ),
      "</div>",
      FOOT,
    ].join("\n");
  });
}

const FOOT = '<p class="foot">Guards and splash shields in place, hands out of the tank while the jet is on.</p>';
