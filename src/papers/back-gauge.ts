/** The settings of the back gauge, one a hit, in the order of the bends. */

import { drawnSays } from "../bill/drawn-says.ts";
import { type BentStrip, hitsOf, type StripHit, turnedTo } from "../bill/lines/bent-strip.ts";
import { itemAt } from "../units/certain.ts";
import { showMark, showNumber, showReading } from "../units/show.ts";
import { type UnitSystem, unitName } from "../units/system.ts";
import { moveOf } from "./moves.ts";
import { BOX, type Cell, paragraph, table, text } from "./page.ts";

export function backGauge(strip: BentStrip, direction: number, system: UnitSystem): string {
  const { part, order, isPlain, depths, scribed } = strip;
  const rows = hitsOf(strip).map((hit, i) => {
    const { angle } = itemAt(part.bends, hit.bend - 1);
    const underLoad = turnedTo(strip, hit.bend);
    const { words, mark } = moveOf(hit, strip, { isFirst: i === 0, direction });
    return [
      `${i + 1}`,
      bendName(hit.bend, direction),
      turnedSays(angle),
      underLoad === undefined ? "" : `${showNumber(underLoad)}°`,
      setting(hit.stop, system),
      scribed.some(({ bend }) => bend === hit.bend)
        ? "scribe the line"
        : { markup: text(gaugedOff(hit, direction, system)).replace(/at .*/, "<small>$&</small>") },
      { markup: `${mark} ${text(words)}` },
      bare(itemAt(depths, hit.bend - 1), system),
      { markup: order.feasible ? BOX : "" },
    ];
  });
  const columns = [
    { title: "Hit" },
    { title: "Bend" },
    { title: "Turned by", short: true },
    { title: "Bend to", short: true },
    { title: `Back gauge, ${unitName("length", system)}`, number: true },
    { title: "Gauge off", short: true },
    { title: "Before the hit" },
    { title: `Depth, ${unitName("length", system)}`, number: true },
    { title: "Done" },
  ];
  const title = direction === 0 ? "" : "<h2>Second direction</h2>";
  const proposal = isPlain
    ? paragraph(`A proposal: ${drawnSays(strip)}. Try the order by hand against the real punch, ram and die.`, "small")
    : "";
  const off = order.feasible && order.hits.some(({ slidesOff }) => slidesOff) ? SLIDES_OFF : "";
  const unknown = order.feasible
    ? ""
    : "<p><strong>No order of the bends was found on these tools.</strong> Below is the usual one, from the ends inward: try it by hand, motor off, before you run it.</p>";
  return `${title}${unknown}${table(columns, rows, "stops")}${order.feasible ? proposal : ""}${off}`;
}

const bare = (value: number, system: UnitSystem): string => showReading(value, system).replace(/ \S+$/, "");

/** Of an angle that is not square the inside one too: a protractor shows that. */
function turnedSays(angle: number): Cell {
  const turned = Math.abs(angle);
  const inside = turned === 90 ? "" : ` <small>${showNumber(180 - turned)}° inside</small>`;
  return { markup: `${showNumber(turned)}°${angle < 0 ? " down" : ""}${inside}` };
}

/** What the display is set to in large figures, what a rule shows beside it. */
function setting(stop: number, system: UnitSystem): Cell {
  const [decimal = "", mark] = showMark(stop, system).split(" · ");
  return mark === undefined ? decimal : { markup: `${text(decimal)} <small>${text(mark)}</small>` };
}

const SLIDES_OFF =
  "<p><strong>The piece closes around the punch:</strong> slide it off over the punch's end, which must be free.</p>";

/** As in the drawing of the flat: letters in the second direction, so that nobody takes its bends for those of the first. */
export const bendName = (bend: number, direction: number): string =>
  direction === 0 ? `${bend}` : String.fromCharCode("A".charCodeAt(0) + bend - 1);

/** "edge 1", "flange 2", "flange 2 at 0.5" of one that leans, in the unit of the stop; "top edge", "flange B" in the second direction. */
export function gaugedOff({ datum, gaugedEnd }: StripHit, direction: number, system: UnitSystem): string {
  const isFirst = gaugedEnd === "first";
  if (datum.on === "edge") return direction === 0 ? `edge ${isFirst ? 1 : 2}` : isFirst ? "top edge" : "bottom edge";
  const flange = bendName(datum.flange, direction);
  if (datum.on === "leaning flange")
    return datum.height === undefined
      ? `mold line of flange ${flange}`
      : `flange ${flange} at ${bare(datum.height, system)}`;
  return datum.on === "round" ? `round of flange ${flange}` : `${datum.on} ${flange}`;
}
