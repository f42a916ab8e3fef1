/**
 * Cuts the plan again, on paper, knowing nothing of how it was made: starts from the sheets, makes every cut in its turn,
 * and says everything that is wrong: a limit of the shear broken, a piece that is not there, a blank of the wrong size,
 * grain or number. An empty answer means the plan holds.
 */
import { firstOf } from "../../units/certain.ts";
import type { Blank, Cut, Limits, PieceOut, Plan, Stock } from "./types.ts";

/** The planner's grid is 1/320 mm; anything within it is the same length. */
const TOLERANCE = 1 / 320 + 1e-6;

interface OnTable {
  readonly w: number;
  readonly h: number;
  readonly copies: number;
  readonly stock: Stock;
  /** Axes already trimmed. */
  readonly trimmed: readonly string[];
  readonly depth: number;
  readonly lastAxis: string;
  readonly named: PieceOut | null;
}

export function replay(
  plan: Pick<Plan, "patterns" | "cuts" | "leftOut">,
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
  weightPerArea = 0,
): string[] {
  const faults: string[] = [];
  const table = new Map<string, OnTable>();
  const spent = new Set<string>();
  layOut(plan, stock, table, faults);
  let visit = 0;
  const halfCut = new Set<string>();
  for (const cut of plan.cuts) {
    if (cut.visit !== visit) lookAround(cut, limits, table, halfCut, faults, weightPerArea);
    visit = cut.visit;
    makeCut(cut, limits, table, spent, faults);
    halfCut.delete(cut.piece);
    for (const { id, kind } of [...cut.falls, cut.stays]) if (kind === "part" && table.has(id)) halfCut.add(id);
  }
  countBlanks(plan, blanks, table, faults);
  return faults;
}

function layOut(plan: Pick<Plan, "patterns">, stock: readonly Stock[], table: Map<string, OnTable>, faults: string[]) {
  const pulled = new Map<string, number>();
  for (const pattern of plan.patterns) {
    const sheet = stock.find(({ id }) => id === pattern.stock);
    if (!sheet) {
      faults.push(`pattern ${pattern.id}: stock must be one of the stock lines; got ${pattern.stock}`);
      continue;
    }
    if (!(Number.isInteger(pattern.repeats) && pattern.repeats > 0)) {
      faults.push(`pattern ${pattern.id}: repeats must be a whole number above 0; got ${pattern.repeats}`);
    }
    pulled.set(sheet.id, (pulled.get(sheet.id) ?? 0) + pattern.repeats);
    // A single blank as large as its sheet needs no cut; it is then named by what the pattern yields.
    const whole =
      pattern.yields.length === 1 && firstOf(pattern.yields).count === 1 ? firstOf(pattern.yields).blank : undefined;
    const named: PieceOut | null =
      whole === undefined ? null : { id: pattern.id, kind: "blank", w: sheet.w, h: sheet.h, blank: whole };
    table.set(pattern.id, {
      w: sheet.w,
      h: sheet.h,
      copies: pattern.repeats,
      stock: sheet,
      trimmed: [],
      depth: 0,
      lastAxis: "",
      named,
    });
  }
  for (const [id, count] of pulled) {
    const { quantity } = stock.find((line) => line.id === id) as Stock;
    if (count > quantity) faults.push(`stock ${id}: sheets pulled must be at most ${quantity}; got ${count}`);
  }
}

/** Common practice where the shop says nothing: stacks, long ones, and from where on they are long (4 ft). */
const STACKS = 4;
const LONG_STACKS = 2;
const LONG_STACK = 1219.2;

/** Before a piece is taken up: what stands half cut on the floor, and what is lifted. Sheets not yet cut stand on the rack. */
function lookAround(
  cut: Cut,
  limits: Limits,
  table: Map<string, OnTable>,
  halfCut: ReadonlySet<string>,
  faults: string[],
  weightPerArea: number,
): void {
  const sizes = new Set<string>();
  const long = new Set<string>();
  const piece = table.get(cut.piece);
  for (const id of halfCut) {
    const { named, w, h } = table.get(id) as OnTable;
    // Pieces as large as the one taken up lie on the stack in work.
    if (named?.kind !== "part" || id === cut.piece || (piece?.w === w && piece.h === h)) continue;
    const size = `${Math.round(w / TOLERANCE)}x${Math.round(h / TOLERANCE)}`;
    sizes.add(size);
    if (Math.max(w, h) > (limits.longStack ?? LONG_STACK) + TOLERANCE) long.add(size);
  }
  const most = limits.stacks ?? STACKS;
  const mostLong = limits.longStacks ?? LONG_STACKS;
  if (sizes.size > most) faults.push(`cut ${cut.seq}: half-cut stacks must be at most ${most}; got ${sizes.size}`);
  if (long.size > mostLong) {
    faults.push(`cut ${cut.seq}: half-cut stacks of long pieces must be at most ${mostLong}; got ${long.size}`);
  }
  const weight = piece ? piece.w * piece.h * weightPerArea : 0;
  const heaviest = limits.heaviestLift ?? Infinity;
  if (weight > heaviest) faults.push(`cut ${cut.seq}: lift must be at most ${heaviest} kg; got ${weight.toFixed(1)}`);
}

