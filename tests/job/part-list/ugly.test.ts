import { describe, expect, it } from "vitest";
import { shownAs } from "./shown-as.ts";
import { UGLY } from "./ugly-lists.ts";

/** Column map, what is left out, what is asked about, and the cells of the bill; or the refusal. Read by hand, list by list. */
const EXPECTED: Readonly<Record<string, readonly string[]>> = {
  "titles above, short headings, a sum below": [
    "A=Part, B=Quantity, C=Material, D=Thickness in, E=Width in, F=Flanges in, G=-",
    "row 7 left out: Total, 1012",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "1 | 12 | A36 | 0.1875 | 3 | 4.5",
    "2 | 1000 | A36 | 0.25 | 3.5 | 4",
  ],
  "semicolons, decimal commas, millimeters in the heading": [
    "A=Part, B=Quantity, C=Material, D=Thickness mm, E=Width mm, F=Flanges mm",
    'E3 "1.200": figure in doubt',
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "A | 4 | A36 | 4.5 mm | 120.5 mm | 1200 mm",
    "B | 2 | A36 | 3 mm | 1.200 ? | 80.25 mm",
  ],
  "UTF-16 with tabs, a note over two lines in quotes": [
    "A=Part, B=Quantity, C=Material, D=Thickness, E=Width, F=Flanges, G=-",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "P1 | 2 | A36 | 0.25 | 6 | 2' 6\"",
    "P2 | 1 | A36 | 10 ga | 6 | 8",
  ],
  "headings over two rows and units in a third": [
    "A=Part, B=Quantity, C=Material, D=Thickness mm, E=Width mm, F=Flanges mm",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "X1 | 5 | A1011 CS | 3 mm | 100 mm | 150 mm",
    "X2 | 1 | A1011 CS | 2.5 mm | 80 mm | 90 mm",
  ],
  "legs beside each other in the wrong order, an angle, a bend length": [
    "A=Part, B=Quantity, C=Material, D=Thickness ga, E=Flanges, F=Flanges, G=Width, H=Bend angles",
    'F, E3 "; 1.5 in": unreadable',
    "Part | Quantity | Material | Thickness | Width | Bend angles | Flanges",
    "L1 | 8 | A1011 CS | 11 ga | 12 | 90 | 2; 3",
    "L2 | 8 | A1011 CS | 14 ga | 12 | 90 | ; 1.5 in ?",
  ],
  "trade words for the material, a bare gauge, a blank for the line above": [
    "A=Part, B=Quantity, C=Material, D=Thickness, E=Width, F=Flanges",
    'C2 "HRS": unknown material',
    'D2 "10": unit in doubt',
    'C3 "": missing',
    'C4 "6061": unknown material',
    'C5 "304L": unknown material',
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "M1 | 1 | HRS | 10 ? | 4 | 5",
    "M2 | 1 |  | 0.1875 | 4 | 5",
    "M3 | 1 | 6061 | 0.125 | 4 | 5",
    "M4 | 1 | 304L | 0.125 | 4 | 5",
  ],
  "trade words for the material, said by the person": [
    "A=Part, B=Quantity, C=Material, D=Thickness, E=Width, F=Flanges",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "M1 | 1 | A1011 CS | 10 ga | 4 | 5",
    "M2 | 1 | 304 | 0.125 | 4 | 5",
  ],
  "no unit anywhere and metric figures": [
    "A=Part, B=Quantity, C=Material, D=Thickness, E=Width, F=Flanges",
    'D2 "3": unit in doubt',
    'E2 "100": unit in doubt',
    'F2 "150": unit in doubt',
    'D3 "6": unit in doubt',
    'E3 "80": unit in doubt',
    'F3 "90": unit in doubt',
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "U1 | 4 | A36 | 3 ? | 100 ? | 150 ?",
    "U2 | 4 | A36 | 6 ? | 80 ? | 90 ?",
  ],
  "the same, with the unit said": [
    "A=Part, B=Quantity, C=Material, D=Thickness, E=Width, F=Flanges",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "U1 | 4 | A36 | 3 mm | 100 mm | 150 mm",
    "U2 | 4 | A36 | 6 mm | 80 mm | 90 mm",
  ],
  "two columns for the quantity": [
    'refused: column for Quantity must be one of the list; got "B "Qty" and G "Qty""; say which: --columns "B=Quantity"',
  ],
  "two columns for the quantity, one of them chosen by its letter": [
    "A=Part, B=-, C=Material, D=Thickness in, E=Width in, F=Flanges in, G=Quantity",
    "Part | Material | Thickness | Width | Flanges | Quantity",
    "Q1 | A36 | 0.25 | 3 | 4 | 8",
  ],
  "legs and a length that may be the bend's or the flat's": [
    'refused: parts must be a range whose heading has a column "Width"; got "Part, Qty, Material, Thk (in), Leg A (in), Leg B (in), Le..."; not read: G "Length (in)"; say which it is, by heading or letter: --columns "G=Width", or of every line: --every "Width=..."',
  ],
  "a length and nothing that says the other side": [
    'refused: column "Length (in)" must be said where no column is the width: the length of a bend, or one side of a flat plate; got nothing; a bend\'s: --columns "E=Width; ...=Leg; ...=Leg" with the columns of its legs; a plate\'s: --every "Width=..."',
  ],
  "a column of gauges with a fraction of an inch among them": [
    "A=Part, B=Quantity, C=Material, D=Thickness ga, E=Width in, F=Flanges in",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "G1 | 1 | A1011 CS | 10 ga | 3 | 8",
    "G2 | 1 | A36 | 0.1875 | 3 | 8",
    "G3 | 1 | A1008 CS | 16 ga | 3 | 8",
  ],
  "angles and grades said of every line, a flat plate among the brackets": [
    "A=Part, B=Quantity, C=Material, D=Thickness, E=Flanges, F=Flanges, G=Width",
    'C3 "Alum 5052": unknown material',
    "Part | Quantity | Material | Thickness | Width | Flanges | Bend angles",
    "K1 | 12 | A1011 CS | 10 ga | 24 | 2; 3 | 90",
    "K4 | 6 | Alum 5052 | 0.125 | 36 | 2; 4 | 90",
    "K7 | 1 | A36 plate | 0.25 | 12 | 6 | ",
  ],
  "no heading at all": [
    'refused: parts must be a list with a heading that tells its columns, such as "Part", "Material", "Thickness", "Quantity", "Width", "Length"; got "row 1: BR-1, 4, A36, 1/4, 3, 4"; say the heading\'s row and its columns: --heading 3 --columns "THEIRS=Material; ...", or --heading 0 and letters where there is none',
  ],
  "no heading, the columns by their letters": [
    "A=Part, B=Quantity, C=Material, D=Thickness in, E=Width in, F=Flanges in",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "BR-1 | 4 | A36 | 0.25 | 3 | 4",
    "BR-2 | 6 | A36 | 0.25 | 3 | 6",
  ],
  "material and quantity in no column": [
    'refused: parts must be a range whose heading has a column "Material", "Quantity"; got "Part, Thickness (in), Width (in), Length (in)"; say which it is, by heading or letter: --columns "...=Material; ...=Quantity", or of every line: --every "Material=...; Quantity=..."',
  ],
  "material and quantity in no column, said of every line": [
    "A=Part, B=Thickness in, C=Width in, D=Flanges in",
    "Part | Thickness | Width | Flanges | Material | Quantity",
    "T1 | 0.25 | 3 | 4 | A36 | 1",
  ],
  "fractions that became dates, fractions under millimeters, a third of an inch": [
    "A=Part, B=Quantity, C=Material, D=Thickness mm, E=Width mm, F=Flanges mm",
    'D2 "1/4": unit in doubt',
    'D3 "16-Mar": unreadable',
    'E4 "4/3 in": figure in doubt',
    'D5 "0.125": unit in doubt',
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "D1 | 1 | A36 | 1/4 ? | 100 mm | 100 mm",
    "D2 | 1 | A36 | 16-Mar ? | 100 mm | 100 mm",
    "D3 | 1 | A36 | 5 mm | 4/3 in ? | 100 mm",
    "D4 | 1 | A36 | 0.125 ? | 100 mm | 100 mm",
  ],
  "a quote that is never closed": [
    'refused: row 2 of the file must be a record whose quotes are closed; got "6,8 B,1,A36,1/4,6,8 "',
  ],
  "headings again on every page, captions, blank lines": [
    "A=Part, B=Quantity, C=Material, D=Thickness in, E=Width in, F=Flanges in",
    "row 2 left out: Deck frames",
    "row 5 left out: the heading again",
    "Part | Quantity | Material | Thickness | Width | Flanges",
    "A | 1 | A36 | 0.25 | 3 | 4",
    "B | 1 | A36 | 0.25 | 3 | 4",
  ],
  "flanges written with x and +, one figure or two": [
    "A=Part, B=Quantity, C=Material, D=Thickness in, E=Width in, F=Flanges in, G=Bend angles",
    'F4 "2,3": figure in doubt',
    'G5 "90; 45; 30": does not fit together',
    "Part | Quantity | Material | Thickness | Width | Flanges | Bend angles",
    "F1 | 1 | A36 | 0.25 | 12 | 2; 3 | 90",
    "F2 | 1 | A36 | 0.25 | 12 | 2; 3.5; 2 | 90",
    "F3 | 1 | A36 | 0.25 | 12 | 2,3 ? | 90",
    "F4 | 1 | A36 | 0.25 | 12 | 2; 3; 2 | 90; 45; 30",
  ],
  "angles parted by a stroke, and how many there are of one angle": [
    "A=Part, B=Quantity, C=Material, D=Thickness mm, E=Width mm, F=Flanges mm, G=Bend angles",
    'G4 "90x2": figure in doubt',
    'G5 "2 x 90": figure in doubt',
    'G7 "22 1/2": figure in doubt',
    'G8 "90; 90": does not fit together',
    'G9 "1/2": figure in doubt',
    "Part | Quantity | Material | Thickness | Width | Flanges | Bend angles",
    "A1 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm; 50 mm | 90; 90",
    "A2 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm; 50 mm | 45; 90",
    "A3 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm; 50 mm | 90x2 ?",
    "A4 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm; 50 mm | 2 x 90 ?",
    "A5 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm; 50 mm | 90; 45",
    "A6 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm | 22 1/2 ?",
    "A7 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm | 90; 90",
    "A8 | 1 | A36 | 3 mm | 100 mm | 50 mm; 60 mm; 50 mm | 1/2 ?",
  ],
};

describe("part lists as people have them", () => {
  it.each(UGLY)("$name", (list) => {
    expect(shownAs(list)).toEqual(EXPECTED[list.name]);
  });
});
