/**
 * How findings are said: one sentence each, of at most 120 characters, in the order a person thinks: what is
 * wrong, by how much, what to do. This is the one file that words them; fix-says words what mends them.
 */
import { TRY_FIRST } from "../calc/bend/solved-air-bend.ts";
import { type Finding, worstFirst } from "../calc/finding.ts";
import { fromInternal, type UnitSystem } from "../units/system.ts";
import type { Shop } from "./nouns/shop.ts";
import type { Station } from "./nouns/station.ts";
import { problemsOf } from "./problems.ts";

export const LONGEST_SENTENCE = 120;

/** Figures of one finding as words, in the reader's units. */
interface Figures {
  readonly figure: string;
  readonly limit: string;
  readonly beside: string;
  readonly name: string;
  readonly words: string;
}
type Say = (figures: Figures, finding: Finding) => string;

const SENTENCES: Readonly<Record<string, Say>> = {
  "input: unread": ({ words }) => words,
  "brake force: over": ({ figure, limit, beside, name }) =>
    `Needs about ${figure} (${beside} if hard and heavy); ${name} has ${limit}.`,
  "bend ends: over": ({ figure, limit, name }) =>
    `The ends stand outside the housings of ${name}, which has ${limit}; the bend takes about ${figure}.`,
  "beam: over": ({ figure, limit, beside, name }) =>
    `The beam of ${name} takes ${limit} here: this is about ${figure}, and ${beside} if it runs hard.`,
  "punch: over": ({ figure, limit, beside, name }) =>
    `Punch ${name} is rated ${limit}: this takes about ${figure}, and ${beside} if it runs hard.`,
  "die: over": ({ figure, limit, beside, name }) =>
    `Die ${name} is rated ${limit}: this takes about ${figure}, and ${beside} if it runs hard.`,
  "room: bed": ({ figure, limit, name }) => `The bend is ${figure} long; the bed of ${name} is ${limit}.`,
  "room: die": ({ figure, limit, name }) => `The bend is ${figure} long; die ${name} is ${limit}.`,
  "room: punch": ({ figure, limit, name }) => `The bend is ${figure} long; punch ${name} is ${limit}.`,
  "room: nose": ({ figure, limit, name, words }) =>
    `Punch ${name} of radius ${figure} does not go into die ${words}; ${limit} would.`,
  "room: nose fills": ({ figure, limit, name, words }) =>
    `Punch ${name} of radius ${figure} nearly fills die ${words}; up to ${limit} is easy.`,
  "loaded angle: is near die": (f) => angleSays(f, "die", "a springy coil bottoms, which fits"),
  "loaded angle: is near punch": (f) => angleSays(f, "punch", "a springy coil bottoms, which fits"),
  "loaded angle: touches die": (f) => angleSays(f, "die", "it may touch the faces, bend a test piece"),
  "loaded angle: touches punch": (f) => angleSays(f, "punch", "it may touch the faces, bend a test piece"),
  "loaded angle: bottoms die": (f) => angleSays(f, "die", "it bottoms, 3 to 5 times the force, which fits"),
  "loaded angle: bottoms punch": (f) => angleSays(f, "punch", "it bottoms, 3 to 5 times the force, which fits"),
  "loaded angle: passes die": (f) => angleSays(f, "die", "take a sharper die"),
  "loaded angle: passes punch": (f) => angleSays(f, "punch", "take a sharper punch"),
  "loaded angle: no die": ({ figure, limit }) =>
    `A bend of ${figure} is beyond every V die: bend it to ${limit} at most, then close it in a hem die, or send it out.`,
  "off center: near side": ({ figure, limit, name }) =>
    `Off center: the near side of ${name} takes ${figure} of ${limit}. Move it to the middle of the bed.`,
  "room: throat": ({ figure, limit, name }) =>
    `Longer than the housings and ${figure} deep behind: the throat of ${name} is ${limit}.`,
  "room: throat not stated": ({ figure, limit, name }) =>
    `Longer than the housings, ${figure} deep behind: throat of ${name} not stated, often ${limit}. Measure it.`,
  "room: box, none listed": ({ beside, limit, name }) =>
    `A tool of ${beside} to ${limit} goes into this box; the sections of ${name} are not listed.`,
  "room: box": ({ figure, beside, name }) =>
    `The box is ${beside} inside; the sections of ${name} make ${figure} at best.`,
  "room: daylight": ({ figure, name }) => `The daylight of ${name} is ${figure} too little for these tools.`,
  "room: daylight, heights not stated": ({ figure, name, words }) =>
    `The daylight of ${name} may be ${figure} too little: measure the height of ${words}.`,
  "room: stroke": ({ figure, name }) =>
    `The ram of ${name} ends ${figure} above the end of the bend: raise the die, or take a taller punch.`,
  "room: stroke, heights not stated": ({ figure, name, words }) =>
    `The ram of ${name} may end ${figure} too high: measure the height of ${words}.`,
  "springback: unknown": ({ name }) => `Springback of ${name} is not known: its strength or modulus is missing.`,
  "flat: not compared": () => `No measured bend is like this one: ${TRY_FIRST}.`,
  "flat: bottomed": () => `A bottomed bend's flat lies between air and the nose: ${TRY_FIRST}.`,
  "drawing radius: ask": ({ figure, limit }) =>
    `The drawing asks for radius ${limit}; these tools give about ${figure}: ask the customer.`,
  "drawing radius: measure": ({ figure, beside, limit }) =>
    `These tools give radius ${figure} to ${beside}, not all within the drawing's ${limit}: measure the first piece.`,
  "drawing radius: near": ({ figure, limit }) =>
    `Radius about ${figure} for the drawing's ${limit}, no tolerance stated.`,
  "radius: nothing published": ({ name }) => `Nothing is published about bending ${name}: bend a test piece.`,
  "radius: nose unknown": ({ name }) => `How tight ${name} bends here is not known: give the punch and its nose.`,
  "radius: across only": ({ figure, limit }) =>
    `Radius about ${figure}; ${limit} is published, across the grain: keep the bend line across.`,
  "radius: cracks": ({ figure, limit, name }) =>
    `${name} cracks: radius about ${figure}, published least ${limit} across the grain.`,
  "radius: along": ({ name }) => `${name} cracks with its bend line along the grain, as this one lies.`,
  "radius: plate along": ({ figure, limit }) =>
    `Plate along the grain needs a radius of ${limit}; this gives about ${figure}: turn the blank.`,
  "radius: tighter than usual": ({ figure, limit }) =>
    `Radius about ${figure}, usual is ${limit} and up: bend a test piece.`,
  "radius: usual": ({ figure, limit }) => `Radius about ${figure}, published ${limit}; usual on this die.`,
  "opening: narrow": (f, { figure = 0, status }) =>
    `Die ${f.name} opens ${figure.toFixed(2)} times the thickness; usual is 6 to 12: ${status === "stop" ? "too narrow for this sheet" : "it marks, and force runs up"}.`,
  "opening: wide": ({ name }, { figure = 0 }) =>
    `Die ${name} opens ${figure.toFixed(1)} times the thickness; usual is 6 to 12: radius and angle scatter more.`,
  "flange: falls in": ({ figure, limit, name }) => `A flange of ${figure} falls into die ${name}; it needs ${limit}.`,
  "flange: barely rests": ({ figure, limit, name }) =>
    `A flange of ${figure} barely rests on die ${name}; ${limit} is safe.`,
  "flange: gauge nearer": ({ figure, limit, name }) =>
    `The gauge of ${name} comes to ${limit}, a bend needs ${figure}: set a block, or scribe the line.`,
  "flange: gauge beyond": ({ figure, limit, name }) =>
    `The gauge of ${name} goes to ${limit}, a bend needs ${figure}: scribe the line.`,
  "hole: is pulled": ({ figure, limit }) =>
    `A hole ${figure} from the flange is pulled out of shape; it is safe from ${limit} on.`,
  "hole: goes oval": ({ figure, limit }) =>
    `A hole ${figure} from the flange lies over the open die and goes oval; safe from ${limit} on.`,
  "tolerance: not judged": ({ words }) => `The drawing's tolerance is not judged: ${words}`,
  "tolerance: at risk": ({ figure, limit, beside }) =>
    `Tolerance ${limit}: usually ${figure}, at worst ${beside}. Measure the first pieces and correct.`,
  "tolerance: will not hold": ({ figure, limit, beside }) =>
    `Tolerance ${limit} will not hold: usually ${figure}, at worst ${beside}. Ask for more, or sort.`,
  "bend order: none on outlines": ({ words }, { figure }) =>
    `No bend order on these tools: at bend ${figure} ${words}.`,
  "bend order: none on plain tools": ({ words }, { figure }) =>
    `No bend order on tools drawn from their tables: at bend ${figure} ${words}. Try it by hand.`,
  "bend order: none on a plain punch": ({ words }, { figure }) =>
    `No bend order as drawn: at bend ${figure} ${words}. A punch with a deeper relief may clear it.`,
  "bend order: near a size": ({ figure, words }) =>
    `The order may be ${figure} short, on assumed sizes: measure ${words}.`,
  "bend order: hangs on a size": ({ figure, words }) =>
    `The bend order depends on assumed sizes, by ${figure}: measure ${words}.`,
  "bend order: slides off": ({ name }, { figure }) =>
    `Bend ${figure} closes around punch ${name}: it comes off only over the punch's end.`,
  "bend order: tight": ({ figure }) =>
    `Only ${figure} between sheet and tools drawn from their tables: try it by hand.`,
  "bend order: cannot be": ({ words }) => words,
  "cutting: over rating": ({ figure, limit, name, words }) => `${name} takes ${limit} of ${words}; this is ${figure}.`,
  "cutting: strong only": ({ figure, limit, beside, name, words }) =>
    `${name} takes ${limit} of strong ${words}, ${beside} of ordinary; this is ${figure}: ask for the certificate.`,
  "cutting: too long": ({ figure, limit, name }) => `The cut is ${figure}; ${name} cuts ${limit}.`,
  "cutting: no layout": ({ words, name }) => `${name} cannot cut it from a sheet in Stock: ${words}`,
  "cutting: no shear": () => "There is no shear in the tables.",
  "cutting: no station": ({ words }) => `A shear makes no ${words}, and no station in the table does.`,
  "cutting: not on waterjet": ({ words }) => `Pinned to the waterjet, which cannot cut it: ${words}.`,
  "cutting: not sheared": ({ words }) => `${words} is cut on a waterjet, not on a shear.`,
  "cutting: waterjet only": ({ name, words }) => `${name} is cut on a waterjet only, and ${words}.`,
  "cutting: thin on waterjet": ({ figure }) =>
    `The waterjet's formula is too fast in sheet of ${figure}: time a cut of your own.`,
  "cutting: no machine": ({ name, words }) => `No machine cuts it: too much for ${name}, and ${words}.`,
  "cutting: waterjet: over rating": ({ figure, limit, name, words }) =>
    `${name} takes ${limit} of ${words}, this is ${figure}: waterjet.`,
  "cutting: waterjet: too long": ({ figure, limit, name }) => `The cut is ${figure}, ${name} cuts ${limit}: waterjet.`,
  "cutting: waterjet: no layout": ({ words, name }) => `Not on ${name}: ${words}; waterjet.`,
  "cutting: waterjet: no shear": () => "No shear in the tables: waterjet.",
  "cutting: waterjet: not sheared": ({ words }) => `${words} is not sheared: waterjet.`,
  "cutting: waterjet: no station": ({ words }) => `No station makes ${words} after the shear: waterjet.`,
  "narrow strip: twists": ({ figure, limit }) => `A strip of ${figure} twists and bows; it lies flat from ${limit} on.`,
  "narrow strip: waterjet: twists": ({ figure }) => `A sheared strip of ${figure} twists too much: waterjet.`,
  "blade gap: waterjet: folds in": ({ figure, name }) => `The blade gap of ${name} is ${figure}, too wide: waterjet.`,
  "hold-down: falls last": ({ figure, limit, name }) =>
    `${figure} is under the ${limit} that ${name} holds: let it drop as the last cut.`,
  "blade gap: wide": ({ figure, name }, { beside = 0 }) =>
    `The blade gap of ${name}, ${figure}, is ${Math.round(100 * beside)} % of this sheet: it burrs. Reset it, locked out.`,
  "blade gap: folds in": ({ figure, name }, { beside = 0 }) =>
    `The blade gap of ${name}, ${figure}, is ${Math.round(100 * beside)} % of this sheet: it folds in. Reset it.`,
  "blade gap: tight": ({ figure, name }, { beside = 0 }) =>
    `The blade gap of ${name}, ${figure}, is ${(100 * beside).toFixed(1)} % of this plate: it dulls the blades.`,
  "lifting: two people": ({ figure }) => `A blank of ${figure} takes two people.`,
  "lifting: long bend": ({ figure }) => `A bend of ${figure} takes two people.`,
  "lifting: hoist": ({ figure }) => `A blank of ${figure} goes on the hoist.`,
  "lifting: too heavy": ({ figure }) => `A blank of ${figure} is too heavy for two people, and there is no hoist.`,
  "lifting: over hoist": ({ figure }) => `A blank of ${figure} is more than the hoist lifts.`,
  "lifting: sheet too heavy": ({ figure, name }) =>
    `${name} is ${figure} a sheet, too heavy for two people, and there is no hoist.`,
  "lifting: sheet over hoist": ({ figure, name }) => `${name} is ${figure} a sheet, more than the hoist lifts.`,
  "swing: swings": ({ figure }) => `${figure} in front of the die swings up: keep clear, follow it by hand.`,
  "swing: sags": ({ figure }) =>
    `${figure} in front of the die swings up and sags: sheet follower, or a second person.`,
  "swing: heavy": ({ figure }) => `${figure} in front of the die swings up and is heavy: sheet follower.`,
  "hands: one side": ({ figure, beside }) =>
    `Blank side ${figure}: hold it by the ${beside}, fingers clear of the die.`,
  "hands: neither side": ({ figure, beside }) =>
    `Blank ${figure} x ${beside}: use a holding tool, or bend it long and cut after.`,
  "edges: plate": () => "Deburr the outside corners at the bend ends before bending.",
  "edges: cracking temper": ({ name }) => `${name} tears from a burr at the bend ends: deburr before bending.`,
  "galvanized: welded": ({ name }) => `${name} is galvanized: grind the zinc off where it is welded, extract the fume.`,
  "finish: not priced": ({ name }) => `Finish "${name}" is not priced: no operation coats it.`,
  "stock: not there": ({ figure, name }) => `${name} ${figure} is not in Stock: buy.`,
  "stock: thicker": ({ figure, limit, name }) =>
    `Stock has no ${name} of ${figure}: planned at ${limit} throughout, the next thickness up.`,
  "stock: larger": ({ figure, beside, name }) =>
    `A blank of ${figure} x ${beside} is larger than every sheet of ${name}.`,
  "stock: runs out": ({ name }, { figure }) => `Stock of ${name} runs out: ${figure} of its blanks cannot be cut. Buy.`,
  "instruction: typed": ({ words = "" }) => (/[.!?]$/.test(words) ? words : `${words}.`),
  "stock: no layout": ({ words }) => `No cut plan takes it: ${words}`,
};

