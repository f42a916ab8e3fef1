/**
 * Six lines of one bill from drawing to price, worked by hand: a ledger of 10 ft, a small stainless foot, a channel run, a
 * composite panel, a flat plate, and a clip that is delivered twice (two rows of the bill). Ordinary worksheet formulas,
 * one column a row of the bill, so that any spreadsheet works them out without our functions: [name] is a row of the same
 * column, {name} a figure of the shop. Ledger and channel are coated in one color and leave together.
 *
 * The sheets are laid out by hand: each material and thickness is pulled once, in strips of the sheet's full width or
 * length, and what is left over is one rectangle. No other layout has them on one sheet and leaves as much. Shop, prices and times are invented, in the range of common practice (25 min a change of
 * 10 ft tools, 75 to 110 an hour, a 50-minute hour).
 */
import type { CellValue } from "../../src/units/cell.ts";

/** The shop's figures, as they stand in its tables. */
export const SHOP_FIGURES = {
  allowance: 1.2,
  scrap: 0.05,
  firstPieces: 1,
  lineSetUp: 4.5, // min
  setUpPerBend: 3, // min, every bend after the first
  setUpPerFoot: 0.6, // min
  handling: 5, // s
  handlingPerPound: 0.3, // s
  handlingPerFoot: 2.7, // s
  nextBends: 0.7, // share of the first handling
  shearHandling: 1.7, // s a cut
  shearHandlingPerFoot: 1.8, // s
  sheetLoading: 120, // s a sheet
  strokes: 18, // a minute
  cutsPerBlank: 2.5,
  openStroke: 4, // in
  approach: 280, // in/min
  bend: 22,
  back: 240,
  gauge: 500,
  shearRate: 78,
  shearSetUp: 5, // min a material and thickness
  bladeGap: 8, // min, the same
  jetRate: 105,
  jetSetUp: 7, // min
  pierce: 9, // s
  timedFeed: 80, // in/min, timed in this very panel
  web: 0.25, // in
  brakeRate: 95,
  toolChange: 25, // min a set of tools
  deburrRate: 75,
  deburrPerFoot: 0.15, // min
  secondPerson: 36,
  materialMarkUp: 0.15,
  outsideMarkUp: 0.1,
  coatPerFoot: 0.85, // a square foot of both faces
  coatMinimum: 120, // a lot
  certificate: 15,
  overhead: 0.22,
  margin: 0.28,
  lineMinimum: 20,
  minimumCharge: 250,
  crate: 60,
  truck: 90,
  tax: 0.06,
} as const;

/** One column a row of the bill. The last two are one clip in two deliveries. */
export const SIX_LINES = ["Ledger", "Foot", "Channel", "Panel", "Plate", "Clip, first", "Clip, second"] as const;
const COLUMNS = ["B", "C", "D", "E", "F", "G", "H"] as const;

export interface WorkedRow {
  readonly name: string;
  /** One for all columns, or one each. */
  readonly formulas: string | readonly string[];
  readonly unit: string;
  readonly source: string;
}
const row = (name: string, formulas: string | readonly string[], unit = "", source = ""): WorkedRow => ({
  name,
  formulas,
  unit,
  source,
});
const each = (...values: readonly (number | string)[]): string[] => values.map(String);

