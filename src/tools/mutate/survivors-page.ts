/** The changes of one topic that no test noticed, with the reason where there is one: a page to be read, not a score. */
import type { Change, Survivor } from "./scores.ts";

/** A heading above the changes that it explains. */
export const REASON = /^## \d+: (.*)$/;

export function survivorsPage(topic: string, survivors: readonly Survivor[]): string {
  const open = survivors.filter(({ why }) => why === undefined);
  const reasons = [...new Set(survivors.flatMap(({ why }) => why ?? []))];
  return `${[
    "<!-- Written by npm run mutate. By hand only: a row moved to below a heading with its reason, where it stays. -->",
    `# ${topic}: ${survivors.length} changes that no test noticed`,
    "",
    `## Not explained: ${open.length}`,
    "",
    ...open.map(changeRow),
    ...reasons.flatMap((reason) => {
      const own = survivors.filter(({ why }) => why === reason);
      return ["", `## ${own.length}: ${reason}`, "", ...own.map(changeRow)];
    }),
  ].join("\n")}\n`;
}

export const changeRow = ({ at, was, replacement }: Change): string =>
  `- ${at}: \`${short(was)}\` as \`${short(replacement)}\``;

const MOST_LETTERS = 70; // chosen: a line of the page
const short = (code: string): string => {
  const one = code.replace(/\s+/g, " ").replaceAll("`", "'");
  return one.length > MOST_LETTERS ? `${one.slice(0, MOST_LETTERS)}...` : one;
};
