/**
 * npm run -s bench:bill -- [--lines 1000] [--runs 7] [--json]
 * Time of every function about a bill on an invented one, ms: median of the runs, the first run (cold) apart. The last
 * line is all of them one after the other.
 */
import { parseArgs } from "node:util";
import { shopFunctions } from "../../cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../units/cell.ts";
import { randomFrom } from "./random.ts";

const EXIT_USAGE = 64;
const { values } = parseArgs({
  options: { lines: { type: "string" }, runs: { type: "string" }, json: { type: "boolean" } },
});
const [lines, runs] = [Number(values.lines ?? 1000), Number(values.runs ?? 7)];
if (!(lines >= 1 && lines <= 19_000 && runs >= 1)) {
  console.error("--lines must be 1 to 19000 and --runs 1 or more");
  process.exit(EXIT_USAGE);
}

type Row = readonly CellValue[];
const range = (header: Row, ...rows: Row[]): CellMatrix => [[...header], ...rows.map((row) => [...row])];
const random = randomFrom(7);
const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
const eighths = (low: number, high: number) => low + Math.floor(random() * (high - low) * 8) / 8;

const SHEETS = [
  ["A36", 0.25],
  ["A36", 0.1875],
  ["A1011 CS", "10 ga"],
  ["A1011 CS", "14 ga"],
  ["304", "14 ga"],
  ["5052-H32", 0.125],
  ["6061-T6", 0.125],
] as const;
const SHAPES = [
  ["2; 3", 90],
  ["1.5; 4; 1.5", 90],
  ["2; 2; 2", "90; -90"],
  ["1.5; 3; 1.5; 2", 90],
  ["5", null],
] as const;
const bill = range(
  [
    "Part",
    "Material",
    "Thickness (in)",
    "Quantity",
    "Width (in)",
    "Flanges (in)",
    "Bend angles",
    "Holes",
    "Hole diameter (in)",
    "Operations",
    "Area",
    "Tolerance (in)",
    "Drawing radius (in)",
  ],
  ...Array.from({ length: lines }, (_, i): Row => {
    const [material, thickness] = pick(SHEETS);
    const [flanges, angles] = pick(SHAPES);
    const holes = random() < 0.5 ? Math.floor(random() * 8) : 0;
    const operations = pick([null, "Deburr", "Deburr; Tap 2", "Coating"]);
    const radius = random() < 0.3 ? 0.06 : null;
    return [
      `P${i + 1}`,
      material,
      thickness,
      1 + Math.floor(random() * 200),
      eighths(1, 40),
      flanges,
      angles,
      holes,
      0.4375,
      operations,
      pick(["Deck", "Truss", "Stairs"]),
      pick([null, 0.1, 0.03]),
      radius,
    ];
  }),
);
const brake = range(
  [
    "Brake",
    "Rated force (US ton)",
    "Bed length (in)",
    "Between housings (in)",
    "Open stroke (in)",
    "Approach speed (in/min)",
    "Bend speed (in/min)",
    "Return speed (in/min)",
    "Gauge speed (in/min)",
  ],
  ["Brake 1", 150, 120, 92, 4, 300, 24, 240, 600],
  ["Brake 2", 60, 50, 42, 4, 300, 24, 240, 600],
);
const dies = range(
  ["Die", "Opening (in)", "Angle (deg)"],
  ...[0.375, 0.5, 0.625, 0.75, 1, 1.5, 2, 2.5].map((opening): Row => [`V ${opening}`, opening, 78]),
);
const punches = range(
  ["Punch", "Nose radius (in)", "Angle (deg)"],
  ["Plain", 0.0625, 75],
  ["Knife", 0.03, 60],
  ["Round", 0.25, 75],
);
const shear = range(
  ["Shear", "Rated thickness (in)", "Cut length (in)", "Strokes per minute", "Cuts per blank"],
  ["Shear 1", 0.25, 120, 20, 2],
);
const waterjet = range(
  [
    "Waterjet",
    "Pressure (ksi)",
    "Orifice (in)",
    "Abrasive rate (lb/min)",
    "Nozzle diameter (in)",
    "Quality",
    "Highest feed (in/min)",
    "Pierce time (s)",
  ],
  ["Jet 1", 50, 0.014, 0.75, 0.04, 3, 100, 8],
);
const stock = range(
  ["Material", "Thickness (in)", "Length (in)", "Width (in)", "Price", "Lead days"],
  ...SHEETS.map(([material, thickness]): Row => [material, thickness, 120, 48, 250, 3]),
);
const stations = range(
  ["Station", "Basis", "Set-up (min)", "Time each (min)", "Rate", "Queue (h)", "Vendor days", "Price each"],
  ["Shear", "machine", 5, null, 60, 2, null, null],
  ["Waterjet", "machine", 8, null, 95, 4, 4, 6],
  ["Brake", "machine", 10, null, 75, 6, null, null],
  ["Drill", "hole", 3, 0.4, 55, null, null, null],
  ["Tap", "count", 4, 0.5, 55, null, null, null],
  ["Deburr", "ft", 0, 0.1, 45, null, null, null],
  ["Coating", "ft2", null, null, 0, null, 5, 1.2],
);
const rates = range(
  ["Rate", "Value", "Unit"],
  ["Material yield", 0.8, null],
  ["Scrap allowance", 0.02, null],
  ["First-piece blanks", 1, null],
  ["First job factor", 1.5, null],
  ["Handling per piece", 4, "s"],
  ["Handling by weight", 0.5, "s/lb"],
  ["Handling by length", 1, "s/ft"],
  ["One-person limit", 40, "lb"],
  ["Hoist above", 90, "lb"],
  ["Hoist time", 90, "s"],
  ["Second person", 35, null],
  ["Overhead", 0.25, null],
  ["Margin", 0.3, null],
  ["Overtime per day", 2, "h"],
  ["Sheared edge", 0.03125, "in"],
  ["Deduction spread", 0.01, "in"],
  ["Angle spread", 0.5, "deg"],
);
const calendar = range(
  ["Day", "Start", "End"],
  ...["Mon", "Tue", "Wed", "Thu", "Fri"].map((day): Row => [day, "7:00", "15:00"]),
);
const MONDAY = 46083; // 2 March 2026
const benders = [bill, brake, dies, punches];
const cutters = [...benders, shear, waterjet];
const workers = [...cutters, stations, rates];
const calls: Record<string, (CellMatrix | CellValue)[]> = {
  "BILL.BLANKS": [...benders, rates],
  "BILL.CHECK": [...cutters, rates],
  "BILL.TIMES": workers,
  "BILL.ROUTE": [...workers, calendar, MONDAY],
  "BILL.SETUPS": [...benders, rates],
  "BILL.PRICE": [...cutters, stock, stations, rates],
  "BILL.MACHINES": cutters,
  "BILL.SHEETS": [...benders, stock, rates],
  "BILL.WHATIF": [...workers, calendar, MONDAY, MONDAY + 60],
  "BILL.LOADIN": [...benders, rates],
};

