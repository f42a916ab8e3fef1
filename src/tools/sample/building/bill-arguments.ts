/** The tables of a workbook as arguments of every function about a bill: all of them, so that all speak of one plan. */
const SHOP = {
  brakes: "Brakes[#All]",
  dies: "Dies[#All]",
  punches: "Punches[#All]",
  shears: "Shears[#All]",
  waterjets: "Waterjets[#All]",
  stations: "Stations[#All]",
  rates: "Rates[#All]",
  stock: "Stock[#All]",
  calendar: "Calendar[#All]",
  more1: "Materials[#All]",
} as const;

/** A shop and its bill, without a job: no dates. */
export const ofShop = { bill: "Parts[#All]", ...SHOP } as const;
export const ofJob = { ...ofShop, job: "Job[#All]", more2: "Finished[#All]" } as const;
