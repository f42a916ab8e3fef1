/** The tables of a workbook as arguments of every function about a bill: all of them, so that all speak of one plan. */

/** What each table is called in a workbook, by the argument it is given to. */
export const TABLE_NAMES = {
  brakes: "Brakes",
  dies: "Dies",
  punches: "Punches",
  shears: "Shears",
  waterjets: "Waterjets",
  stations: "Stations",
  rates: "Rates",
  stock: "Stock",
  calendar: "Calendar",
  outlines: "Outlines",
  press: "Press",
  corrections: "Corrections",
} as const;
export type ShopArgument = keyof typeof TABLE_NAMES;
/** Drawn tools and strips are tables that few shops have. */
const FEW: readonly ShopArgument[] = ["outlines", "press", "corrections"];
const USUAL = (Object.keys(TABLE_NAMES) as ShopArgument[]).filter((key) => !FEW.includes(key));
/** Tables without a place of their own: any argument takes them, told by their headers. */
const OTHERS = { more1: "Materials", more2: "Finished" } as const;

const allOf = (keys: readonly ShopArgument[]): Readonly<Record<string, string>> =>
  Object.fromEntries(keys.map((key) => [key, `${TABLE_NAMES[key]}[#All]`]));

/** A shop and its bill, without a job: no dates. */
export const ofShop: Readonly<Record<string, string>> = {
  bill: "Parts[#All]",
  ...allOf(USUAL),
  more1: `${OTHERS.more1}[#All]`,
};

/** The tables that a job's workbook has, and its job. */
export const ofTables = (names: readonly string[]): Readonly<Record<string, string>> => ({
  bill: "Parts[#All]",
  ...allOf((Object.keys(TABLE_NAMES) as ShopArgument[]).filter((key) => names.includes(TABLE_NAMES[key]))),
  job: "Job[#All]",
  ...Object.fromEntries(
    Object.entries(OTHERS).flatMap(([key, name]) => (names.includes(name) ? [[key, `${name}[#All]`]] : [])),
  ),
});