/** How far a part is measured, the scrap never. */
function checkMeasure(cut: Cut, limits: Limits, say: (what: string) => void): void {
  const { by, measure, axis, falls, stays, gauge } = cut;
  if ((by === "gauge") !== (gauge !== null)) say(`gauge must be set for a cut by the gauge and no other; got ${gauge}`);
  if (by === "mark" && limits.cutToMark === false) say("mark must be allowed by the shop; it is not");
  if (by === "front stop" && measure > (limits.frontReach ?? 0) + TOLERANCE) {
    say(`front stop must be at most ${limits.frontReach ?? 0} mm; got ${measure}`);
  }
  const isWaste = (kind: string) => kind === "scrap" || kind === "remnant";
  const measured = by === "gauge" ? falls : isWaste(falls[0]?.kind ?? "") ? [stays] : falls;
  for (const part of measured) {
    if (isWaste(part.kind)) say(`what is measured must be a part; ${part.id} is ${part.kind}`);
    if (Math.abs(part[axis] - measure) > TOLERANCE) say(`what is measured must be ${measure} mm; got ${part[axis]}`);
  }
  const least = Math.max(limits.leastTrim ?? 0, limits.thickness ?? 0);
  for (const part of [...falls, stays]) {
    if (isWaste(part.kind) && part[axis] < least - TOLERANCE) {
      say(`waste must be at least ${least} mm wide; got ${part[axis]}`);
    }
  }
}

function makeCut(cut: Cut, limits: Limits, table: Map<string, OnTable>, spent: Set<string>, faults: string[]): void {
  const say = (what: string) => faults.push(`cut ${cut.seq}: ${what}`);
  const piece = table.get(cut.piece);
  if (!piece) {
    if (spent.has(cut.piece)) say(`piece must still be whole; ${cut.piece} was cut before`);
    else say(`piece must be on the table; ${cut.piece} is not`);
    return;
  }
  table.delete(cut.piece);
  spent.add(cut.piece);
  const along = cut.axis;
  const across = along === "w" ? "h" : "w";
  if (cut.copies !== piece.copies) say(`copies must be ${piece.copies}; got ${cut.copies}`);
  if (Math.abs(cut.length - piece[across]) > TOLERANCE) {
    say(`cut length must be the piece's ${piece[across]} mm; got ${cut.length}`);
  }
  if (piece[across] > limits.longestCut + TOLERANCE) {
    say(`cut length must be at most ${limits.longestCut} mm; got ${piece[across]}`);
  }
  let rest = piece[along];
  const depth = piece.lastAxis === along ? piece.depth : piece.depth + 1;
  const trim = cut.stage === "trim";
  if (trim) {
    const { trim: asked, edgesSheared } = piece.stock;
    const least = Math.max(limits.leastTrim ?? 0, limits.thickness ?? 0);
    const due = edgesSheared || asked === 0 ? 0 : Math.max(asked, least);
    const depthOfTrim = cut.falls[0]?.[along] ?? 0;
    if (cut.falls.length !== 1 || Math.abs(depthOfTrim - due) > TOLERANCE) {
      say(`edge trim must be ${due} mm; got ${depthOfTrim}`);
    }
    if (piece.trimmed.includes(along))
      say(`edge must be trimmed once; the ${along} of ${cut.piece} was trimmed before`);
  } else checkMeasure(cut, limits, say);
  const waste = (kind: string) => kind === "scrap" || kind === "remnant";
  for (const fall of cut.falls) {
    const extent = fall[along];
    if (!trim && cut.gauge !== null && Math.abs(extent - cut.gauge) > TOLERANCE) {
      say(`what falls must measure the gauge's ${cut.gauge} mm; got ${extent}`);
    }
    if (!trim && cut.by === "gauge") {
      if (extent > limits.reach + TOLERANCE) say(`gauge must be at most ${limits.reach} mm; got ${extent}`);
      if (extent < limits.nearestGauge - TOLERANCE)
        say(`gauge must be at least ${limits.nearestGauge} mm; got ${extent}`);
    }
    if (!trim && !waste(fall.kind)) {
      if (extent < limits.leastDrop - TOLERANCE) say(`drop must be at least ${limits.leastDrop} mm; got ${extent}`);
      const narrow =
        limits.twistWidth === undefined || extent < limits.twistWidth * (limits.thickness ?? 0) - TOLERANCE;
      const slender = limits.twistLength === undefined || piece[across] > limits.twistLength * (extent + TOLERANCE);
      if ((limits.twistWidth ?? limits.twistLength) !== undefined && narrow && slender) {
        say(`a part that falls must not twist; ${extent} x ${piece[across]} mm does`);
      }
    }
    rest -= extent;
    if (rest <= TOLERANCE) say(`something must stay in front of the blade; ${cut.piece} is used up`);
    else if (rest < limits.leastHold - TOLERANCE) say(`hold must be at least ${limits.leastHold} mm; got ${rest}`);
    if (Math.abs(fall[across] - piece[across]) > TOLERANCE) {
      say(`${fall.id} must keep the piece's ${piece[across]} mm; got ${fall[across]}`);
    }
  }
  if (Math.abs(cut.stays[along] - rest) > TOLERANCE || Math.abs(cut.stays[across] - piece[across]) > TOLERANCE) {
    say(`${cut.stays.id} must measure what is left, ${rest} mm; got ${cut.stays[along]}`);
  }
  if (cut.by === "front stop" && !waste(cut.falls[0]?.kind ?? "scrap") && rest < limits.leastDrop - TOLERANCE) {
    say(`what falls behind a front stop must be at least ${limits.leastDrop} mm; got ${rest}`);
  }
  if (cut.strokes !== piece.copies * cut.falls.length) {
    say(`strokes must be copies times falls, ${piece.copies * cut.falls.length}; got ${cut.strokes}`);
  }
  if (!trim && cut.stage !== "size" && depth > limits.stages) {
    say(`cuts must be at most ${limits.stages} stages deep; got ${depth}`);
  }
  for (const out of [...cut.falls, cut.stays]) {
    if (table.has(out.id) || spent.has(out.id)) say(`piece names must be new; ${out.id} is in use`);
    table.set(out.id, {
      w: out.w,
      h: out.h,
      copies: piece.copies,
      stock: piece.stock,
      trimmed: trim ? [...piece.trimmed, along] : piece.trimmed,
      depth: trim ? piece.depth : depth,
      lastAxis: trim ? piece.lastAxis : along,
      named: out,
    });
  }
}

