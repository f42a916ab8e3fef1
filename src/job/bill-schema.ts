/** `bill --json` as a schema: what is written goes out through it, and what is read comes in through it. */
import * as z from "zod/mini";
import { METHODS } from "../bill/lines/blank.ts";
import { CUTTERS } from "../bill/nouns/line.ts";
import { TABLES } from "../bill/nouns/shop.ts";
import { SEVERITIES, STATUSES, SUBJECTS } from "../bill/problems.ts";
import { UNIT_SYSTEMS } from "../units/system.ts";

// Compiled validators need eval, which a strict content security policy forbids.
z.config({ jitless: true });

/** Absent is null; zod's number is finite. */
const number = z.nullable(z.number());
const text = z.nullable(z.string());
const count = z.number().check(z.int(), z.gte(0));
/** Of the bill: its first line is 1. Parts may repeat, lines do not. */
const line = z.number().check(z.int(), z.gte(1));
const isoTime = z.nullable(z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}$/)));
const flat = z.strictObject({ length: z.number(), width: z.number() });

const FINDING = z.strictObject({
  about: z.enum(SUBJECTS),
  status: z.enum(SEVERITIES),
  figure: number,
  limit: number,
  unit: text,
  says: z.string(),
  /** The least change that betters the line; it stands at the worst finding alone. */
  fix: z.nullable(z.strictObject({ says: z.string(), reaches: z.enum(STATUSES) })),
});

/** Bends count from the first edge of their own strip; the strokes of a tray's other strip follow those of its first. */
const HIT = z.strictObject({
  hit: line,
  bend: line,
  angle: z.number(),
  stop: z.number(),
  /** The edge that lies at the gauge. */
  end: z.enum(["first", "last"]),
  /** What is done with the sheet since the hit before. */
  turn: z.enum(["none", "ends", "flip", "ends and flip"]),
  /** Of the punch tip below the die's top, under load. */
  depth: z.number(),
});

const LINE_JSON = z.strictObject({
  line,
  part: z.string(),
  quantity: number,
  /** Blanks to cut: what is wanted and its extras. */
  ordered: number,
  material: text,
  /** As planned: of the sheet it is cut from, or as measured. */
  thickness: number,
  finish: text,
  /** Of one piece. */
  weight: number,
  status: z.enum(STATUSES),
  accepted: text,
  findings: z.array(FINDING),
  notes: z.array(z.string()),
  flat: z.nullable(flat),
  radius: number,
  deduction: number,
  method: z.nullable(z.enum(METHODS)),
  die: text,
  punch: text,
  brake: text,
  order: z.nullable(z.array(HIT)),
  cut_on: z.nullable(z.enum(CUTTERS)),
  quoted: z.boolean(),
  due: isoTime,
  minutes: z.record(z.string(), z.number()),
  cost: number,
  price_each: number,
  price: number,
});
export type LineJson = z.infer<typeof LINE_JSON>;
/** `check` says as well which row of its file a part stands in: the header is row 1. */
export const PART_JSON = z.extend(LINE_JSON, { row: line });
export type PartJson = z.infer<typeof PART_JSON>;

const SHEETS = z.strictObject({
  material: z.string(),
  thickness: z.number(),
  stock: z.string(),
  machine: z.enum(CUTTERS),
  count,
  price: number,
  /** Over all sheets of the row. */
  pieces: z.array(z.strictObject({ line, part: z.string(), count })),
  remnants: z.array(flat),
});

const TOTALS = z.strictObject({
  lines: count,
  clear: count,
  check: count,
  stop: count,
  quoted: count,
  pieces: count,
  weight: z.number(),
  cost: number,
  /** Of the lines; what the order comes to stands below. */
  price: number,
  finish: isoTime,
  /** Lines that break their time; null where there are no dates. */
  late: number,
  minimum: number,
  rush: number,
  crate: number,
  truck: number,
  tax: number,
  order: number,
});

export const BILL_JSON = z.strictObject({
  version: z.literal(1),
  plan: z.string(),
  units: z.enum(UNIT_SYSTEMS),
  lines: z.array(LINE_JSON),
  sheets: z.array(SHEETS),
  setups: z.array(z.strictObject({ brake: z.string(), die: z.string(), punch: text, lines: z.array(line) })),
  totals: TOTALS,
  not_checked: z.array(z.enum(TABLES)),
});
export type BillJson = z.infer<typeof BILL_JSON>;