/** Every finding that has a sentence: what it is about, and its kind. */
export const SAID: readonly string[] = Object.keys(SENTENCES);

/** Both angles as the sheet is turned. */
const angleSays = ({ figure, limit, name }: Figures, tool: string, then: string): string =>
  `Turns ${figure} under load; ${tool} ${name} allows ${limit}: ${then}.`;

/** One finding in words. */
export function says(finding: Finding, system: UnitSystem): string {
  const { figure, limit, beside, quantity, name = "", words = "" } = finding;
  // A figure over its limit must not print the same as the limit.
  const more = [0, 1, 2].find(
    (digits) => figure === limit || writtenWith(figure, digits) !== writtenWith(limit, digits),
  );
  // Nor must a missing thickness print the same as a fix that differs by a ten-thousandth, as gauges do.
  const isRounded = Number.parseFloat(writtenWith(figure, 0)) !== Number.parseFloat(writtenWith(figure, 1));
  const isMissing = finding.about === "stock" && finding.kind === "not there";
  const written = (value: number | undefined) => writtenWith(value, isMissing && isRounded ? 1 : (more ?? 3));
  function writtenWith(value: number | undefined, digits: number): string {
    return value === undefined ? "" : figureSays(value, quantity, system, digits);
  }
  const say = SENTENCES[`${finding.about}: ${finding.kind}`];
  const sentence = say
    ? say({ figure: written(figure), limit: written(limit), beside: written(beside), name, words }, finding)
    : `${finding.about}: ${finding.kind}.`;
  return cut(sentence);
}

