/** An invented shop and one bracket as arguments of a formula, for the examples of the functions about a bill. */
const table = (...rows: string[]): string => `VSTACK(${rows.map((row) => `{${row}}`).join(",")})`;

const BILL = table(
  '"Part","Material","Thickness (in)","Quantity","Width (in)","Flanges (in)","Bend angles","Holes","Hole diameter (in)"',
  '"HB1","A36",0.25,20,4,"2; 3",90,2,0.5',
);
const BRAKE = table(
  '"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)","Open stroke (in)","Approach speed (in/min)","Bend speed (in/min)","Return speed (in/min)","Gauge speed (in/min)"',
  '"B",150,120,100,4,300,24,240,600',
);
const DIES = table('"Die","Opening (in)","Angle (deg)"', '"D2",2,80');
const PUNCHES = table('"Punch","Nose radius (in)","Angle (deg)"', '"P1",0.0625,78');
const SHEAR = table(
  '"Shear","Rated thickness (in)","Cut length (in)","Strokes per minute","Cuts per blank"',
  '"S",0.25,120,20,2',
);

export const EXAMPLE_BENDERS = [BILL, BRAKE, DIES, PUNCHES].join(",");
/** A shop without a waterjet. */
export const EXAMPLE_CUTTERS = `${EXAMPLE_BENDERS},${SHEAR},""`;
export const EXAMPLE_STOCK = table(
  '"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price"',
  '"48 x 96","A36",0.25,96,48,220',
);
export const EXAMPLE_STATIONS = table(
  '"Station","Basis","Set-up (min)","Time each (min)","Rate"',
  '"Shear","machine",5,"",60',
  '"Brake","machine",10,"",75',
  '"Drill","hole",3,0.4,55',
);
export const EXAMPLE_RATES = table(
  '"Rate","Value","Unit"',
  '"Material yield",0.8,""',
  '"Scrap allowance",0.02,""',
  '"First-piece blanks",1,""',
  '"First job factor",1.5,""',
  '"Handling per piece",4,"s"',
  '"Handling by weight",0.5,"s/lb"',
  '"Handling by length",1,"s/ft"',
  '"Overhead",0.25,""',
  '"Margin",0.3,""',
  '"One-person limit",50,"lb"',
);
export const EXAMPLE_WORKERS = [EXAMPLE_CUTTERS, EXAMPLE_STATIONS, EXAMPLE_RATES].join(",");
export const EXAMPLE_CALENDAR = table(
  '"Day","Start","End"',
  ...["Mon", "Tue", "Wed", "Thu", "Fri"].map((day) => `"${day}","7:00","15:00"`),
);
