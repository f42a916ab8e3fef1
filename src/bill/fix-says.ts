/** How a fix is said: as it is offered, and as a sentence beside the finding it mends. */
import type { Finding, Subject } from "../calc/finding.ts";
import type { UnitSystem } from "../units/system.ts";
import type { Change } from "./lines/changes.ts";
import type { Fix } from "./lines/fix.ts";
import type { BillLine, Strip } from "./nouns/line.ts";
import { figureSays } from "./says.ts";

/** A fix as it is offered: "die V 2". What it reaches stands beside it. */
export const fixSays = ({ changes }: Fix, system: UnitSystem): string =>
  changes.map((change) => changeSays(change, system)).join("; ");

/** The same on a button, every change with its verb: "Use die V 2". */
export function offerSays({ changes }: Fix, system: UnitSystem): string {
  const words = changes
    .map((change) => `${change.kind === "tools" ? "use " : ""}${changeSays(change, system)}`)
    .join("; ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What the customer is offered in place of what was asked for; "" of a change that is the shop's own affair. */
export function askedSays(change: Change, asked: BillLine, system: UnitSystem): string {
  const length = (value: number, digits?: 1) => figureSays(value, "length", system, digits);
  switch (change.kind) {
    case "pieces":
      return `offered in ${change.count} pieces of ${length(change.width)}, asked for 1 of ${length(asked.width)}`;
    case "material":
      return `offered in ${change.material.name}, asked for ${asked.material.name}`;
    case "thickness":
      return `offered in ${length(change.thickness, 1)}, asked for ${length(asked.nominal, 1)}`;
    default:
      return "";
  }
}

/** What the floor must be told of a change that no size in the bill shows; "" where the sizes show it. */
export function instructionSays(change: Change, asked: BillLine, system: UnitSystem): string {
  const length = (value: number) => figureSays(value, "length", system);
  switch (change.kind) {
    case "hole after":
      return asked.holeDistance === undefined
        ? ""
        : `Drill the hole after bending, ${length(asked.holeDistance)} from the flange's inside face`;
    case "trim after": {
      const trims = ({ flanges, angles }: Strip, what: string) =>
        flanges.flatMap((flange, i) =>
          angles.length > 0 && flange < change.flange ? [`${what} ${i + 1} to ${length(flange)}`] : [],
        );
      const all = [...trims(asked.main, "flange"), ...(asked.cross ? trims(asked.cross, "cross flange") : [])];
      return all.length === 0 ? "" : `After bending trim ${all.join(", ")}`;
    }
    default:
      return "";
  }
}

function changeSays(change: Change, system: UnitSystem): string {
  const length = (value: number) => figureSays(value, "length", system);
  switch (change.kind) {
    case "tools":
      return [
        change.die === undefined ? "" : `die ${change.die}`,
        change.punch === undefined ? "" : `punch ${change.punch}`,
        change.brake === undefined ? "" : change.brake,
      ]
        .filter((text) => text !== "")
        .join(", ");
    case "grain":
      return `turn the blank: bend line ${change.grain} the grain`;
    case "deburr":
      return `${change.station.toLowerCase()} the bend ends`;
    case "coat":
      return `send it to ${change.station}`;
    case "hole after":
      return "drill the hole after bending";
    case "waterjet":
      return "cut it on the waterjet";
    case "trim after":
      return `make the short flange ${length(change.flange)} and trim it after bending`;
    case "pieces":
      return `make it of ${change.count} pieces, ${length(change.width)} each, if the customer agrees`;
    case "material":
      return `use ${change.material.name} of this thickness, which is in Stock, if the customer agrees`;
    case "thickness":
      return `make it ${figureSays(change.thickness, "length", system, 1)} thick, ${change.isStocked ? "which is in Stock, if the customer agrees" : "if the customer agrees"}`;
  }
}

/** Said once about a line that stops at the machines and that no change improves. */
export const NO_FIX = "none of your tools can do it";
/** What no tool could fix: it must be asked about, bought or typed differently, as the sentence says. */
const NOT_OF_TOOLS: readonly Subject[] = ["input", "tolerance", "stock", "lifting"];

/** What would fix a line; "" where it only needs a look, or another order. */
export function mendSays(findings: readonly Finding[], fix: Fix | undefined, system: UnitSystem): string {
  if (fix) return fixSays(fix, system);
  const stops = findings.some(({ about, status }) => status === "stop" && !NOT_OF_TOOLS.includes(about));
  return stops ? NO_FIX : "";
}

/** The same as a sentence: "Fix: die V 2, then clear.". */
export function mendSentence(findings: readonly Finding[], fix: Fix | undefined, system: UnitSystem): string {
  const mends = mendSays(findings, fix, system);
  return mends === "" ? "" : `Fix: ${mends}${fix ? `, then ${fix.reaches}` : ""}.`;
}
