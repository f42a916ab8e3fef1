/** The settings of the back gauge, one a hit, in the order of the bends. */
import { drawnSays } from "../bill/drawn-says.ts";
import { type BentStrip, hitsOf, type StripHit } from "../bill/lines/bent-strip.ts";
import { showMark, showNumber, showReading } from "../units/show.ts";
import { type UnitSystem, unitName } from "../units/system.ts";
import { BOX, type Cell, paragraph, table, text } from "./page.ts";

export function backGauge(strip: BentStrip, direction: number, system: UnitSystem): string {
  const { part, order, isPlain, depths, scribed, springback } = strip;
  const rows = hitsOf(strip).map((hit, i) => {
    const { angle } = part.bends[hit.bend - 1]!;
    return [
      `${i + 1}`,
      `${hit.bend}`,
      turnedSays(angle),
      bendTo(angle, springback[hit.bend - 1]),
      setting(hit.stop, system),
      scribed.some(({ bend }) => bend === hit.bend) ? "scribe the line" : gaugedOff(hit),
      moves(hit),
      bare(depths[hit.bend - 1]!, system),
      { markup: order.feasible ? BOX : "" },
    ];
  });
  const columns = [
    { title: "Hit" },
    { title: "Bend" },
    { title: "Turned by" },
    { title: "Bend to" },
    { title: `Back gauge, ${unitName("length", system)}`, number: true },
    { title: "Gauge off" },
    { title: "Blank" },
    { title: `Punch below die's top, ${unitName("length", system)}`, number: true },
    { title: "Done" },
  ];
  const title = direction === 0 ? "" : "<h2>Second direction</h2>";
  const proposal = isPlain
    ? paragraph(`A proposal: ${drawnSays(strip)}. Try the order by hand against the real punch, ram and die.`, "small")
    : "";
  const off = order.feasible && order.hits.some(({ slidesOff }) => slidesOff) ? SLIDES_OFF : "";
  const unknown = order.feasible
    ? proposal
    : "<p><strong>No order of the bends was found on these tools.</strong> What stands above is the usual one, from the ends inward: tried by hand, motor off, before it is run.</p>";
  return `${title}${table(columns, rows, "stops")}${unknown}${off}`;
}

const bare = (value: number, system: UnitSystem): string => showReading(value, system).replace(/ \S+$/, "");

/** Of an angle that is not square the inside one too: a protractor shows that. */
function turnedSays(angle: number): string {
  const turned = Math.abs(angle);
  const inside = turned === 90 ? "" : `, ${showNumber(180 - turned)}° inside`;
  return `${showNumber(turned)}°${inside}${angle < 0 ? " down" : ""}`;
}

/** Turned under load, to the half degree a person can tell. */
const bendTo = (angle: number, springback: number | undefined): string =>
  springback === undefined ? "" : `${showNumber(Math.round(2 * (Math.abs(angle) + springback)) / 2, 4)}°`;

/** What the display is set to in large figures, what a rule shows beside it. */
function setting(stop: number, system: UnitSystem): Cell {
  const [decimal = "", mark] = showMark(stop, system).split(" · ");
  return mark === undefined ? decimal : { markup: `${text(decimal)} <small>${text(mark)}</small>` };
}

const SLIDES_OFF =
  "<p><strong>The piece closes round the punch:</strong> it is drawn off over the punch's end, which must be free.</p>";

/** "edge 1", "flange 2". */
function gaugedOff({ datum, gaugedEnd }: StripHit): string {
  if (datum.on === "edge") return `edge ${gaugedEnd === "first" ? 1 : 2}`;
  return datum.on === "round" ? `round of flange ${datum.flange}` : `${datum.on} ${datum.flange}`;
}

const moves = ({ turned, flipped }: StripHit): string =>
  [turned ? "turn" : "", flipped ? "flip" : ""].filter((word) => word !== "").join(", ") || "no flip";
