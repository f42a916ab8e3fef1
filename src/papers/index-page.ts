/** The first page: what the papers were made from, what the tables lack, and every line with its status. */
import { lineName } from "../bill/line-name.ts";
import type { BillPlan } from "../bill/plan.ts";
import { RELEASES, releaseOf } from "../bill/release.ts";
import { notCheckedSays, notFromPlateSays } from "../bill/says.ts";
import { showNumber } from "../units/show.ts";
import { heading, list, type Paper, type PaperFacts, paragraph, table, text } from "./page.ts";

/** @param setUps one a line, in the order of the bill. */
export function indexPage(
  plan: BillPlan,
  about: PaperFacts,
  setUps: readonly Paper[],
  others: readonly Paper[],
): string {
  const { name, version, edition, date, stale, missing } = about;
  const link = ({ file }: Paper, words: string) => ({ markup: `<a href="${text(file)}">${text(words)}</a>` });
  const releases = plan.lines.map(releaseOf);
  const counts = RELEASES.map((release) => [release, releases.filter((one) => one === release).length] as const);
  return [
    heading(name),
    `<p>Bracket Bill ${text(version)}, materials of edition ${text(edition)}, ${text(date)}, plan ${text(plan.number)}</p>`,
    stale > 0
      ? `<p><strong>${stale} cells of the workbook could not be calculated; their values may be old.</strong></p>`
      : "",
    list(
      [...missing, notCheckedSays(plan.notChecked), notFromPlateSays(plan.notFromPlate)].filter(
        (words) => words !== "",
      ),
    ),
    paragraph(
      counts
        .filter(([, count]) => count > 0)
        .map(([release, count]) => `${release} ${count}`)
        .join(", "),
    ),
    `<p>${others.map((paper) => link(paper, paper.title).markup).join(" · ")}</p>`,
    table(
      [
        { title: "Set-up sheet" },
        { title: "Pieces", number: true },
        { title: "Cut on" },
        { title: "Quoted" },
        { title: "Status" },
      ],
      plan.lines.map((line, i) => [
        link(setUps[i]!, lineName(line)),
        line.plan ? showNumber(line.plan.line.quantity, 7) : "",
        line.cutter ?? "",
        line.isQuoted ? "yes" : "no",
        releases[i]!,
      ]),
    ),
    '<p class="foot">STOP: not made. HOLD: open checks, nobody has accepted them. The plates of machines and tools, local codes and licensed practice decide. What a bracket carries is not checked.</p>',
  ].join("\n");
}
