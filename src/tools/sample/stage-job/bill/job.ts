/**
 * The bill of the sample: brackets of a touring stage that exists nowhere. Written the way bills come in, some
 * thicknesses by gauge, some in millimeters, some with a decimal comma, and with lines that will not do as they stand.
 */

export interface Part {
  readonly part: string;
  readonly description: string;
  readonly quantity: number;
  readonly material: string;
  /** As it was typed: a number is inches, text brings its own unit. */
  readonly thickness: number | string;
  /** Outside flanges in order along the strip. */
  readonly flanges: string;
  /** null of what is cut and not bent. */
  readonly bendAngles: number | string | null;
  /** Length of the bend line, in: the width of the blank. */
  readonly bendLength: number;
  readonly die: string | null;
  readonly punch: string | null;
  /** From the other flange's inside face to the nearest hole's edge, in; null without a hole. */
  readonly holeDistance: number | null;
  /** "across", "along", or null where nobody said. */
  readonly grain: string | null;
}

export const JOB = "Touring stage of the Marrowby Lantern Fair (invented)";

/** Who asks, when work can begin and when the truck leaves: days as a spreadsheet counts them. */
export const CUSTOMER = "Marrowby Lantern Fair, stage office (invented)";
export const QUOTE = {
  number: "Q-0417",
  day: 46150,
  validDays: 21,
  start: 46160 + 7 / 24,
  due: 46170 + 9.5 / 24,
} as const;

/** One area of the site leaves the day before. */
export const TOWER_DUE = QUOTE.due - 1;

const COLUMNS = [
  "part",
  "description",
  "quantity",
  "material",
  "thickness",
  "flanges",
  "bendAngles",
  "bendLength",
  "die",
  "punch",
  "holeDistance",
  "grain",
] as const;
type Row<Keys extends readonly (keyof Part)[]> = { readonly [At in keyof Keys]: Part[Keys[At]] };

