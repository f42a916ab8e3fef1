/**
 * The least change that betters a line, proved by planning with it. What is changed are cells of the bill, so that
 * whoever types it finds the status that was promised.
 */
import { leastFlange } from "../../calc/bend/check/flange.ts";
import { cracks } from "../../calc/bend/cracks.ts";
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import { type Finding, STATUSES, type Status, statusOf } from "../../calc/finding.ts";
import { type Millimetres, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { MM_PER_INCH, type UnitSystem } from "../../units/system.ts";
import { type BillLine, bentStrips } from "../nouns/line.ts";
import { asksFor } from "../nouns/operations.ts";
import type { LinePlan, LineShop } from "./plan-line.ts";
import { planAlone, planOnEach } from "./plan-lines.ts";
import { bendLines } from "./tools.ts";

export type Change =
  | { readonly kind: "tools"; readonly die?: string; readonly punch?: string; readonly brake?: string }
  | { readonly kind: "grain"; readonly grain: Grain }
  | { readonly kind: "deburr"; readonly station: string }
  | { readonly kind: "hole after" }
  | { readonly kind: "waterjet" }
  | { readonly kind: "trim after"; readonly flange: Millimetres }
  | { readonly kind: "pieces"; readonly count: number; readonly width: Millimetres }
  /** `isStocked`: it is planned from that sheet already. */
  | { readonly kind: "thickness"; readonly thickness: Millimetres; readonly isStocked: boolean };

export interface Fix {
  /** One, or as few as will do together. */
  readonly changes: readonly Change[];
  /** The line's status with it. */
  readonly reaches: Status;
}

const isBetter = (status: Status, than: Status): boolean => STATUSES.indexOf(status) < STATUSES.indexOf(than);

/**
 * undefined: none of the shop's tools can do it, nor any change of the part that is tried here.
 * @param row the line as the bill has it; `plan` is what has come of it, `now` its status.
 * @param inBill status of the line in the whole bill with another row in its place: asked where the line alone does not
 * tell, because sheets are counted, two machines may cut it, or its tools are chosen with those of other lines.
 */
export function fixOf(
  row: BillLine,
  plan: LinePlan,
  now: Status,
  shop: LineShop,
  inBill: (changed: BillLine) => Status,
): Fix | undefined {
  if (now === "clear") return undefined;
  let [current, of, made]: [BillLine, LinePlan, readonly Change[]] = [row, plan, []];
  while (made.length < MOST_CHANGES) {
    const open = worstAlone(current, shop);
    let step: { readonly change: Change; readonly line: BillLine } | undefined;
    for (const change of changes(current, of, shop)) {
      const line = withChange(current, change);
      const left = worstAlone(line, shop);
      if (isBetter(left.status, now)) {
        const reaches = statusOnEach(line, shop) ?? inBill(line);
        if (isBetter(reaches, now)) return { changes: [...made, change], reaches };
      } else if (left.status === open.status && left.count < open.count) step ??= { change, line };
    }
    // Nothing raises it by itself: what takes one of its problems away is kept, and the rest is mended from there.
    const planned = step && planAlone(step.line, shop);
    if (!step || !planned || !("blank" in planned)) return undefined;
    [current, of, made] = [step.line, planned, [...made, step.change]];
  }
  return undefined;
}
const MOST_CHANGES = 3; // chosen: whoever has to change more draws another part

/** The worst status, and how much is found at it. */
function worstAlone(line: BillLine, shop: LineShop): { readonly status: Status; readonly count: number } {
  const planned = planAlone(line, shop);
  if (!("blank" in planned)) return { status: "stop", count: Infinity };
  const findings = findingsOf(planned);
  const status = statusOf(findings);
  return { status, count: findings.filter((finding) => finding.status === status).length };
}

/** Of the line alone on the shop's tables, the findings of the machine that would cut it among them. */
export const statusAlone = (line: BillLine, shop: LineShop): Status => worstAlone(line, shop).status;

const findingsOf = ({ findings, cutting }: LinePlan): Finding[] => [
  ...findings,
  ...(cutting.shear ? cutting.onShear : []),
];

/** The same status whatever the rest of the bill is; undefined where the rest may decide. */
function statusOnEach(line: BillLine, shop: LineShop): Status | undefined {
  const statuses = new Set<Status>();
  for (const plan of planOnEach(line, shop)) {
    if (!("blank" in plan)) return undefined;
    const { cutting, sheets } = plan;
    if (sheets?.some(({ count }) => count !== undefined)) return undefined;
    if (cutting.waterjet && statusOf(cutting.onShear) !== "clear") return undefined;
    statuses.add(statusOf(findingsOf(plan)));
  }
  return statuses.size === 1 ? [...statuses][0] : undefined;
}

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
      return { ...row, operations: [...row.operations, { station: change.station, amount: undefined }] };
    case "hole after":
      return { ...row, holeDistance: undefined };
    case "waterjet":
      return { ...row, pin: "waterjet" };
    case "trim after": {
      const longer = (flanges: readonly Millimetres[]) => flanges.map((flange) => mm(Math.max(flange, change.flange)));
      const { main, cross } = row;
      const flanges = main.angles.length > 0 ? longer(main.flanges) : main.flanges;
      const crossFlanges = cross && (cross.angles.length > 0 ? longer(cross.flanges) : cross.flanges);
      return {
        ...row,
        // The bend lines of a tray run along the other direction's base, unless the bill says otherwise.
        main: { ...main, flanges, bendLength: along(main.bendLength, cross?.flanges, crossFlanges) },
        cross: cross && {
          ...cross,
          flanges: crossFlanges!,
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
    case "thickness":
      return { ...row, nominal: change.thickness, thickness: change.thickness };
  }
}

const along = (
  bendLength: Millimetres,
  before: readonly Millimetres[] | undefined,
  after: readonly Millimetres[] | undefined,
): Millimetres => (before && after && bendLength === Math.max(...before) ? mm(Math.max(...after)) : bendLength);

/** The least first: what costs the shop nothing, then work, then what somebody has to agree to. */
function* changes(row: BillLine, plan: LinePlan, shop: LineShop): Generator<Change> {
  if (plan.tools) {
    yield* otherTools(row, plan.tools, shop);
    yield { kind: "grain", grain: row.grain === "across" ? "along" : "across" };
    const deburr = shop.stations.find(({ name }) => name.toLowerCase().includes("deburr"));
    if (deburr && cracks(row.material) && !asksFor(row, "deburr")) yield { kind: "deburr", station: deburr.name };
    if (row.holeDistance !== undefined) yield { kind: "hole after" };
  }
  if (row.pin !== "waterjet" && shop.waterjets.length > 0) yield { kind: "waterjet" };
  if (plan.tools) {
    const { die } = plan.tools;
    const flange = refusalOr(() => leastOf(row, die, shop));
    if (!(flange instanceof Refusal)) yield { kind: "trim after", flange };
  }
  yield* inPieces(row, shop);
  yield* otherThicknesses(row, plan, shop);
}

/** One tool, two, another brake: which would be best is known by leaving the choice open; as few as will do are named. */
function* otherTools(row: BillLine, tools: NonNullable<LinePlan["tools"]>, shop: LineShop): Generator<Change> {
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
  die: { readonly opening: Millimetres; readonly shoulder?: Millimetres | undefined },
  { system }: LineShop,
): Millimetres {
  const least = Math.max(...bendLines(line).map((bend) => leastFlange(bend, die.opening, die.shoulder, system)));
  return rounded(least, system, Math.ceil);
}

const TYPED_IN = 0.001; // chosen: what a caliper in the shop reads
const TYPED_MM = 0.1; // chosen: the same
function rounded(length: number, system: UnitSystem, way: (value: number) => number): Millimetres {
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
function* otherThicknesses(row: BillLine, plan: LinePlan, shop: LineShop): Generator<Change> {
  if (row.thickness !== row.nominal) return; // measured: it lies there
  const step = shop.system === "in" ? THICKNESS_IN * MM_PER_INCH : THICKNESS_MM;
  const typed = (value: number) => mm(Math.round(value / step) * step);
  if (plan.line.thickness !== row.thickness)
    yield { kind: "thickness", thickness: typed(plan.line.thickness), isStocked: true };
  const others = shop.stock
    .filter(({ material }) => material.name === row.material.name)
    .map(({ thickness }) => typed(thickness));
  const thicker = Math.min(...others.filter((other) => other > plan.line.thickness + step));
  const thinner = Math.max(...others.filter((other) => other < row.nominal - step));
  for (const thickness of [thicker, thinner])
    if (thickness <= row.nominal * NEXT_THICKNESS && thickness >= row.nominal / NEXT_THICKNESS)
      yield { kind: "thickness", thickness: mm(thickness), isStocked: false };
}
