/** The waterjet's sheets, one layout a page: drawing, and what comes off. */
import type { CutGroup } from "../bill/cut/plan-cutting.ts";
import { webOf } from "../bill/lines/cutting.ts";
import type { BillPlan } from "../bill/plan.ts";
import { show, showNumber, showPlain, showReading } from "../units/show.ts";
import { drawJetSheet } from "./drawing/jet-plan.ts";
import { heading, table, text } from "./page.ts";
import { letterOf } from "./shear-cuts.ts";

export function jetPages({ jet, material, thickness, sheetOf }: CutGroup, { shop }: BillPlan): string[] {
  const { system, rates } = shop;
  return jet.map((layout, i) => {
    const { repeats, placed } = layout;
    const sheet = sheetOf.get(layout.stock)!;
    const names = [...new Set(placed.map(({ blank }) => blank))];
    const keys = new Map(names.map((name, k) => [name, letterOf(k)]));
    const title = `Cut ${repeats} ${repeats === 1 ? "sheet" : "sheets"} of ${sheet.name}`;
    const size = `${showPlain(sheet.width, system)} x ${showReading(sheet.length, system)}`;
    const drawn = { title, grain: sheet.grain === "long" ? "w" : "h", keys } as const;
    const { svg, scale } = drawJetSheet(layout, drawn, system);
    const about = `${size}, ${show(sheet.weight, "mass", system, 4)} each; ${show(webOf(rates), "length", system, 4)} between blanks and along the edges; drawn ${scale}`;
    return [
      heading(`Waterjet sheet ${i + 1} of ${jet.length}: ${material.name} ${show(thickness, "length", system, 4)}`),
      `<p><strong>${text(title)}</strong>, ${text(about)}</p>`,
      `<div class="halves"><figure class="plan">${svg}</figure>`,
      table(
        [
          { title: "Key", short: true },
          { title: "Off this sheet" },
          { title: repeats === 1 ? "Count" : "Count, all sheets", number: true },
          { title: "Size", number: true },
        ],
        names.map((name) => {
          const own = placed.filter(({ blank }) => blank === name);
          const [short, long] = [Math.min(own[0]!.w, own[0]!.h), Math.max(own[0]!.w, own[0]!.h)];
          return [
            keys.get(name)!,
            name,
            showNumber(own.length * repeats, 7),
            `${showPlain(long, system)} x ${showReading(short, system)}`,
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
