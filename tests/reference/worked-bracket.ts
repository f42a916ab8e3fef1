/**
 * One bracket from drawing to price, worked by hand: numbered lines of ordinary arithmetic from handbook values and an
 * invented shop's figures. Every line is also an ordinary worksheet formula in which B7 is the answer of line 7, so that any
 * spreadsheet can work it out without our functions. Values computed apart from the project, to the digits given.
 *
 * The bracket: A36 1/4 in, legs 2 and 3 in to the outside corner, one square bend, 4 in wide, two 1/2 in holes, 20 off.
 * It is the whole bill: it pays the sheet and the tools alone. It is sheared, drilled and bent over a 2 in die on the
 * smaller brake of the invented shop (src/cells/example/invented-shop.ts).
 */
export interface WorkedLine {
  readonly what: string;
  readonly formula: string;
  readonly value: number;
  readonly unit: string;
  /** Where the formula or the figure comes from; "" for plain arithmetic on the lines before. */
  readonly source: string;
}

const line = (what: string, formula: string, value: number, unit: string, source = ""): WorkedLine => ({
  what,
  formula,
  value,
  unit,
  source,
});

// biome-ignore format: numbered as on paper
export const WORKED_BRACKET: readonly WorkedLine[] = [
  /*  1 */ line("thickness", "0.25", 0.25, "in", "drawing"),
  /*  2 */ line("outside flange 1", "2", 2, "in", "drawing"),
  /*  3 */ line("outside flange 2", "3", 3, "in", "drawing"),
  /*  4 */ line("width, the length of the bend line", "4", 4, "in", "drawing"),
  /*  5 */ line("bend angle", "90", 90, "deg", "drawing"),
  /*  6 */ line("holes of 1/2 in diameter", "2", 2, "count", "drawing"),
  /*  7 */ line("ordered", "20", 20, "count", "order"),
  /*  8 */ line("die opening, 8 thicknesses", "8*B1", 2, "in", "common practice"),
  /*  9 */ line("share of the opening that A36 bends to, middle of 5/32 and 0.16", "(5/32+0.16)/2", 0.158125, "", "shop rule of thumb (memory)"),
  /* 10 */ line("inside radius", "B9*B8", 0.31625, "in", "share x opening"),
  /* 11 */ line("outside setback tan(A/2) (R + t)", "TAN(RADIANS(B5/2))*(B10+B1)", 0.56625, "in", "FAA-H-8083-31 vol. 1 ch. 4 (read)"),
  /* 12 */ line("bend allowance A (R + K t), K 0.42", "RADIANS(B5)*(B10+0.42*B1)", 0.661697953, "in", "Groover 5e eq. 19.6 (read); K between Machinery's Handbook 0.407 and FAA 0.447"),
  /* 13 */ line("bend deduction 2 SB - BA", "2*B11-B12", 0.470802047, "in", "geometry"),
  /* 14 */ line("flat length", "B2+B3-B13", 4.529197953, "in", "geometry"),
  /* 15 */ line("weight of one blank, steel 0.284 lb/in^3", "B14*B4*B1*0.284", 1.286292219, "lb", "Groover 5e Table 4.1 (read)"),
  /* 16 */ line("blanks: ordered, 2 % scrap from half a piece on; one bend is tried on a strip", "B7+ROUND(B7*0.02,0)", 20, "count", "shop's rates"),
  /* 17 */ line("sheets of 120 x 48: strips across them, of so many blanks each", "ROUNDUP(ROUNDUP(B16/ROUNDDOWN(48/B14,0),0)/ROUNDDOWN(120/B4,0),0)", 1, "count", "shop's stock"),
  /* 18 */ line("material: the sheet at 372.00 less what goes back, half its worth and nearer to all of it the larger it is; 2 % scrap, 10 % mark-up", "(372-372*(120-ROUNDUP(B16/ROUNDDOWN(48/B14,0),0)*B4)/120*0.5^(ROUNDUP(B16/ROUNDDOWN(48/B14,0),0)*B4/120))*B7*1.02/B16*1.1", 45.417432527, "money", "shop's stock and rates"),
  /* 19 */ line("handling at the brake: 5 s, 0.3 s a pound, 2.7 s a foot of the longest outside size", "5+0.3*B15+2.7*MAX(B2+B3,B4)/12", 6.510887666, "s", "shop's rates"),
  /* 20 */ line("shear, one blank: 2.5 cuts at 18 strokes a minute, each handled, its share of a sheet that is loaded in 2 min; a 50-minute hour", "1.2*(2.5*(60/18+1.7+1.8*MAX(B2+B3,B4)/12)+120*B14*B4/(120*48))", 17.802919795, "s", "shop's shear and rates"),
  /* 21 */ line("shear run, whole seconds", "ROUNDUP(B16*B20,0)", 357, "s"),
  /* 22 */ line("ram to the sheet: 3 in at 240 in/min", "3/240*60", 0.75, "s", "shop's brake"),
  /* 23 */ line("punch into the die, V/2 tan(A/2)", "B8/2*TAN(RADIANS(B5/2))", 1, "in", "geometry of an air bend"),
  /* 24 */ line("bending at 30 in/min", "B23/30*60", 2, "s", "shop's brake"),
  /* 25 */ line("ram up at 240 in/min", "(3+B23)/240*60", 1, "s", "shop's brake"),
  /* 26 */ line("brake, one piece: one hit, handled; the gauge stays; a 50-minute hour", "1.2*(B22+B24+B25+B19)", 12.313065199, "s"),
  /* 27 */ line("brake run, whole seconds", "ROUNDUP(B16*B26,0)", 247, "s"),
  /* 28 */ line("drill, one piece: 0.35 min a hole, a 50-minute hour", "1.2*B6*0.35*60", 50.4, "s", "shop's stations"),
  /* 29 */ line("drill run, whole seconds", "ROUNDUP(B16*B28,0)", 1008, "s"),
  /* 30 */ line("shear set-up 4 min, its blade gap 8", "1.2*(4+8)*60", 864, "s", "shop's stations and rates"),
  /* 31 */ line("brake: 25 min for the tools, which no other line shares, and of the line's own 4.5 min and 0.6 a foot of bend", "ROUNDUP(ROUND(1.2*60*(25+4.5+0.6*B4/12),6),0)", 2139, "s", "shop's stations and rates"),
  /* 32 */ line("drill set-up 3 min", "1.2*3*60", 216, "s", "shop's stations"),
  /* 33 */ line("labor: shear 78, brake 95, drill 54 an hour, 2 % scrap", "(B21*78+B27*95+B29*54)/3600*B7*1.02/B16", 29.960516667, "money", "shop's stations"),
  /* 34 */ line("set-up at the same rates", "(B30*78+B31*95+B32*54)/3600", 78.405833333, "money"),
  /* 35 */ line("overhead 22 % of labor and set-up", "0.22*(B33+B34)", 23.840597, "money", "shop's rates"),
  /* 36 */ line("cost of the line", "B18+B33+B34+B35", 177.624379527, "money"),
  /* 37 */ line("unit price at 28 % margin, rounded up to the cent", "ROUNDUP(B36/B7/(1-0.28),2)", 12.34, "money", "margin = (price - cost) / price"),
  /* 38 */ line("price of the line", "B37*B7", 246.8, "money"),
];
