/** The tables of a workbook as arguments of the functions about a bill. */

const TOOLS = { brake: "Brakes[#All]", dies: "Dies[#All]", punches: "Punches[#All]" } as const;
const MACHINES = { ...TOOLS, shear: "Shears[#All]", waterjet: "Waterjets[#All]" } as const;
export const RATES = "Rates[#All]";
export const STATIONS = "Stations[#All]";
export const SHEARS = MACHINES.shear;

/** `bill`: the reference of a range with a header row. */
export const benders = (bill: string) => ({ bill, ...TOOLS });
export const cutters = (bill: string) => ({ bill, ...MACHINES });
export const workers = (bill: string) => ({ ...cutters(bill), stations: STATIONS, rates: RATES });
