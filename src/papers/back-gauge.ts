/** The settings of the back gauge, one a hit, in the order of the bends. */
import { drawnSays } from "../bill/drawn-says.ts";
import { type BentStrip, hitsOf, type StripHit } from "../bill/lines/bent-strip.ts";
import { showNumber, showReading } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { BOX, paragraph, table } from "./page.ts";

export function backGauge(strip: BentStrip, direction: number, system: UnitSystem): string {
  const { part, order, isPlain, depths, scribed } = strip;
  const rows = hitsOf(strip).map((hit, i) => {
    const { angle } = part.bends[hit.bend - 1]!;
    return [
      `${i + 1}`,
      `${hit.bend}`,
      `${showNumber(Math.abs(angle))}°${angle < 0 ? " down" : ""}`,
      showReading(hit.stop, system),
      scribed.some(({ bend }) => bend === hit.bend) ? "scribe the line" : gaugedOff(hit),
      moves(hit),
      showReading(depths[hit.bend - 1]!, system),
      { markup: BOX },
    ];
  });
  const columns = [
    { title: "Hit" },
    { title: "Bend" },
    { title: "Angle" },
    { title: "Setting", number: true },
    { title: "Gauge off" },
    { title: "Blank" },
    { title: "Punch below die's top", number: true },
    { title: "Done" },
  ];
  const title = direction === 0 ? "Back gauge" : "Back gauge, second direction";
  const proposal = isPlain
    ? paragraph(
        `Order and settings are a proposal: ${drawnSays(strip)}. Try the order by hand against the real punch, ram and die.`,
      )
    : "";
  const off = order.feasible && order.hits.some(({ slidesOff }) => slidesOff) ? SLIDES_OFF : "";
  const unknown = order.feasible
    ? proposal
    : "<p><strong>No order of the bends was found on these tools.</strong> This is the usual one, from the ends inward: try it by hand, motor off.</p>";
  return `<h2>${title}</h2>${table(columns, rows, "stops")}${unknown}${off}`;
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