/** What the shop reads to: thousandths of an inch, tenths of a degree, two figures of a force. */
export function figureSays(value: number, quantity: Finding["quantity"], system: UnitSystem, more = 0): string {
  if (quantity === undefined) return String(Math.round(value));
  const shown = fromInternal(value, quantity, system);
  const two = Number(shown.toPrecision(2 + more));
  switch (quantity) {
    case "length":
      return `${shown.toFixed((system === "in" ? 3 : 1) + more)} ${system}`;
    case "force":
      return system === "in" ? `${two} tons` : `${two} kN`;
    case "lineLoad":
      return system === "in" ? `${two} tons/ft` : `${two} kN/m`;
    case "angle":
      return `${shown.toFixed(1 + more)} deg`;
    case "mass":
      return `${shown.toFixed(more)} ${system === "in" ? "lb" : "kg"}`;
    default:
      return String(two);
  }
}

/** A refusal that is too long leaves out its hint before anything else. */
function cut(text: string): string {
  if (text.length <= LONGEST_SENTENCE) return text;
  const withoutHint = /^.*; got (?:"[^"]*"|[^;"]*)(?=;)/.exec(text)?.[0] ?? text;
  return withoutHint.length <= LONGEST_SENTENCE
    ? withoutHint
    : `${withoutHint.slice(0, LONGEST_SENTENCE - 3).trimEnd()}...`;
}

