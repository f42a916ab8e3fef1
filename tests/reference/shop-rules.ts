/**
 * Rules of the trade worked by hand: common practice, as style and cautions have it, never a standard. What a check says is
 * asked on both sides of its limit, so that a limit that moves by one per cent is seen.
 */
import type { PublishedFormula } from "./published.ts";

const PRACTICE = "common practice, worked by hand";

const rule = (
  id: string,
  formula: string,
  expected: number,
  tolerance = 1e-9,
  source = PRACTICE,
): PublishedFormula => ({ id, formula, expected, tolerance, source, basis: "memory" });

const BRAKE = 'VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"B",@,120,100})';
const brake = (tons: number) => BRAKE.replace("@", String(tons));
const die = (opening: number, angle: number) =>
  `VSTACK({"Die","Opening (in)","Angle (deg)"},{"D",${opening},${angle}})`;
const punch = (nose: number, angle: number) =>
  `VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P",${nose},${angle}})`;

interface Bend {
  readonly material?: string;
  readonly thickness?: number;
  readonly length?: number;
  readonly flanges?: string;
  readonly tons?: number;
  readonly opening?: number;
  readonly dieAngle?: number;
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

export const shopRules: readonly PublishedFormula[] = [
  // V/2 / sin 45 = 1.4142 for 2 in; half of 1/4 in more is 1.5392, up to the next sixteenth.
  rule("least flange over 2 in", "=SHOP.BEND.MINFLANGE(0.25,2)", 1.5625),
  rule("shortest flange over 2 in", '=SHOP.BEND.MINFLANGE(0.25,2,90,,"shortest")', Math.SQRT2),
  // 28.284 + 3 = 31.284 mm, up to the next millimetre; without rounding the margin shows in its place on the grid.
  rule("least flange over 40 mm", '=SHOP.BEND.MINFLANGE(6,40,90,,"safe","mm")', 32),
  // 10 V / 14.1421 + t/2 = 7.0711 + 0.9289: just over and just under a whole millimetre.
  rule("half a thickness of margin, under", '=SHOP.BEND.MINFLANGE(1.857,10,90,,"safe","mm")', 8),
  rule("half a thickness of margin, over", '=SHOP.BEND.MINFLANGE(1.859,10,90,,"safe","mm")', 9),
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

  says("an opening of 6 thicknesses is usual", "clear", "", { material: "1100-H14", opening: 1.5001 }),
  says("an opening below 6 thicknesses marks", "check", "it marks", { opening: 1.495 }),
  says("an opening below 5 thicknesses stops", "stop", "it marks", { opening: 1.24 }),
  says("an opening of 5 thicknesses does not stop", "check", "it marks", { opening: 1.255 }),
  says("an opening beyond 12 thicknesses scatters", "clear", "scatter", { opening: 3.02, flanges: "5; 5" }),
  says("an opening beyond 20 thicknesses is checked", "check", "scatter", { opening: 5.03, flanges: "9; 9" }),
  says("a flange on the shoulder falls in", "stop", "falls into", { flanges: "1.41; 3" }),
  says("a flange just over the shoulder barely rests", "check", "barely rests", { flanges: "1.42; 3" }),
  says("a flange of the safe size rests", "clear", "", { flanges: "1.5625; 3" }),
  says("a soft alloy folds sharp", "clear", "", { material: "1100-H14", thickness: 0.125, opening: 1 }),
];
