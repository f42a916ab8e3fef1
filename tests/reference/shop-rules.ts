/**
 * Rules of the trade worked by hand: common practice, never a standard. What a check says is
 * asked on both sides of its limit, so that a limit that moves by one percent is seen.
 */
import { GROOVER_5, type PublishedFormula } from "./published.ts";

const PRACTICE = "common practice, worked by hand";

const MARGIN = "margin = (price - cost) / price, mark-up = (price - cost) / cost, by definition; up to the cent";
const CLOCK = "clock and calendar by hand";
const PIECES = "counting pieces";
const AREA = "area of pieces and sheet";
const STRIP = "BD = A + B - L, by definition";
const GEOMETRY = "plane geometry by hand";
const CHANNEL_STOP = `${GROOVER_5}, eq. 19.6, and plane geometry by hand`;
const GROOVER_FORCE = `${GROOVER_5}, eq. 19.8, solved by hand`;
/** Sources that need nobody's word: definition, counting, geometry, or arithmetic on a book that was read. */
const BY_REASONING = new Set([MARGIN, CLOCK, PIECES, AREA, STRIP, GEOMETRY, CHANNEL_STOP, GROOVER_FORCE]);
const CONJUGATE = "normal distribution with a conjugate prior, textbook rule (memory)";
/** Flat plates of 24 x 48 in, and what cuts them. */
const plates = (count: number) =>
  `VSTACK({"Part","Material","Thickness (in)","Flanges (in)","Width (in)","Quantity"},{"A","A36",0.25,"24",48,${count}})`;
const CUTTING =
  'VSTACK({"Shear","Rated thickness (in)","Cut length (in)"},{"Shear 1",0.3125,98}),VSTACK({"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price"},{"4x8","A36",0.25,96,48,300})';
const WEEK =
  'VSTACK({"Day","Start","End"},{"Monday","7:00","15:00"},{"Tuesday","7:00","15:00"},{"Wednesday","7:00","15:00"},{"Thursday","7:00","15:00"},{"Friday","7:00","15:00"})';

const rule = (
  id: string,
  formula: string,
  expected: number,
  tolerance = 1e-9,
  source = PRACTICE,
): PublishedFormula => ({
  id,
  formula,
  expected,
  tolerance,
  source,
  basis: BY_REASONING.has(source) ? "derived" : "memory",
});

const BRAKE = 'VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"B",@,120,100})';
const strips = (count: number) =>
  `VSTACK({"Material","Thickness (in)","Blank (in)","Flange 1 (in)","Flange 2 (in)","Bend angle (deg)","Opening (in)"}${',{"A36",0.25,4.53,2,3,90,2}'.repeat(count)})`;
/** A channel of 40, 60, 40 in 2 mm sheet over a plain V of 16 mm. */
const CHANNEL =
  'SHOP.BEND.ORDER("40;60;40",90,2,3,{"Tool","X","Y";"punch",0,0;"punch",10,17.32;"punch",10,120;"punch",-10,120;"punch",-10,17.32;"ram",-40,120;"ram",40,120;"ram",40,600;"ram",-40,600;"die",-20,0;"die",-8,0;"die",0,-9.53;"die",8,0;"die",20,0;"die",20,-60;"die",-20,-60;"bed",-50,-60;"bed",50,-60;"bed",50,-700;"bed",-50,-700;"finger",0,0;"finger",60,0;"finger",60,25;"finger",0,25},{"Opening","Shoulder radius","Die angle","Finger from","Finger to","Nearest stop","Furthest stop","Finger draws back","Open height","Stroke","Clearance","Off the end";16,0,80,0,25,5,700,"yes",150,200,1,"no"},2,,"mm")';
const brake = (tons: number) => BRAKE.replace("@", String(tons));
const die = (opening: number, angle: number | string) =>
  `VSTACK({"Die","Opening (in)","Angle (deg)"},HSTACK("D",${opening},${angle}))`;
const punch = (nose: number, angle: number) =>
  `VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P",${nose},${angle}})`;

interface Bend {
  readonly material?: string;
  readonly thickness?: number;
  readonly length?: number;
  readonly flanges?: string;
  readonly tons?: number;
  readonly opening?: number;
  readonly dieAngle?: number | string;
  readonly hole?: number | "";
  readonly nose?: number;
  readonly grain?: string;
}