// biome-ignore format: a table
export const WORKED_ROWS: readonly WorkedRow[] = [
  row("thickness", each("3/16", "1/4", "5.625/41.82", 0.157, "1/4", "5/41.82", "5/41.82"), "in", "plate by the inch; 10 and 11 gauge by the Manufacturers' Standard Gauge (read)"),
  row("flanges", each(5, 6, 7, 40, 12, 4, 4), "in", "2; 3 / 2; 4 / 1.5; 4; 1.5 / 40 / 12 / 2; 2, outside"),
  row("bends", each(1, 1, 2, 0, 0, 1, 1), "count", "square ones"),
  row("width", each(120, 4, 120, 46, 48, 120, 120), "in", "bend length"),
  row("ordered", each(6, 8, 5, 2, 9, 1, 10), "count"),
  row("opening", each(1.5, 2, 1, 0, 0, 1, 1), "in", "8 thicknesses, next die"),
  row("radius", each("(5/32+0.16)/2*[opening]", "(0.2+0.22)/2*[opening]", "(5/32+0.16)/2*[opening]", 0, 0, "(5/32+0.16)/2*[opening]", "(5/32+0.16)/2*[opening]"), "in", "share of the opening, shop rule of thumb (memory); over the punch nose of 1/16"),
  row("deduction", "2*TAN(RADIANS(45))*([radius]+[thickness])-RADIANS(90)*([radius]+0.42*[thickness])", "in", "two setbacks less the allowance, K 0.42: FAA-H-8083-31 (read), Groover 5e eq. 19.6 (read)"),
  row("length", "[flanges]-[bends]*[deduction]", "in", "flat"),
  row("density", each(0.284, 0.29, 0.284, 0.0497, 0.284, 0.284, 0.284), "lb/in3", "Groover 5e table 4.1 (read); stainless, panel (memory)"),
  row("weight", "[thickness]*[length]*[width]*[density]", "lb"),
  row("longest", "MAX([flanges],[width])/12", "ft", "outside, before bending"),
  // Pieces
  row("firstPiece", "IF([bends]>2,{firstPieces},0)", "count", "up to two bends are tried on a strip from the drop"),
  row("blanks", "[ordered]+ROUND([ordered]*{scrap},0)+[firstPiece]", "count", "a spare only from half a piece on"),
  row("share", "([ordered]*(1+{scrap})+[firstPiece])/[blanks]", "", "scrap is a share of the cost, whatever it adds in pieces"),
  // Metal: the sheet that is pulled, less what is kept of it
  row("sheetLength", each(120, 96, 120, 96, 120, 120, 120), "in"),
  row("sheetPrice", each(284, 800, 205, 190, 372, 183, 183), "money"),
  row("worth", each(0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5), "", "what a small offcut is worth of the same area of a new sheet: common stock (common practice)"),
  row("left", each(
    "120*(48-[blanks]*[length])", // strips along the sheet
    "48*(96-4)", // one strip of 4 in across the sheet holds 8 of 5.4
    "120*(48-[blanks]*[length])", // strips along the sheet
    "48*(96-2*40-3*{web})", // two side by side, a web round each
    "48*(120-[blanks]*[length])", // across the sheet, of its full width
    0, // both deliveries, along the sheet: 2.7 in are left, which is scrap
    0,
  ), "in2", "the rectangle that goes back to the rack"),
  row("leftShare", "[left]/([sheetLength]*48)"),
  row("credit", "[sheetPrice]*[leftShare]*[worth]^(1-[leftShare])", "money", "the nearer to a whole sheet, the nearer to its full price"),
  row("groupArea", each("[blanks]*[length]*[width]", "[blanks]*[length]*[width]", "[blanks]*[length]*[width]", "[blanks]*[length]*[width]", "[blanks]*[length]*[width]", "(G[blanks]+H[blanks])*[length]*[width]", "(G[blanks]+H[blanks])*[length]*[width]"), "in2"),
  row("material", "([sheetPrice]-[credit])*[blanks]*[length]*[width]/[groupArea]*[share]*(1+{materialMarkUp})", "money"),
  // Cutting, seconds
  row("loading", "{sheetLoading}*[length]*[width]/([sheetLength]*48)", "s", "the blank's share of a sheet"),
  row("handling", "{handling}+{handlingPerPound}*[weight]+{handlingPerFoot}*[longest]", "s"),
  row("cutEach", each(...SIX_LINES.map((name) => name === "Panel"
    ? "{allowance}*(60*2*(40+46)/{timedFeed}+{pierce}+[handling]+[loading])"
    : "{allowance}*({cutsPerBlank}*(60/{strokes}+{shearHandling}+{shearHandlingPerFoot}*[longest])+[loading])")), "s"),
  row("cutRun", "ROUNDUP(ROUND([blanks]*[cutEach],6),0)", "s"),
  row("cutWork", "ROUNDUP(ROUND([blanks]*[cutEach]/{allowance},6),0)", "s"),
  row("ofThickness", each(1, 1, 1, 1, 1, "[cutWork]/(G[cutWork]+H[cutWork])", "[cutWork]/(G[cutWork]+H[cutWork])"), "", "the shear is set once for both deliveries of the clip"),
  row("cutSetUp", each(...SIX_LINES.map((name) => `ROUNDUP(ROUND({allowance}*60*${name === "Panel" ? "{jetSetUp}" : "({shearSetUp}+{bladeGap})"}*[ofThickness],6),0)`)), "s", "thickness 5 min and 8 for the gap, shared by shear minutes (common practice)"),
  row("cutRate", each(...SIX_LINES.map((name) => (name === "Panel" ? "{jetRate}" : "{shearRate}"))), "an hour"),
  // Bench
  row("deburrRun", each(0, 0, 0, 0, "ROUNDUP(ROUND([blanks]*{allowance}*60*{deburrPerFoot}*2*(12+48)/12,6),0)", 0, 0), "s", "the plate alone, all round"),
  // Brake
  row("travel", "[opening]/2*TAN(RADIANS(45))", "in"),
  row("ram", "60*({openStroke}/{approach}+[travel]/{bend}+({openStroke}+[travel])/{back})", "s", "distance over speed"),
  row("gauging", each(0, 0, "60*2*(4-1.5)/{gauge}", 0, 0, 0, 0), "s", "from flange to web and back; one bend needs none"),
  row("bendEach", "IF([bends]=0,0,[bends]*[ram]+[gauging]+[handling]*(1+([bends]-1)*{nextBends}))", "s"),
  row("bendRun", "ROUNDUP(ROUND([blanks]*{allowance}*[bendEach],6),0)", "s"),
  row("setRun", each("ROUNDUP(ROUND([blanks]*[bendEach],6),0)", "ROUNDUP(ROUND([blanks]*[bendEach],6),0)", "ROUNDUP(ROUND([blanks]*[bendEach],6),0)", 0, 0, "ROUNDUP(ROUND([blanks]*[bendEach],6),0)", "ROUNDUP(ROUND([blanks]*[bendEach],6),0)"), "s"),
  row("ofSet", each(1, 1, "[setRun]/(D[setRun]+G[setRun]+H[setRun])", 0, 0, "[setRun]/(D[setRun]+G[setRun]+H[setRun])", "[setRun]/(D[setRun]+G[setRun]+H[setRun])"), "", "the 1 in die serves channel and clip"),
  row("bendSetUp", "IF([bends]=0,0,ROUNDUP(ROUND(60*{allowance}*({lineSetUp}+{setUpPerBend}*([bends]-1)+{setUpPerFoot}*[width]/12+{toolChange}*[ofSet]),6),0))", "s"),
  row("bendRate", each("{brakeRate}+{secondPerson}", "{brakeRate}", "{brakeRate}+{secondPerson}", "{brakeRate}", "{brakeRate}", "{brakeRate}+{secondPerson}", "{brakeRate}+{secondPerson}"), "an hour", "a bend over 6 ft takes two"),
  // Money
  row("labor", "([cutRun]*[cutRate]+[deburrRun]*{deburrRate}+[bendRun]*[bendRate])/3600*[share]", "money"),
  row("setUp", "([cutSetUp]*[cutRate]+[bendSetUp]*[bendRate])/3600", "money"),
  row("coat", each("[ordered]*2*[length]*[width]/144*{coatPerFoot}", 0, "[ordered]*2*[length]*[width]/144*{coatPerFoot}", 0, 0, 0, 0), "money", "both faces"),
  row("outside", "[coat]*MAX(1,{coatMinimum}/SUM($B[coat]:$H[coat]))*(1+{outsideMarkUp})", "money", "one lot, one minimum, shared"),
  row("extras", each(0, "{certificate}", 0, 0, 0, 0, 0), "money"),
  row("overhead", "{overhead}*([labor]+[setUp])", "money"),
  row("cost", "[material]+[labor]+[setUp]+[outside]+[extras]+[overhead]", "money"),
  row("unitPrice", "ROUNDUP(ROUND(MAX([cost]/(1-{margin}),{lineMinimum})/[ordered],8),2)", "money", "up to the cent, once"),
  row("price", "[unitPrice]*[ordered]", "money"),
];