interface Run {
  readonly wall: number;
  /** Of all threads: other work on the machine does not lengthen it. */
  readonly processor: number;
}

function timed(name: string, given: (CellMatrix | CellValue)[]): Run {
  const [used, started] = [process.cpuUsage(), performance.now()];
  const { value } = shopFunctions.call(name, given);
  const [wall, { user, system }] = [performance.now() - started, process.cpuUsage(used)];
  if (isCellError(value)) throw new Error(`${name}: ${value.message}`);
  return { wall, processor: (user + system) / 1000 };
}

const median = (times: readonly number[]) => [...times].sort((a, b) => a - b)[times.length >> 1]!;
const rounded = (ms: number) => Math.round(ms * 10) / 10;
const names = Object.keys(calls);
/** Bill by bill, as a workbook recalculates: every function once, then the next run. The first run is cold. */
const all = Array.from({ length: runs + 1 }, () => names.map((name) => timed(name, calls[name]!)));
names.forEach((name, i) => {
  report(
    name,
    all.map((run) => run[i]!),
  );
});
const sum = (run: readonly Run[]): Run => ({
  wall: run.reduce((total, { wall }) => total + wall, 0),
  processor: run.reduce((total, { processor }) => total + processor, 0),
});
report("all", all.map(sum));

function report(name: string, [cold, ...warm]: readonly Run[]): void {
  const wall = rounded(median(warm.map((run) => run.wall)));
  const processor = rounded(median(warm.map((run) => run.processor)));
  const found = { name, lines, median_ms: wall, processor_ms: processor, cold_ms: rounded(cold!.wall), runs };
  console.log(
    values.json
      ? JSON.stringify(found)
      : `${name.padEnd(14)} ${wall} ms, processor ${processor} ms, cold ${found.cold_ms} ms`,
  );
}
