import { billMachines as machines } from "../bill/machines.ts";
import { cutters } from "../parameters/bill-tables.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { noRates } from "../tables/rates.ts";

export const billMachines = defineFunction({
  name: "BILL.MACHINES",
  question: "What are the smallest machines that would do this bill, and how much of it can each of ours do?",
  parameters: { ...cutters(), units: units(), data: data() },
  result: { kind: "table", columns: headers("BILL.MACHINES") },
  example: {
    formula:
      '=INDEX(SHOP.BILL.MACHINES(VSTACK({"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"},{"HB1","A36",0.25,20,4,"2; 3",90,2,0.5}),VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"},{"B",150,120,100,4,300,24,240,600}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),VSTACK({"Shear","Rated thickness (in)","Cut length (in)","Strokes per minute","Cuts per blank"},{"S",0.25,120,20,2}),""),4,2)',
    answer: 4,
  },
  source: "BEND.TONNAGE, SHEAR.MAXTHICKNESS turned round, lengths of bends and blanks (derived); the plates decide",

  calculate: ({ bill, brake, dies, punches, shear, waterjet }, { system, materials, work }) =>
    machines(
      bill,
      {
        brakes: brake,
        dies,
        punches,
        shears: shear,
        waterjets: waterjet,
        rates: noRates,
        materials,
        system,
      },
      work,
    ),
});