const LINES: readonly Row<typeof COLUMNS>[] = [
  // Deck frames
  ["DF-01", "Deck ledger angle", 48, "A36", "3/16", "2; 3", 90, 24, "V 1-1/2", "Plain", 1.125, "across"],
  ["DF-02", "Deck ledger angle, long", 24, "A36", "3/16", "2; 3", 90, 48, "V 1-1/2", "Plain", 1.125, "across"],
  ["DF-03", "Deck corner clip", 96, "A1011 CS", "10 ga", "1.5; 1.5", 90, 4, "V 1", "Plain", 0.75, "across"],
  ["DF-04", "Deck frame channel", 40, "A1011 CS", "10 ga", "1.5; 4; 1.5", "90; 90", 46, "V 1", "Plain", null, "across"],
  ["DF-05", "Deck splice plate", 60, "A36", 0.1875, "2.5; 2.5", 90, 8, "V 1-1/2", "Plain", 1.25, "across"],
  ["DF-06", "Deck edge trim", 36, "5052-H32", "1/8", "1.25; 2", 90, 72, "V 1", "Plain", null, null],
  ["DF-07", "Deck edge trim, corner", 8, "5052-H32", "1/8", "1.25; 2", 90, 12, "V 1", "Plain", null, null],
  ["DF-08", "Deck beam shoe", 16, "A36", "1/4", "3; 5; 3", "90; 90", 10, "V 2", "Plain", 1.5, "across"],
  ["DF-09", "Deck beam shoe, heavy", 6, "A36", "1/4", "3; 5; 3", "90; 90", 96, "V 1-1/2", "Plain", null, "across"],
  [
    "DF-10",
    "Deck bearer, full length",
    4,
    "A1011 CS",
    "10 ga",
    "1.5; 3; 1.5",
    "90; 90",
    126,
    "V 1",
    "Plain",
    null,
    "across",
  ],
  // Roof and tower
  ["RT-01", "Tower gusset flange", 32, "A36", "3/16", "1.5; 4", 90, 6, "V 1-1/2", "Plain", 1.25, "across"],
  ["RT-02", "Tower sheave guard", 12, "A1011 CS", "12 ga", "1; 3; 1", "90; 90", 14, "V 3/4", "Plain", null, "across"],
  ["RT-03", "Roof purlin cleat", 80, "A1011 CS", "3 mm", "2; 2", 90, 5, "V 1", "Plain", 0.875, "across"],
  ["RT-04", "Roof purlin cleat, raked", 20, "A1011 CS", "3 mm", "2; 2", 60, 5, "V 1", "Plain", 0.875, "across"],
  ["RT-05", "Sling hook plate", 24, "A36", "1/4", "2; 4", 90, 4, "V 2", "Plain", 0.375, "across"],
  ["RT-06", "Tower ladder rung seat", 44, "A36", "3/16", "0.75; 3", 90, 3, "V 1-1/2", "Plain", null, "across"],
  ["RT-07", "Rain gutter", 6, "A653 CS", "16 ga", "1; 3; 4; 1", "90; 90; 45", 96, "V 5/8", "Plain", null, null],
  ["RT-08", "Rain gutter end", 12, "A653 CS", "16 ga", "0.5; 3; 0.5", "90; 90", 4, "V 5/8", "Plain", null, null],
  ["RT-09", "Tower base angle", 8, "A36", "1/4", "3; 3", 90, 36, "V 2", "Plain", 1.5, null],
  ["RT-10", "Sheave cheek", 16, "6061-T6", "1/8", "2; 3", 90, 6, "V 1", "Plain", null, "across"],
  ["RT-11", "Sheave cheek, round nose", 16, "6061-T6", "1/8", "2; 3", 90, 6, "V 1-1/2", "Round 1/2", null, "across"],
  // Lamps and cable
  ["LC-01", "Lamp yoke", 64, "5052-H32", "1/8", "4; 7; 4", "90; 90", 1.5, "V 1", "Plain", 0.75, "across"],
  [
    "LC-02",
    "Lamp yoke, tall",
    32,
    "5052-H32",
    "4,5 mm",
    "6; 9; 6",
    "90; 90",
    2,
    "V 1-1/2",
    "Round 1/4",
    1.25,
    "across",
  ],
  ["LC-03", "Lamp bar saddle", 48, "A1011 CS", "12 ga", "1; 2; 1", "90; 90", 2, "V 3/4", "Plain", 0.5, "across"],
  ["LC-04", "Cable tray", 20, "A653 CS", "16 ga", "2; 6; 2", "90; 90", 72, "V 5/8", "Plain", null, null],
  [
    "LC-05",
    "Cable tray bridge",
    20,
    "A653 CS",
    "16 ga",
    "0.75; 2; 6; 2; 0.75",
    "90; 90; 90; 90",
    12,
    "V 5/8",
    "Gooseneck",
    null,
    "across",
  ],
  ["LC-06", "Cable ramp side", 14, "5052-H32", "4,5 mm", "1.5; 8", 30, 36, "V 1-1/2", "Round 1/4", null, "across"],
  ["LC-07", "Dimmer rack cheek", 10, "304", "14 ga", "1; 12; 1", "90; 90", 20, "V 5/8", "Plain", null, "across"],
  ["LC-08", "Dimmer rack rail", 20, "304", "14 ga", "0.75; 2", 90, 20, "V 5/8", "Plain", 0.5, "across"],
  ["LC-09", "Socket box lid", 30, "304", "16 ga", "0.5; 5; 0.5", "90; 90", 5, "V 3/8", "Plain", null, "across"],
  ["LC-10", "Cable hanger, deep", 26, "A1011 CS", "11 ga", "3; 2; 3", "90; 90", 60, "V 1", "Gooseneck", null, "across"],
  ["LC-11", "Lamp shield", 18, "5052-H32", 0.063, "1; 5; 1", "90; 90", 9, "V 3/8", "Knife", null, "across"],
  ["LC-12", "Lamp clamp seat", 40, "A36", "1/4", "2.5; 2.5", 90, 2.5, "V 1", "Plain", null, "across"],
  // Curtain and scenery
  ["CS-01", "Curtain rail hook", 120, "A1011 CS", "11 ga", "1; 2", 90, 1.5, "V 1", "Plain", 0.75, "across"],
  [
    "CS-02",
    "Curtain rail hook, offset",
    60,
    "A1011 CS",
    "11 ga",
    "1; 1.5; 2",
    "45; 45",
    1.5,
    "V 1",
    "Plain",
    null,
    "across",
  ],
  ["CS-03", "Curtain track cover", 10, "A653 CS", "18 ga", "1; 4; 1", "90; 90", 104, "V 3/8", "Plain", null, null],
  ["CS-04", "Flat brace foot", 54, "A36", "3/16", "2; 6", 90, 3, "V 1-1/2", "Plain", 1.5, "across"],
  ["CS-05", "Flat brace foot, raked", 54, "A36", "3/16", "2; 6", 75, 3, "V 1-1/2", "Plain", 1.5, "along"],
  ["CS-06", "Turntable skirt", 12, "5052-H32", 0.09, "1; 6", 90, 48, "V 5/8", "Plain", null, "across"],
  ["CS-07", "Turntable skirt, seam", 12, "5052-H32", "1/8", "1; 6", 90, 48, "V 1 wide", "Plain", null, "across"],
  ["CS-08", "Trapdoor frame", 8, "A1011 CS", "10 ga", "2; 3; 2", "90; 90", 30, "V 1", "Plain", 0.875, "across"],
  ["CS-09", "Trapdoor hinge leaf", 16, "A36", "1/4", "2; 3", 90, 5, "V 2", "Plain", 1.0, "across"],
  ["CS-10", "Mirror channel", 8, "304", 0.06, "0.5; 1; 0.5", "90; 90", 84, "V 3/8", "Plain", null, "across"],
  ["CS-11", "Wind vane cheek", 6, "6061-T6", "1/8", "1.5; 1.5", 90, 7, "V 1-1/2", "Round 1/2", null, "along"],
  // Winches and wagons
  ["WW-01", "Winch guard", 10, "A1011 CS", "12 ga", "2; 9; 2", "90; 90", 16, "V 3/4", "Plain", null, "across"],
  ["WW-02", "Winch bed angle", 8, "A36", "1/4", "3; 4", 90, 18, "V 2", "Plain", 1.75, "across"],
  ["WW-03", "Winch drip pan", 4, "304", "16 ga", "1; 14; 1", "90; 90", 18, "V 3/8", "Plain", null, "across"],
  ["WW-04", "Wagon wheel bracket", 32, "A36", "1/4", "2.5; 4; 2.5", "90; 90", 4, "V 2", "Plain", 1.375, "across"],
  ["WW-05", "Wagon buffer plate", 16, "304", "1/4", "3; 5", 90, 8, "V 2", "Plain", null, "across"],
  ["WW-06", "Wagon coupling ear", 24, "A36", "1/4", "1.5; 3", 90, 3, "V 2", "Plain", null, "across"],
  ["WW-07", "Wagon side rail", 12, "A1011 CS", "10 ga", "1.5; 4; 1.5", "90; 90", 92, "V 1", "Plain", null, null],
  [
    "WW-08",
    "Wagon floor stiffener",
    24,
    "A1011 CS",
    "11 ga",
    "0.75; 1.5; 0.75",
    "90; 90",
    44,
    "V 1",
    "Plain",
    null,
    "across",
  ],
  ["WW-09", "Brake shoe carrier", 16, "A572-50", "1/4", "2.5; 3", 90, 5, "V 2", "Plain", null, "across"],
  // Drum riser, stairs, rails
  ["DR-01", "Riser corner", 48, "A1011 CS", "3 mm", "2; 2", 90, 7, "V 1", "Plain", 0.875, "across"],
  ["DR-02", "Riser leg socket", 24, "A36", "3/16", "2; 2.5; 2", "90; 90", 6, "V 1-1/2", "Plain", null, "across"],
  ["DR-03", "Stair stringer clip", 40, "A36", "3/16", "2; 3", 52, 3, "V 1-1/2", "Plain", 1.25, "across"],
  ["DR-04", "Stair nosing", 22, "5052-H32", "1/8", "1; 3", 90, 36, "V 1", "Plain", null, "across"],
  ["DR-05", "Stair tread pan", 22, "A1011 CS", "12 ga", "1; 10; 1", "90; 90", 36, "V 3/4", "Plain", null, "across"],
  ["DR-06", "Handrail seat", 36, "304", "1/8", "1.5; 2", 90, 3, "V 1", "Plain", 0.75, "across"],
  ["DR-07", "Handrail seat, sharp", 12, "304", "1/8", "1.5; 2", 90, 60, "V 1", "Knife", null, "across"],
  ["DR-08", "Kick plate", 16, "304", "16 ga", "0.5; 6", 90, 96, "V 3/8", "Plain", null, null],
  ["DR-09", "Monitor wedge side", 18, "5052-H32", 0.09, "1; 11; 1", "90; 50", 15, "V 5/8", "Plain", null, "across"],
  ["DR-10", "Music stand lip", 30, "A1008 CS", "18 ga", "0.75; 10", 35, 18, "V 3/8", "Plain", null, "across"],
  ["DR-11", "Mixing desk spacer", 40, "A1008 CS", "16 ga", "0.5; 0.5", 90, 1, "V 3/8", "Plain", null, "across"],
  // Front of house
  // Cut only, on the waterjet: no shear and no brake takes them.
  ["FH-01", "Box office grille", 2, "Expanded steel 3/4-9", 0.134, "20", null, 30, null, null, null, null],
  ["FH-02", "Program rack lip", 24, "5052-H32", 0.09, "1; 4", 90, 20, "V 5/8", "Plain", null, "across"],
  ["FH-03", "Queue post foot", 36, "A36", "3/16", "3; 3", 90, 4, "V 1-1/2", "Plain", 1.5, "across"],
  ["FH-04", "Cloak rail bracket", 40, "A1011 CS", "11 ga", "2; 6", 90, 2, "V 1", "Plain", 1.0, "across"],
  ["FH-05", "Notice panel", 6, "Composite panel", 0.157, "24", null, 36, null, null, null, null],
  ["FH-06", "Bar foot rail seat", 20, "304", "14 ga", "1.5; 1.5", 90, 4, "V 5/8", "Plain", 0.75, "across"],
  ["FH-07", "Step light cover", 28, "A653 CS", "16 ga", "1; 3; 1", "90; 90", 8, "V 5/8", "Plain", null, "across"],
  ["FH-08", "Ramp edge plate", 10, "A36", "3/16", "2; 8", 30, 40, "V 1-1/2", "Plain", null, "across"],
];

export const PARTS: readonly Part[] = LINES.map(
  (line) => Object.fromEntries(COLUMNS.map((key, at) => [key, line[at]])) as unknown as Part,
);
