/**
 * Part lists as people write them, made from lines that are known: other headings, units in the heading, in the cell, in
 * a row of their own or nowhere, decimals and thousands either way, titles, sums, several headings. What a list says in
 * one way only is its truth; where it says nothing, or two things, a reader must ask.
 */
import { MM_PER_INCH } from "../../../src/units/system.ts";

export interface TrueLine {
  readonly part: string;
  readonly quantity: number;
  readonly material: string;
  /** In mm; of a gauge by the published series (15 U.S.C. 206 and the trade's tables, as SHEET.THICKNESS has them). */
  readonly thickness: number;
  readonly width: number;
  readonly flanges: readonly number[];
}
export interface MangledList {
  readonly bytes: Uint8Array;
  readonly lines: readonly TrueLine[];
  /** How it was made, for whoever looks into a failure. */
  readonly how: string;
}
type Random = () => number;

/** Manufacturers' standard gauge of sheet steel in inches, as 15 U.S.C. 206 leads to (41.82 lb a square foot an inch). */
const GAUGES: Readonly<Record<string, number>> = {
  "10": 0.1345,
  "11": 0.1196,
  "12": 0.1046,
  "14": 0.0747,
  "16": 0.0598,
};

export function mangledList(random: Random): MangledList {
  const pick = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)]!;
  const chance = (share: number): boolean => random() < share;
  const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));

  const metric = chance(0.45);
  const decimal = pick([".", ".", ","]);
  const thousands = pick(["", "", decimal === "." ? "," : "."]);
  const unitAt = pick(["heading", "heading", "cell", "row", "nowhere"] as const);
  const unit = metric ? "mm" : "in";
  const places = pick([undefined, undefined, 3]);
  const hasLegs = chance(0.25);
  const separator = pick([",", ";", "\t"]);
  const separate = (value: number): string => {
    const text = places === undefined ? String(Number(value.toFixed(4))) : value.toFixed(places);
    const [before = "", after] = text.split(".");
    const grouped = thousands === "" ? before : before.replace(/\B(?=(\d{3})+$)/g, thousands);
    return after === undefined ? grouped : `${grouped}${decimal}${after}`;
  };
  const inchText = (value: number): string => {
    const sixteenths = value * 16;
    if (!Number.isInteger(sixteenths) || chance(0.5)) return separate(value);
    const rest = sixteenths % 16;
    if (rest === 0) return String(Math.floor(value));
    let [top, bottom] = [rest, 16];
    while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
    const before = Math.floor(value);
    return `${before > 0 ? `${before}${pick(["-", " "])}` : ""}${top}/${bottom}`;
  };
  const cellUnit = (): string => (metric ? pick(["mm", " mm", "MM"]) : pick(['"', " in", "in", " IN."]));
  /** A length in the list's own unit. */
  const written = (value: number): string =>
    `${metric ? separate(value) : inchText(value)}${unitAt === "cell" ? cellUnit() : ""}`;

  const side = (): number =>
    metric ? pick([whole(12, 300), whole(12, 3000), whole(100, 6000) / 2]) : whole(8, 1800) / 16;
  const thicknessOf = (): readonly [mm: number, text: string] => {
    const kind = random();
    if (!metric && kind < 0.3) {
      const gauge = pick(Object.keys(GAUGES));
      const bare = chance(0.15);
      return [GAUGES[gauge]! * MM_PER_INCH, bare ? gauge : gauge + pick([" ga", "ga", " GA", " gauge"])];
    }
    if (metric ? kind < 0.08 : kind < 0.36) {
      const mm = pick([2, 3, 4.5, 6]);
      return [mm, `${String(mm).replace(".", decimal)} mm`]; // brings its own unit in any list
    }
    const value = metric ? pick([1, 1.5, 2, 3, 4, 5, 6, 8, 10]) : pick([0.0625, 0.125, 0.1875, 0.25, 0.3125, 0.375]);
    return [metric ? value : value * MM_PER_INCH, written(value)];
  };

  const rows: string[][] = [];
  const lines: TrueLine[] = [];
  const count = whole(3, 12);
  const toMm = (value: number) => (metric ? value : value * MM_PER_INCH);
  for (let i = 0; i < count; i++) {
    const [thickness, thicknessText] = thicknessOf();
    const [width, flanges] = [side(), hasLegs ? [side(), side()] : [side()]];
    const quantity = pick([whole(1, 60), whole(1, 60), whole(1, 12) * 100, whole(1, 9) * 1000, whole(1001, 9999)]);
    const part = `${pick(["P", "BR-", "A1.", ""])}${i + 1}`;
    lines.push({
      part,
      quantity,
      material: pick(["A36", "A1011 CS", "A1008 CS"]),
      thickness,
      width: toMm(width),
      flanges: flanges.map(toMm),
    });
    const quantityText = separateWhole(quantity, thousands) + pick(["", "", "", " ea", " pcs"]);
    rows.push([
      part,
      quantityText,
      lines.at(-1)!.material,
      thicknessText,
      written(width),
      ...flanges.map(written),
      pick(["", "x", "see dwg", "-"]),
    ]);
  }

  const inHeading = (title: string): string =>
    unitAt === "heading" ? title + pick([` (${unit})`, ` [${unit}]`, ` ${unit}`, `, ${unit}`]) : title;
  const heading = [
    pick(["Part", "ITEM NO.", "Part Number", "P/N", "Mark", "DWG NO."]),
    pick(["Qty", "QTY.", "Quantity", "Total Qty", "No. off"]),
    pick(["Material", "Matl", "MAT'L", "Grade"]),
    inHeading(pick(["Thickness", "Thk", "THK.", "T"])),
    inHeading(pick(["Width", "W", "Bend length"])),
    ...(hasLegs ? [inHeading("Leg A"), inHeading("Leg B")] : [inHeading(pick(["Length", "L", "Flanges"]))]),
    pick(["Notes", "Rev", "Remarks", "Weight"]),
  ];
  const units = ["", "ea", "", unit, unit, ...(hasLegs ? [unit, unit] : [unit]), ""];
  // Columns in any order; the angle of bent parts behind them.
  const order = heading.map((_, i) => i).sort(() => random() - 0.5);
  const across = (row: readonly string[]): string[] => order.map((i) => row[i] ?? "");
  const angled = (row: string[], cell: string): string[] => (hasLegs ? [...row, cell] : row);

  const table: string[][] = [];
  for (let i = whole(0, 3); i > 0; i--)
    table.push([pick(["Booth 12", "Rev C", "", "Date: 3/4/2026", "Customer list, all parts"])]);
  table.push(angled(across(heading), "Angle"));
  if (unitAt === "row") table.push(angled(across(units), chance(0.5) ? "deg" : ""));
  rows.forEach((row, i) => {
    table.push(angled(across(row), "90"));
    if (chance(0.06)) table.push([]);
    if (chance(0.05)) table.push(angled(across(heading), "Angle"));
    if (i === rows.length - 1 && chance(0.4)) table.push(["Total", String(rows.length)]);
  });
  const text = table
    .map((row) => row.map((cell) => quoted(cell, separator)).join(separator))
    .join(pick(["\n", "\r\n"]));
  const how = JSON.stringify({ metric, decimal, thousands, unitAt, places, hasLegs, separator, heading });
  return {
    bytes: encoded(text, pick(["utf8", "utf8", "bom", "utf16", "utf16be"] as const)),
    lines,
    how: `${how}\n${text}`,
  };
}

const separateWhole = (value: number, by: string): string =>
  by === "" ? String(value) : String(value).replace(/\B(?=(\d{3})+$)/g, by);

const quoted = (cell: string, separator: string): string =>
  cell.includes(separator) || cell.includes('"') || cell.includes("\n") ? `"${cell.replaceAll('"', '""')}"` : cell;

export function encoded(text: string, as: "utf8" | "bom" | "utf16" | "utf16be"): Uint8Array {
  if (as === "utf8") return new TextEncoder().encode(text);
  if (as === "bom") return new TextEncoder().encode(`\ufeff${text}`);
  const bytes = new Uint8Array(2 + text.length * 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, as === "utf16");
  for (let i = 0; i < text.length; i++) view.setUint16(2 + i * 2, text.charCodeAt(i), as === "utf16");
  return bytes;
}