/** Checks and stops, the worst first. Empty for a clear line. */
export const problemsSay = (findings: readonly Finding[], system: UnitSystem): string[] =>
  problemsOf(findings).map((finding) => says(finding, system));

export const notesSay = (findings: readonly Finding[], system: UnitSystem): string[] =>
  findings.filter(({ status }) => status === "note").map((finding) => says(finding, system));

/** Why a line is not quoted: the worst that is found about it. */
export const noQuoteSays = (findings: readonly Finding[], system: UnitSystem): string =>
  `no quote: ${notMadeSays(findings, system)}`;

/** The same reason where nobody asks for a quote: on the lists of what is cut and what is loaded. */
export function notMadeSays(findings: readonly Finding[], system: UnitSystem): string {
  const [worst] = worstFirst(findings).filter(({ about, status }) => status === "stop" || about === "stock");
  return worst ? says(worst, system) : "no machine in the tables cuts it";
}

/** Said once a job, of the rows of its tables that are in use. */
export const notFromPlateSays = (names: readonly string[]): string =>
  names.length === 0 ? "" : `Not confirmed from the plate: ${names.join(", ")}.`;

export const notCheckedSays = (tables: readonly string[]): string =>
  tables.length === 0 ? "" : `Not checked, since no table was given: ${tables.join(", ")}.`;