const shopRows = Object.entries(SHOP_FIGURES);
const FIRST = 2;
const rowOf = (name: string): number => {
  const at = WORKED_ROWS.findIndex((found) => found.name === name);
  if (at < 0) throw new Error(`no row ${name}`);
  return FIRST + at;
};
const TOTALS = FIRST + WORKED_ROWS.length + 1;

const written = (formula: string, column: string): string =>
  formula
    .replace(/\{(\w+)\}/g, (_, name: string) => {
      const at = shopRows.findIndex(([found]) => found === name);
      if (at < 0) throw new Error(`no figure ${name}`);
      return `Shop!$B$${at + 1}`;
    })
    .replace(/(\$?[A-H])?\[(\w+)\]/g, (_, of: string | undefined, name: string) => `${of ?? column}${rowOf(name)}`);

/** The two sheets, by cell. */
export function workedSheets(): Record<"Six" | "Shop", Record<string, CellValue>> {
  const six: Record<string, CellValue> = {};
  SIX_LINES.forEach((name, i) => {
    six[`${COLUMNS[i]!}1`] = name;
  });
  for (const { name, formulas, unit, source } of WORKED_ROWS) {
    const at = rowOf(name);
    six[`A${at}`] = name;
    six[`I${at}`] = unit;
    six[`J${at}`] = source;
    COLUMNS.forEach((column, i) => {
      six[`${column}${at}`] = `=${written(typeof formulas === "string" ? formulas : formulas[i]!, column)}`;
    });
  }
  const price = rowOf("price");
  // Up to the least order, then crate and truck, then tax on all of it.
  six[`B${TOTALS}`] = `=SUM(B${price}:H${price})`;
  six[`B${TOTALS + 1}`] = `=MAX(0,${written("{minimumCharge}", "B")}-B${TOTALS})`;
  six[`B${TOTALS + 2}`] = `=${written("{crate}+{truck}", "B")}`;
  six[`B${TOTALS + 3}`] = `=ROUND(${written("{tax}", "B")}*SUM(B${TOTALS}:B${TOTALS + 2}),2)`;
  six[`B${TOTALS + 4}`] = `=SUM(B${TOTALS}:B${TOTALS + 3})`;
  return {
    Six: six,
    Shop: Object.fromEntries(
      shopRows.flatMap(([name, value], i) => [
        [`A${i + 1}`, name],
        [`B${i + 1}`, value],
      ]),
    ),
  };
}

export const cellOfRow = (name: string, line: number): string => `${COLUMNS[line]!}${rowOf(name)}`;
export const TOTAL_CELLS = { sum: `B${TOTALS}`, tax: `B${TOTALS + 3}`, total: `B${TOTALS + 4}` } as const;