function countBlanks(
  plan: Pick<Plan, "leftOut" | "patterns">,
  blanks: readonly Blank[],
  table: Map<string, OnTable>,
  faults: string[],
): void {
  const made = new Map<string, number>();
  for (const [id, piece] of table) {
    const { named } = piece;
    if (named === null || named.kind === "part") {
      faults.push(`piece ${id} must end as a blank, a remnant or scrap; it is left half cut`);
      continue;
    }
    if (named.kind !== "blank") continue;
    const blank = blanks.find((line) => line.id === named.blank);
    if (!blank) {
      faults.push(`piece ${id}: blank must be one of the bill's; got ${named.blank}`);
      continue;
    }
    const same = (a: number, b: number) => Math.abs(a - b) <= TOLERANCE;
    const plain = same(piece.w, blank.w) && same(piece.h, blank.h);
    const turned = same(piece.w, blank.h) && same(piece.h, blank.w);
    if (!plain && !turned) {
      faults.push(`piece ${id}: ${blank.id} must measure ${blank.w} x ${blank.h} mm; got ${piece.w} x ${piece.h}`);
    } else if (!grainHolds(blank, piece.stock, plain, turned)) {
      faults.push(`piece ${id}: ${blank.id} must keep its grain ${blank.grain} its first size; it lies the other way`);
    }
    made.set(blank.id, (made.get(blank.id) ?? 0) + piece.copies);
  }
  for (const blank of new Map(blanks.map((line) => [line.id, line])).values()) {
    const wanted = blanks.filter(({ id }) => id === blank.id).reduce((sum, { quantity }) => sum + quantity, 0);
    const left = plan.leftOut.filter((line) => line.blank === blank.id).reduce((sum, { count }) => sum + count, 0);
    const count = made.get(blank.id) ?? 0;
    if (count + left < wanted) {
      faults.push(`${blank.id}: pieces cut must be ${wanted - left}; got ${count}, too few`);
    }
    if (count + left > wanted) {
      faults.push(`${blank.id}: pieces cut must be ${wanted - left}; got ${count}, too many`);
    }
  }
}

function grainHolds(blank: Blank, stock: Stock, plain: boolean, turned: boolean): boolean {
  if (blank.grain === "free") return true;
  const wantsPlain = (blank.grain === "along") === (stock.grain === "w");
  return wantsPlain ? plain : turned;
}