/** 1 where the check says this status and these words, else 0. Everything else is generous. */
const says = (id: string, status: string, words: string, bend: Bend): PublishedFormula => {
  const { material = "A36", thickness = 0.25, length = 12, flanges = "3; 3", tons = 900, opening = 2 } = bend;
  const { dieAngle = 60, hole = "", nose = 0.0625, grain = "across" } = bend;
  const check = `SHOP.BEND.CHECK("${material}",${thickness},${length},"${flanges}",90,"D",${brake(tons)},${die(opening, dieAngle)},${punch(nose, 50)},"P","${grain}",${hole})`;
  return rule(
    id,
    `=LET(c,${check},IF(AND(INDEX(c,1,1)="${status}",ISNUMBER(SEARCH("${words}",INDEX(c,1,2)))),1,0))`,
    1,
  );
};

/** Tons of the worst case of a foot, by the table of dies. */
const worst = (id: string, material: string, thickness: number, opening: number, tons: number): PublishedFormula =>
  rule(
    `worst case: ${id}`,
    `=INDEX(SHOP.BEND.DIE("${material}",${thickness},12,${brake(900)},${die(opening, 60)},${punch(0.0625, 50)},,,"P","across",,"2026.1"),2,7)`,
    tons,
    1e-6,
    "Lange, Umformtechnik Bd. 3: (1 + 4 s/w) Rm b s^2 / w, at the strong end of strength and thickness (memory)",
  );
/** Of a foot, in US tons: thickness and opening in inches, strength in ksi. */
const lange = (t: number, V: number, ksi: number): number => ((1 + (4 * t) / V) * ksi * 12 * t ** 2) / V / 2;

/** A die that leaves the sheet so many degrees to its faces, whatever the springback. */
const faces = (room: number): Bend => ({
  material: "1100-H14",
  dieAngle: `90-SHOP.AIR.SPRINGBACK("1100-H14",0.25,90,2,0.0625,${FACED})-${room}`,
});
/** The springback hardly depends on the die's angle; it is taken at the one asked about. */
const FACED = 87;

/** A blank argument answers as the figure that stands for it. */
const sameAs = (
  id: string,
  method: string,
  nose: string,
  given: string,
  blank: string,
  full: string,
): PublishedFormula => {
  const call = (tools: string) => `SHOP.AIR.FLAT("A36",0.25,"2; 3",90,2,${tools})`;
  return rule(
    `taken where not given: ${id}`,
    `=${call(`${nose === "," ? "" : nose},${method}${blank}`)}-${call(`${given},${method}${full}`)}`,
    0,
    1e-12,
  );
};

const din = (id: string, radius: number, bendAngle: number, expected: number): PublishedFormula =>
  rule(
    `DIN 6935: ${id}`,
    `=SHOP.BEND.DEDUCTION(1,${radius},${bendAngle},"DIN 6935","DIN","mm")`,
    expected,
    1e-9,
    "Tabellenbuch Metall after DIN 6935 (formula read)",
  );

const strip = (id: string, thickness: number, width: number, status: string): PublishedFormula =>
  rule(
    id,
    `=IF(INDEX(SHOP.SHEAR.CHECK("A36",${thickness},24,${width},VSTACK({"Shear","Rated thickness (in)","Cut length (in)"},{"S",0.3125,98})),1,1)="${status}",1,0)`,
    1,
  );