/** "without 3 lines", or "" where none is missing. */
export const withoutSays = (lines: number): string =>
  lines === 0 ? "" : `without ${lines} ${lines === 1 ? "line" : "lines"}`;

/** What goes to a vendor, how long it takes, and what its coat does to holes. */
export function vendorSays({ name, vendorDays, coat }: Station, holes: number, system: UnitSystem): string {
  const days = vendorDays === undefined ? "" : `, ${vendorDays} vendor ${vendorDays === 1 ? "day" : "days"}`;
  const closes = coat !== undefined && holes > 0 ? `, holes close by ${figureSays(2 * coat, "length", system)}` : "";
  return `${name} outside${days}${closes}`;
}

/** Of a line that is credited with what is left of its sheet. */
export const COMMON_WORTH_SAYS = "remnants at half their worth, common practice: Stock gives no Remnant worth";

/** What a job's table lacks for any date; undefined where it has both, and where there is no such table at all. */
export function undatedSays({ job, given }: Pick<Shop, "job" | "given">): string | undefined {
  const lacks = [
    ...(job.start === undefined ? ['"Work can begin"'] : []),
    ...(job.due === undefined ? ['"Must leave by"'] : []),
  ];
  return lacks.length === 0 || !given.includes("job")
    ? undefined
    : `no dates yet: type ${lacks.join(" and ")} into the table of the job`;
}
