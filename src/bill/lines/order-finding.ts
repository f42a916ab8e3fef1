import type { BlockedHit } from "../../calc/bend/order/order.ts";
import type { Unstated } from "../../calc/bend/order/plain-press.ts";
import { type Obstacle, obstacleInWords } from "../../calc/bend/order/watch.ts";
import type { Finding } from "../../calc/finding.ts";
import { limitOf } from "../../calc/limit-of.ts";
import { ORDER_CLEARANCE_IN } from "../../data/thresholds.ts";
import type { Rates } from "../nouns/rates.ts";
import type { BentStrip } from "./bent-strip.ts";
import type { Tools } from "./tools.ts";

/** A flange that falls into the die, or a bend that no face lets through, is said already: one cause, one sentence. */
const isSaid = ({ bend, obstacle: { tool, leg, phase } }: BlockedHit, known: readonly Finding[]): boolean =>
  known.some(
    ({ about, status, kind }) =>
      (about === "flange" && tool === "die opening") ||
      (about === "loaded angle" &&
        (status === "stop" || (phase === "bend" && kind.endsWith(tool) && (leg === bend || leg === bend + 1)))),
  );

/** Whether a line asks for other tools of the same worth: it has no order on these, or they do not go into its box. */
export const wantsOtherTools = (findings: readonly Finding[]): boolean =>
  findings.some(
    ({ about, kind, status }) =>
      status !== "note" &&
      (about === "bend order" || (about === "room" && OF_SECTION.some((word) => `${kind},`.startsWith(`${word},`)))),
  );
const OF_SECTION: readonly string[] = ["box", "daylight", "stroke"];

/**
 * What the bend order decides: none on real outlines stops, none on tools drawn from their tables asks for a look, and
 * what only an assumed size is against is measured.
 * @param known what is found about the tools already.
 */
export function orderFindings(strip: BentStrip, tools: Tools, known: readonly Finding[], { own }: Rates): Finding[] {
  const found = strip.order.feasible
    ? foundOrder(strip, tools, limitOf(ORDER_CLEARANCE_IN, own))
    : noOrder(strip, tools, known);
  return [...found, ...gaugeFindings(strip, tools)];
}

function noOrder({ order, isPlain, assumed }: BentStrip, tools: Tools, known: readonly Finding[]): Finding[] {
  if (order.feasible) return [];
  const [blocked] = order.blocked;
  if (!blocked || isSaid(blocked, known)) return [];
  const { bend, obstacle } = blocked;
  if (isPlain && isOfRam(obstacle)) return [ramFinding(obstacle, tools, assumed)];
  const words = obstacleInWords(obstacle);
  if (!isPlain) return [{ about: "bend order", status: "stop", kind: "none on outlines", figure: bend, words }];
  const relief = (obstacle.tool === "punch" || obstacle.tool === "ram") && tools.punch?.reliefDepth === undefined;
  return [
    {
      about: "bend order",
      status: "check",
      kind: relief && tools.punch ? "none on a plain punch" : "none on plain tools",
      figure: bend,
      words,
    },
  ];
}

/** The brake is too short, not a shape in the way: its ram does not go up, or down, far enough for these tools. */
const isOfRam = ({ tool }: Obstacle): boolean => tool === "open height" || tool === "ram travel";

function ramFinding({ tool, by }: Obstacle, { brake }: Tools, assumed: Unstated): Finding {
  const kind = tool === "open height" ? "daylight" : "stroke";
  const words = [assumed.punch.includes("height") ? "punch" : "", assumed.die.includes("block height") ? "die" : ""]
    .filter((word) => word !== "")
    .join(" and ");
  const of = { about: "room", figure: by, quantity: "length", name: brake.name } as const;
  return words === ""
    ? { ...of, status: "stop", kind }
    : { ...of, status: "check", kind: `${kind}, heights not stated`, words };
}

function foundOrder({ order, isPlain, inTheWay, assumed }: BentStrip, tools: Tools, limit: number): Finding[] {
  if (!order.feasible) return [];
  const slides = order.hits.find(({ slidesOff }) => slidesOff);
  const off: Finding[] = slides
    ? [{ about: "bend order", status: "check", kind: "slides off", figure: slides.bend, name: tools.punch?.name }]
    : [];
  if (inTheWay && isOfRam(inTheWay)) return [...off, ramFinding(inTheWay, tools, assumed)];
  if (inTheWay) {
    const ofPunch = inTheWay.tool === "punch" || inTheWay.tool === "ram";
    const [tool, sizes] = ofPunch
      ? [`punch ${tools.punch?.name ?? ""}`.trim(), assumed.punch]
      : [`die ${tools.die.name}`, assumed.die];
    const words = `${sizes.join(" and ") || "size"} of ${tool}`;
    const status = inTheWay.by < limit ? "note" : "check";
    return [
      ...off,
      {
        about: "bend order",
        status,
        kind: `${status === "note" ? "near" : "hangs on"} a size`,
        figure: inTheWay.by,
        quantity: "length",
        words,
      },
    ];
  }
  const gaps = order.hits.flatMap(({ gap, slidesOff }) => (gap === undefined || slidesOff ? [] : [gap]));
  const least = Math.min(...gaps);
  return isPlain && least < limit
    ? [...off, { about: "bend order", status: "note", kind: "tight", figure: least, limit, quantity: "length" }]
    : off;
}

/** A bend line the gauge cannot be set for is scribed on the sheet: a note, no more. */
const gaugeFindings = ({ scribed }: BentStrip, { brake }: Tools): Finding[] =>
  scribed.slice(0, 1).map(({ stop, limit, kind }) => ({
    about: "flange",
    status: "note",
    kind,
    figure: stop,
    limit,
    quantity: "length",
    name: brake.name,
  }));