export const shopRules: readonly PublishedFormula[] = [
  // V/2 / sin 45 = 1.4142 for 2 in; half of 1/4 in more is 1.5392, up to the next sixteenth; with a shoulder of 1/6 in 1.7059.
  rule("least flange over 2 in", "=SHOP.BEND.MINFLANGE(0.25,2)", 1.5625),
  rule("least flange over 2 in, shoulder 1/6 in", "=SHOP.BEND.MINFLANGE(0.25,2,90,1/6)", 1.75),
  rule("shortest flange over 2 in", '=SHOP.BEND.MINFLANGE(0.25,2,90,,"shortest")', Math.SQRT2, 1e-9, GEOMETRY),
  // 28.284 + 3 = 31.284 mm, up to the next millimeter; without rounding the margin shows in its place on the grid.
  rule("least flange over 40 mm", '=SHOP.BEND.MINFLANGE(6,40,90,0,"safe","mm")', 32),
  // 10 V / 14.1421 + t/2 = 7.0711 + 0.9289: just over and just under a whole millimeter.
  rule("half a thickness of margin, under", '=SHOP.BEND.MINFLANGE(1.857,10,90,0,"safe","mm")', 8),
  rule("half a thickness of margin, over", '=SHOP.BEND.MINFLANGE(1.859,10,90,0,"safe","mm")', 9),
  rule("a hole tears below 2t + R", '=SHOP.BEND.HOLEDISTANCE(0.25,0.3125,2,90,"drill after")', 0.8125),
  // V/2 + R tan 45 - (pi/4)(R + 0.42 t): 1 + 0.3125 - 0.7854 x 0.4175
  rule("a hole keeps its shape", "=SHOP.BEND.HOLEDISTANCE(0.25,0.3125,2)", 1 + 0.3125 - (Math.PI / 4) * 0.4175),
  rule("k of 0.42 where none is given", "=SHOP.BEND.ALLOWANCE(0.25,0.3125,90)", (Math.PI / 2) * (0.3125 + 0.42 * 0.25)),
  rule("thickest sheet is a sixth of the opening", `=SHOP.BEND.MAXTHICKNESS("A36",1,2,${brake(900)})`, 2 / 6),
  // 5/32 and 0.16 of the opening, 0.20-0.22, 0.12-0.15, 0.12-0.16: the middle.
  rule("radius share of 60-ksi steel", '=SHOP.AIR.RADIUS("A36",0.25,90,2,,"rule")', 5 / 32 + 0.16),
  rule("radius share of stainless", '=SHOP.AIR.RADIUS("304",0.125,90,1,,"rule")', 0.21),
  rule("radius share of soft aluminum", '=SHOP.AIR.RADIUS("5052-H32",0.125,90,1,,"rule")', 0.135),
  rule("radius share of copper", '=SHOP.AIR.RADIUS("C110 half hard",0.125,90,1,,"rule")', 0.14),

  // A beam that takes 100 tons over 60 % of 100 in: 5/3 ton an inch. Groover at 60 ksi over 2 in: 1.33 x 60 x t^2 / 2 / 2 ton.
  rule(
    "the beam's limit decides before the rating",
    `=IF(ISNUMBER(SHOP.BEND.MAXLENGTH("A36",SQRT(5/3*4/1.33/60)*0.999,2,${brake(100)},"Groover",60)),1,0)+IF(ISNA(SHOP.BEND.MAXLENGTH("A36",SQRT(5/3*4/1.33/60)*1.001,2,${brake(100)},"Groover",60)),1,0)`,
    2,
    1e-9,
    GROOVER_FORCE,
  ),
  // 150 tons over 120 in and 2 in at 58 ksi: t^2 = 150 x 2 x 2 / (1.33 x 58 x 120).
  rule(
    "thickest sheet by Groover's force",
    `=SHOP.BEND.MAXTHICKNESS("A36",120,2,${brake(150)},"Groover",58)`,
    Math.sqrt((150 * 2 * 2) / (1.33 * 58 * 120)),
    1e-6,
    GROOVER_FORCE,
  ),
  // The 5 to 20 thicknesses in which Lange's formula holds, and 0.5 to 10 mm.
  ...[
    ['SHOP.BEND.TONNAGE(,2,100,10.01,"Lange",400,"mm")', 0],
    ['SHOP.BEND.TONNAGE(,2,100,9.99,"Lange",400,"mm")', 1],
    ['SHOP.BEND.TONNAGE(,2,100,39.99,"Lange",400,"mm")', 0],
    ['SHOP.BEND.TONNAGE(,2,100,40.01,"Lange",400,"mm")', 1],
    ['SHOP.BEND.TONNAGE(,0.501,100,5,"Lange",400,"mm")', 0],
    ['SHOP.BEND.TONNAGE(,0.499,100,5,"Lange",400,"mm")', 1],
    ['SHOP.BEND.TONNAGE(,9.99,100,80,"Lange",400,"mm")', 0],
    ['SHOP.BEND.TONNAGE(,10.01,100,80,"Lange",400,"mm")', 1],
  ].map(([call, none]) =>
    rule(
      `Lange's range: ${call}`,
      `=IF(ISNA(${call}),1,0)`,
      none as number,
      0,
      "Lange, after Oehler: 5 to 20 s, 0.5 to 10 mm",
    ),
  ),

  says("an opening of 5.8 thicknesses counts as 6", "clear", "", { material: "1100-H14", opening: 1.4501 }),
  says("a narrower opening marks", "check", "it marks", { opening: 1.4499 }),
  says("an opening of 5 thicknesses does not stop", "check", "it marks", { opening: 1.255 }),
  says("an opening below 5 thicknesses stops", "stop", "too narrow", { opening: 1.24 }),
  says("an opening of 20 thicknesses is only noted", "clear", "", { thickness: 0.125, opening: 2.49, flanges: "9; 9" }),
  says("an opening beyond 20 thicknesses is checked", "check", "scatter", {
    thickness: 0.125,
    opening: 2.51,
    flanges: "9; 9",
  }),
  says("a flange on the shoulder falls in", "stop", "falls into", { flanges: "1.41; 3" }),
  says("a flange just over the shoulder barely rests", "check", "barely rests", { flanges: "1.42; 3" }),
  says("a flange of the safe size rests", "clear", "", { flanges: "1.5625; 3" }),
  // The sheet 80 ksi strong and 12 % thick: plate. 68 ksi and 5 % thick: sheet.
  worst("strong and thick plate", "A36", 0.25, 2, lange(0.28, 2, 80)),
  worst("plate begins at 3/16 in", "A36", 0.188, 2, lange(0.188 * 1.12, 2, 80)),
  worst("below 3/16 in it is sheet", "A36", 0.187, 2, lange(0.187 * 1.05, 2, 80)),
  worst("strong and thick sheet", "A1011 CS", 0.125, 1, lange(0.125 * 1.05, 1, 68)),
  // Between openings of 1.8 and 2.2 in, 2 in are nearer to 2.2 in proportion, and 1.98 in to 1.8.
  rule(
    "the best opening is the nearest to 8 thicknesses",
    `=IF(INDEX(SHOP.BEND.DIE("A36",0.25,12,${brake(900)},VSTACK({"Die","Opening (in)","Angle (deg)"},{"small",1.8,60},{"large",2.2,60}),${punch(0.0625, 50)},,,"P","across"),2,1)="large",1,0)`,
    1,
  ),
  // The sheet under load must stay half a degree short of the die's faces; beyond them thick sheet never comes to its angle.
  says("half a degree from the die's faces is safe", "clear", "", faces(0.52)),
  says("less than half a degree may touch them", "check", "may touch", faces(0.48)),
  says("at the faces it may touch them", "check", "may touch", faces(0.02)),
  says("beyond the faces 1/4 in cannot be reached", "stop", "take a sharper die", faces(-0.02)),

  // What is not given is taken as it would have been written.
  sameAs("nose of half a thickness", '"mechanics"', ",", "0.125", "", ""),
  sameAs("die of 85 degrees", '"mechanics"', "0.0625", "0.0625", ",", ",85"),
  sameAs("shoulder of a twelfth of the opening", '"mechanics"', "0.0625", "0.0625", ",,", ",,2/12"),

  // DIN 6935: k = 0.65 + 0.5 lg(r/s) to r/s = 5, then 1. Square: v = 2 (r + s) - (pi/2)(r + s k/2).
  din("r/s = 4", 4, 90, 2 * 5 - (Math.PI / 2) * (4 + (0.65 + 0.5 * Math.log10(4)) / 2)),
  din(
    "r/s = 4.97, still the logarithm",
    4.97,
    90,
    2 * 5.97 - (Math.PI / 2) * (4.97 + (0.65 + 0.5 * Math.log10(4.97)) / 2),
  ),
  din("r/s = 5.03, the limit", 5.03, 90, 2 * 6.03 - (Math.PI / 2) * 5.53),
  din("r/s = 10", 10, 90, 2 * 11 - (Math.PI / 2) * 10.5),
  din(
    "a bend of 15.1 degrees counts",
    10,
    15.1,
    2 * 11 * Math.tan((7.55 * Math.PI) / 180) - ((15.1 * Math.PI) / 180) * 10.5,
  ),
  din("a bend of 14.9 degrees does not", 10, 14.9, 0),
  din("legs to the tangent from 90 degrees", 10, 90.5, 2 * 11 - ((90.5 * Math.PI) / 180) * 10.5),
  din(
    "legs to the corner below",
    10,
    89.5,
    2 * 11 * Math.tan((44.75 * Math.PI) / 180) - ((89.5 * Math.PI) / 180) * 10.5,
  ),

  // Twice the nozzle: (1/2)^(0.618 x 1.15). Quality 1 to 5.
  rule(
    "feed falls with the bore of the mixing tube",
    '=SHOP.JET.FEED("A36",0.5,1,50,0.014,0.75,0.06)/SHOP.JET.FEED("A36",0.5,1,50,0.014,0.75,0.03)',
    0.5 ** (0.618 * 1.15),
    1e-9,
    "Zeng & Kim, 7th American Water Jet Conference 1993, exponents 0.618 and 1.15",
  ),
  rule("no quality above 5", '=IF(ISERROR(SHOP.JET.FEED("A36",0.5,5.01,50,0.014,0.75,0.04)),1,0)', 1),
  rule("quality 5", '=IF(ISNUMBER(SHOP.JET.FEED("A36",0.5,5,50,0.014,0.75,0.04)),1,0)', 1),

  strip("a strip of 12 thicknesses of plate", 0.25, 3.01, "clear"),
  strip("a narrower strip of plate", 0.25, 2.99, "check"),
  strip("plate below 4 thicknesses", 0.25, 0.99, "stop"),
  strip("a strip of 8 thicknesses of sheet", 0.187, 1.5, "clear"),
  strip("a narrower strip of sheet", 0.187, 1.49, "check"),
  strip("sheet below 4 thicknesses", 0.187, 0.74, "stop"),
  strip("plate begins at 3/16 in, for strips", 0.188, 1.9, "check"),
  strip("below it is sheet, for strips", 0.187, 1.9, "clear"),
  rule(
    "a callout up to 1/4 in is asked about",
    '=IF(INDEX(SHOP.AIR.ACCEPT(0.2495,0.01,"A36",0.25,2.5),1,1)="ask",1,0)',
    1,
  ),
  rule(
    "a larger one needs another tool",
    '=IF(INDEX(SHOP.AIR.ACCEPT(0.2515,0.01,"A36",0.25,2.5),1,1)="other tool",1,0)',
    1,
  ),

  // Sums anybody can follow.
  rule("price that leaves 30 %", "=SHOP.PRICE.FORMARGIN(100,0.3)", 142.86, 1e-9, MARGIN),
  rule("price with 30 % on the cost", '=SHOP.PRICE.FORMARGIN(100,0.3,"markup")', 130, 1e-9, MARGIN),
  rule("one piece bears the set-up", '=INDEX(SHOP.PRICE.BREAKS(100,5,"1; 8",0.2),2,3)', 131.25, 1e-9, MARGIN),
  rule("eight pieces share the set-up", '=INDEX(SHOP.PRICE.BREAKS(100,5,"1; 8",0.2),3,3)', 21.88, 1e-9, MARGIN),
  // Monday 2 March 2026 is day 46083; shifts of 8 hours from 7:00.
  rule("20 hours from Monday morning", `=SHOP.DATE.FINISH(46083,20,${WEEK})`, 46085 + 11 / 24, 1e-9, CLOCK),
  rule(
    "20 hours before Wednesday at 11",
    `=SHOP.DATE.LATESTSTART(46085+11/24,20,${WEEK})`,
    46083 + 7 / 24,
    1e-9,
    CLOCK,
  ),
  rule("20 of 24 hours", `=SHOP.DATE.SLACK(46083,46086,20,${WEEK})`, 4, 1e-9, CLOCK),
  rule("100 in at 20 in/min and 5 pierces of 6 s", "=SHOP.JET.TIME(100,5,200,6,20)", 5.5, 1e-9, CLOCK),
  rule("25 in where 50 in took 4 minutes, 2 pierces of 15 s", "=SHOP.JET.TIME(25,2,200,15,,50,4)", 2.5, 1e-9, CLOCK),
  // From the end to the bend line: the flange less half the deduction 2 (R + t) - (pi/2)(R + 0.42 t).
  rule(
    "stop of a first bend",
    '=INDEX(SHOP.BEND.STOPS("1;2;1",90,"1;2",0.125,0.125),2,3)',
    1 - (0.5 - (Math.PI / 2) * 0.1775) / 2,
  ),
  // V / (4 sin^2 45) a radian.
  rule(
    "ram travel of one degree",
    '=INDEX(SHOP.STRIP.EVENNESS("0;60;120","90;90;90",2),6,2)',
    Math.PI / 180,
    1e-9,
    GEOMETRY,
  ),
  // 16 pieces of 24 x 12 in are the sheet of 96 x 48 in.
  rule(
    "a bill of exactly one sheet takes one",
    '=INDEX(SHOP.CUT.PLAN(VSTACK({"Part","Material","Thickness (in)","Flanges (in)","Width (in)","Quantity"},{"A","A36",0.25,"24",12,16}),VSTACK({"Shear","Rated thickness (in)","Cut length (in)"},{"Shear 1",0.3125,98}),VSTACK({"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price"},{"4x8","A36",0.25,96,48,300})),2,8)',
    1,
    0,
    AREA,
  ),

  rule(
    "what is left of a sheet goes back on the rack",
    `=LET(c,SHOP.CUT.OFFCUTS(${plates(2)},${CUTTING}),INDEX(c,2,4)*INDEX(c,2,5)*INDEX(c,2,6))`,
    96 * 48 - 2 * 24 * 48,
    1e-9,
    AREA,
  ),
  // Four pieces of 24 x 48 in are a sheet of 96 x 48 in: two are on one sheet, six on two.
  rule(
    "four more pieces take one more sheet",
    `=LET(c,SHOP.BILL.CHANGES(${plates(2)},${plates(6)},${CUTTING}),s,FILTER(c,INDEX(c,0,3)="Sheets to pull"),INDEX(s,1,5)-INDEX(s,1,4))`,
    1,
    0,
    PIECES,
  ),
  // A straight cut makes one piece two: four pieces of one sheet are three cuts.
  rule(
    "a sheet cut into quarters takes three strokes",
    '=SUM(INDEX(SHOP.CUT.LIST(VSTACK({"Part","Material","Thickness (in)","Flanges (in)","Width (in)","Quantity"},{"A","A36",0.25,"48",24,4}),VSTACK({"Shear","Rated thickness (in)","Cut length (in)"},{"Shear 1",0.3125,98}),VSTACK({"Stock","Material","Thickness (in)","Length (in)","Width (in)","Price"},{"4x8","A36",0.25,96,48,300})),0,9))',
    3,
    0,
    PIECES,
  ),
  // What the two flanges lose to the bend, by definition.
  rule("deduction of a test strip", '=INDEX(SHOP.STRIP.DEDUCTION("A36",0.25,4.53,"2;3",90,2),1,1)', 0.47, 1e-9, STRIP),
  // Precisions add: 1 / deviation^2 is the prior's 1 / 0.05^2 and as much again for every strip alike.
  rule(
    "two strips alike weigh twice one",
    `=LET(d,LAMBDA(t,INDEX(SHOP.STRIP.TABLE(t),2,5)^-2),2*d(${strips(1)})-d(${strips(2)}))`,
    400,
    1e-6,
    CONJUGATE,
  ),
  // Three jobs alike, each known to 0.35, against a prior of 0.2: precisions weigh the logarithms.
  rule(
    "own factor of three jobs that took a quarter more",
    '=INDEX(SHOP.TIME.TABLE({"Station","Estimated (min)","Recorded (min)";"Brake",40,50;"Brake",60,75;"Brake",20,25}),2,3)',
    1.25 ** (3 / 0.35 ** 2 / (3 / 0.35 ** 2 + 1 / 0.2 ** 2)),
    1e-9,
    CONJUGATE,
  ),
  rule(
    "bottoming takes 3 to 5 times the handbook's force in air, and the upper end is asked for",
    '=SHOP.AIR.TONNAGE("A36",0.25,90,120,2,0.0625,,,,,"bottoming")/SHOP.BEND.TONNAGE("A36",0.25,120,2,,"typical")',
    5,
  ),
  rule(
    "a timed cut holds to twice its thickness, by the power -1.15 of it",
    '=SHOP.JET.FEED("A36",0.5,3,50,0.014,0.8,0.04,"in",VSTACK({"Name","Timed feed (in/min)","Timed thickness (in)","Timed quality"},{"A36",20,0.25,3}))/20',
    0.5 ** 1.15,
  ),
  // The first bend lies against its own edge: the flange less half the deduction, r 3, t 2: 40 - (10 - (pi/2) 3.84) / 2.
  rule(
    "stop of the first hit of a channel",
    `=INDEX(${CHANNEL},2,5)`,
    40 - (10 - (Math.PI / 2) * 3.84) / 2,
    1e-6,
    CHANNEL_STOP,
  ),

  says("a soft alloy folds sharp", "clear", "", { material: "1100-H14", thickness: 0.125, opening: 1 }),
];
