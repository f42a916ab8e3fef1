/** What may be changed in a line so that it can be made: as it is typed into the bill, and in the order it is tried. */
import { leastFlange } from "../../calc/bend/check/flange.ts";
import { cracks } from "../../calc/bend/cracks.ts";
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import type { Finding, Subject } from "../../calc/finding.ts";
import { LIKE_STEELS } from "../../data/like-steels.ts";
import type { Material } from "../../data/materials/material.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { MM_PER_INCH, type UnitSystem } from "../../units/system.ts";
import { type BillLine, bentStrips, type Strip } from "../nouns/line.ts";
import { asksFor } from "../nouns/operations.ts";
import { isThinner, sheetsToCut } from "../nouns/stock.ts";
import { coatingStation } from "./finish.ts";
import type { LineShop } from "./plan-line.ts";
import { planAlone } from "./plan-lines.ts";
import { bendLines, type Tools } from "./tools.ts";

export type Change =
  | { readonly kind: "tools"; readonly die?: string; readonly punch?: string; readonly brake?: string }
  | { readonly kind: "grain"; readonly grain: Grain }
  | { readonly kind: "deburr" | "coat"; readonly station: string }
  | { readonly kind: "hole after" }
  | { readonly kind: "waterjet" }
  | { readonly kind: "trim after"; readonly flange: Millimeters }
  | { readonly kind: "pieces"; readonly count: number; readonly width: Millimeters }
  /** Another steel of the same gauge that is in Stock. */
  | { readonly kind: "material"; readonly material: Material }
  /** `isStocked`: it is planned from that sheet already. */
  | { readonly kind: "thickness"; readonly thickness: Millimeters; readonly isStocked: boolean };

/** What a change may fix: it leaves everything else as it is, so trying it there would be wasted time. */
const BENT: readonly Subject[] = [
  "beam",
  "bend ends",
  "bend order",
  "brake force",
  "die",
  "loaded angle",
  "opening",
  "punch",
  "radius",
  "room",
];
const MENDS: Readonly<Record<Change["kind"], readonly Subject[]>> = {
  tools: [...BENT, "drawing radius", "flange", "hole", "swing"],
  grain: ["radius", "cutting", "stock"],
  deburr: ["edges"],
  coat: ["finish"],
  "hole after": ["hole"],
  waterjet: ["cutting", "hold-down", "blade gap", "narrow strip", "tolerance"],
  "trim after": ["flange", "bend order"],
  pieces: ["beam", "bend ends", "brake force", "cutting", "lifting", "room", "stock", "swing"],
  material: ["stock"],
  thickness: [...BENT, "blade gap", "cutting", "drawing radius", "flange", "lifting", "narrow strip", "stock", "swing"],
};
/** @param change undefined: does any? */
export const canMend = ({ about }: Finding, change?: Change): boolean =>
  (change ? MENDS[change.kind] : Object.values(MENDS).flat()).includes(about);

/** The row as it is with the change typed into it. */
export function withChange(row: BillLine, change: Change): BillLine {
  switch (change.kind) {
    case "tools": {
      const { kind: _, ...tools } = change;
      return { ...row, ...tools };
    }
    case "grain":
      return { ...row, grain: change.grain };
    case "deburr":
    case "coat":
      return { ...row, operations: [...row.operations, { station: change.station, amount: undefined }] };
    case "hole after":
      return { ...row, holeDistance: undefined };
    case "waterjet":
      return { ...row, pin: "waterjet" };
    case "trim after": {
      const longer = ({ flanges, angles }: Strip) =>
        angles.length > 0 ? flanges.map((flange) => mm(Math.max(flange, change.flange))) : flanges;
      const { main, cross } = row;
      const [flanges, crossFlanges] = [longer(main), cross && longer(cross)];
      return {
        ...row,
        // The bend lines of a tray run along the other direction's base, unless the bill says otherwise.
        main: { ...main, flanges, bendLength: along(main.bendLength, cross?.flanges, crossFlanges) },
        cross: cross && {
          ...cross,
          flanges: longer(cross),
          bendLength: along(cross.bendLength, main.flanges, flanges),
        },
      };
    }
    case "pieces":
      return {
        ...row,
        quantity: row.quantity * change.count,
        width: change.width,
        main: { ...row.main, bendLength: change.width },
      };
    case "material":
      return { ...row, material: change.material };
    case "thickness":
      return { ...row, nominal: change.thickness, thickness: change.thickness };
  }
}

const along = (
  bendLength: Millimeters,
  before: readonly Millimeters[] | undefined,
  after: readonly Millimeters[] | undefined,
): Millimeters => (before && after && bendLength === Math.max(...before) ? mm(Math.max(...after)) : bendLength);

