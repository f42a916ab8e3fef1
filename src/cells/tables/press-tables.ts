/** The brake seen from its end: tool outlines as polygons, and its travels. Both come from the workbook. */
import type { Press } from "../../calc/bend/order/press.ts";
import type { Outline } from "../../calc/bend/order/solid.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { between, type Columns, notNegative, positive, readTable } from "../parameters/read-table.ts";
import { isEmptyRange } from "../parameters/shop-table.ts";
import type { TableParameter } from "../record/record.ts";

const TOOLS = ["punch", "ram", "die", "bed", "finger"] as const;
type Outlines = Pick<Press, (typeof TOOLS)[number]>;
type PressSettings = Omit<Press, (typeof TOOLS)[number]>;

const OUTLINE_COLUMNS = {
  tool: { headers: ["Tool"], kind: "text" },
  x: { headers: ["X"], kind: "length" },
  y: { headers: ["Y"], kind: "length" },
} as const satisfies Columns;

const PRESS_COLUMNS = {
  dieOpening: { headers: ["Opening"], kind: "length", rule: positive },
  shoulderRadius: { headers: ["Shoulder radius"], kind: "length", rule: notNegative },
  dieAngle: { headers: ["Die angle"], kind: "angle", rule: between(20, 150, " degrees") },
  gaugeFrom: { headers: ["Finger from"], kind: "length" },
  gaugeTo: { headers: ["Finger to"], kind: "length" },
  nearestStop: { headers: ["Nearest stop"], kind: "length", rule: notNegative },
  furthestStop: { headers: ["Furthest stop"], kind: "length", rule: positive },
  fingerRetracts: { headers: ["Finger draws back"], kind: "text" },
  openHeight: { headers: ["Open height"], kind: "length", rule: positive },
  stroke: { headers: ["Stroke"], kind: "length", rule: positive },
  clearance: { headers: ["Clearance"], kind: "length", rule: notNegative },
  offTheEnd: { headers: ["Off the end"], kind: "text" },
} as const satisfies Columns;

const given = (matrix: CellMatrix, name: string): void => {
  if (isEmptyRange(matrix)) throw wrong(name, "given", null);
};

export const outlines = (): TableParameter<Outlines> => ({
  shape: "table",
  type: "outline table",
  description: `Corners of ${TOOLS.join(", ")}: a range with a header row (Tool, X, Y), seen from the end, x towards the gauge, y up from the die's top; punch and ram with the punch tip at 0, 0, the finger with its face at x = 0`,
  optional: false,
  default: null,
  read: (matrix, name, { system }) => {
    given(matrix, name);
    const rows = readTable(matrix, OUTLINE_COLUMNS, name, system);
    const unknown = rows.find(({ tool }) => !TOOLS.some((known) => known === tool.toLowerCase()));
    if (unknown) throw wrong(`${name} row ${unknown.row} column "Tool"`, `one of ${TOOLS.join(", ")}`, unknown.tool);
    const outline = (tool: string): Outline =>
      rows
        .filter((row) => row.tool.toLowerCase() === tool)
        .map(({ x, y }): readonly [Millimeters, Millimeters] => [mm(x), mm(y)]);
    return Object.fromEntries(TOOLS.map((tool) => [tool, outline(tool)])) as unknown as Outlines;
  },
});

/** Both or none. */
export function drawnPress(outlines: Outlines | undefined, press: PressSettings | undefined): Press | undefined {
  if (outlines && press) return { ...outlines, ...press };
  if (outlines) throw wrong("press", "given where outlines are", null);
  if (press) throw wrong("outlines", "given where press is", null);
  return undefined;
}

const yes = (text: string, label: string): boolean => {
  const folded = text.trim().toLowerCase();
  if (folded === "yes" || folded === "true") return true;
  if (folded === "no" || folded === "false") return false;
  throw wrong(label, '"yes" or "no"', text);
};

export const pressSettings = (): TableParameter<PressSettings> => ({
  shape: "table",
  type: "press table",
  description: `Travels of brake, gauge and die: a range with a header row (${Object.values(PRESS_COLUMNS)
    .map(({ headers: [first] }) => first)
    .join(", ")}) and one row`,
  optional: false,
  default: null,
  read: (matrix, name, { system }) => {
    given(matrix, name);
    const [row] = readTable(matrix, PRESS_COLUMNS, name, system);
    if (!row) throw wrong(name, "a range with one row below its header", null);
    return {
      dieOpening: mm(row.dieOpening),
      shoulderRadius: mm(row.shoulderRadius),
      dieAngle: degrees(row.dieAngle),
      gaugeFrom: mm(row.gaugeFrom),
      gaugeTo: mm(row.gaugeTo),
      nearestStop: mm(row.nearestStop),
      furthestStop: mm(row.furthestStop),
      fingerRetracts: yes(row.fingerRetracts, `${name} row ${row.row} column "Finger draws back"`),
      openHeight: mm(row.openHeight),
      stroke: mm(row.stroke),
      clearance: mm(row.clearance),
      offTheEnd: yes(row.offTheEnd, `${name} row ${row.row} column "Off the end"`),
    };
  },
});