/** The least first: what costs the shop nothing, then work, then what somebody has to agree to. */
export function* changes(row: BillLine, tools: Tools | undefined, shop: LineShop): Generator<Change> {
  if (tools) {
    yield* otherTools(row, tools, shop);
    yield { kind: "grain", grain: row.grain === "across" ? "along" : "across" };
    const deburr = shop.stations.find(({ name }) => name.toLowerCase().includes("deburr"));
    if (deburr && cracks(row.material) && !asksFor(row, "deburr")) yield { kind: "deburr", station: deburr.name };
    if (row.holeDistance !== undefined) yield { kind: "hole after" };
  }
  const coating = row.finish === "" ? undefined : coatingStation(shop.stations);
  if (coating) yield { kind: "coat", station: coating.name };
  if (row.pin !== "waterjet" && shop.waterjets.length > 0) yield { kind: "waterjet" };
  if (tools) {
    const flange = refusalOr(() => leastOf(row, tools.die, shop));
    if (!(flange instanceof Refusal)) yield { kind: "trim after", flange };
  }
  yield* otherSteels(row, shop);
  yield* inPieces(row, shop);
  yield* otherThicknesses(row, shop);
}

/** In the thickness that is asked for, where Stock has that in another steel only. */
function* otherSteels({ material, nominal }: BillLine, { stock }: LineShop): Generator<Change> {
  if (!LIKE_STEELS.includes(material.name)) return;
  const has = (name: string) => sheetsToCut({ name }, nominal, stock);
  if (has(material.name)?.isThicker === false) return;
  for (const name of LIKE_STEELS) {
    const found = has(name);
    const [sheet] = found?.isThicker === false ? found.sheets : [];
    if (sheet) yield { kind: "material", material: sheet.material };
  }
}

/** One tool, two, another brake: leaving the choice open shows which is best; as few as will do are named. */
function* otherTools(row: BillLine, tools: Tools, shop: LineShop): Generator<Change> {
  const names = { die: tools.die.name, punch: tools.punch?.name, brake: tools.brake.name };
  for (const keys of [["die"], ["punch"], ["die", "punch"], ["brake"], ["brake", "die", "punch"]] as const) {
    const open = { ...row, ...names, ...Object.fromEntries(keys.map((key) => [key, undefined])) };
    const found = planAlone(open, shop);
    if (!("blank" in found) || !found.tools) continue;
    const { die, punch, brake } = found.tools;
    const changed = {
      ...(die.name === names.die ? {} : { die: die.name }),
      ...(punch === undefined || punch.name === names.punch ? {} : { punch: punch.name }),
      ...(brake.name === names.brake ? {} : { brake: brake.name }),
    };
    if (Object.keys(changed).length > 0) yield { kind: "tools", ...changed };
  }
}

/** Rounded up to what is typed and measured: a thousandth of an inch, a tenth of a millimeter. */
function leastOf(
  line: BillLine,
  die: { readonly opening: Millimeters; readonly shoulder?: Millimeters | undefined },
  { system }: LineShop,
): Millimeters {
  const least = Math.max(...bendLines(line).map((bend) => leastFlange(bend, die.opening, die.shoulder, system)));
  return rounded(least, system, Math.ceil);
}

const TYPED_IN = 0.001; // chosen: what a caliper in the shop reads
const TYPED_MM = 0.1; // chosen: the same
function rounded(length: number, system: UnitSystem, way: (value: number) => number): Millimeters {
  const step = system === "in" ? TYPED_IN * MM_PER_INCH : TYPED_MM;
  return mm(way(Number((length / step).toFixed(6))) * step);
}

const MOST_PIECES = 4; // chosen: shorter ones are another part

/** Several short ones side by side in place of one that is too long, where its holes and notches can be shared out. */
function* inPieces(row: BillLine, { system }: LineShop): Generator<Change> {
  if (bentStrips(row).length === 0 || row.cross || row.holes > 0 || row.notches > 0) return;
  for (let count = 2; count <= MOST_PIECES; count++)
    yield { kind: "pieces", count, width: rounded(row.width / count, system, Math.ceil) };
}

const NEXT_THICKNESS = 1.4; // chosen: about two gauges; further off it is another part
const THICKNESS_IN = 0.0001; // chosen: how a gauge is written in inches
const THICKNESS_MM = 0.01; // chosen: and in millimeters

/** That of the sheet it is planned from where Stock has not its own; else the next ones in Stock, thicker first. */
function* otherThicknesses(row: BillLine, shop: LineShop): Generator<Change> {
  if (row.thickness !== row.nominal) return; // measured: it lies there
  const step = shop.system === "in" ? THICKNESS_IN * MM_PER_INCH : THICKNESS_MM;
  const typed = (value: number) => mm(Math.round(value / step) * step);
  const stocked = sheetsToCut(row.material, row.nominal, shop.stock);
  if (stocked?.isThicker) yield { kind: "thickness", thickness: typed(stocked.thickness), isStocked: true };
  const others = shop.stock
    .filter(({ material }) => material.name === row.material.name)
    .map(({ thickness }) => typed(thickness));
  const thicker = Math.min(...others.filter((other) => isThinner(stocked?.thickness ?? row.nominal, other)));
  const thinner = Math.max(...others.filter((other) => isThinner(other, row.nominal)));
  for (const thickness of [thicker, thinner])
    if (thickness <= row.nominal * NEXT_THICKNESS && thickness >= row.nominal / NEXT_THICKNESS)
      yield { kind: "thickness", thickness: mm(thickness), isStocked: false };
}
