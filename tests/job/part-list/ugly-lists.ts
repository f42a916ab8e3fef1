/** Part lists as they come in by mail: invented parts, true habits. */
import type { PartListOptions } from "../../../src/job/part-list/part-list.ts";
import { encoded } from "./mangled-list.ts";

export interface UglyList {
  readonly name: string;
  readonly text: string | Uint8Array;
  readonly options?: PartListOptions;
}

export const UGLY: readonly UglyList[] = [
  {
    name: "titles above, short headings, a sum below",
    text: 'Booth 12, frames\nRev C,,,,,\n\nITEM NO.,QTY,Matl,Thk (in),Width (in),Length (in),Notes\n1,12 ea,A36,3/16,3,4-1/2,\n2,"1,000",A36,0.25,3.5,4,deburr\nTotal,1012\n',
  },
  {
    name: "semicolons, decimal commas, millimeters in the heading",
    text: "Part No;Qty;Material;Thickness [mm];Width [mm];Length [mm]\r\nA;4;A36;4,5;120,5;1200\r\nB;2;A36;3;1.200;80,25\r\n",
  },
  {
    name: "UTF-16 with tabs, a note over two lines in quotes",
    text: encoded(
      'Mark\tQty\tMaterial\tThk\tWidth\tLength\tRemarks\nP1\t2\tA36\t1/4"\t6"\t2\' 6"\t"grind\nall edges"\nP2\t1\tA36\t10 ga\t6 in\t8 in\t\n',
      "utf16",
    ),
  },
  {
    name: "headings over two rows and units in a third",
    text: "Part,Qty,Material,Size,,\n,,,T,W,L\n,ea,,mm,mm,mm\nX1,5,A1011 CS,3,100,150\nX2,1,A1011 CS,2.5,80,90\n",
  },
  {
    name: "legs beside each other in the wrong order, an angle, a bend length",
    text: "Part,Qty,Material,Gauge,Leg B,Leg A,Bend length,Angle\nL1,8,A1011 CS,11,3 in,2 in,12 in,90 deg\nL2,8,A1011 CS,14 ga,1.5 in,,12 in,90\n",
  },
  {
    name: "trade words for the material, a bare gauge, a blank for the line above",
    text: "Part,Qty,Material,Thickness,Width,Length\nM1,1,HRS,10,4,5\nM2,1,,3/16,4,5\nM3,1,6061,1/8,4,5\nM4,1,304L,1/8,4,5\n",
  },
  {
    name: "trade words for the material, said by the person",
    text: "Part,Qty,Material,Thickness,Width,Length\nM1,1,HRS,10 ga,4,5\nM2,1,ss,1/8,4,5\n",
    options: { materials: "HRS=A1011 CS; SS=304" },
  },
  {
    name: "no unit anywhere and metric figures",
    text: "Part,Qty,Material,Thickness,Width,Length\nU1,4,A36,3,100,150\nU2,4,A36,6,80,90\n",
  },
  {
    name: "the same, with the unit said",
    text: "Part,Qty,Material,Thickness,Width,Length\nU1,4,A36,3,100,150\nU2,4,A36,6,80,90\n",
    options: { units: "mm" },
  },
  {
    name: "two columns for the quantity",
    text: "Part,Qty,Material,Thk (in),W (in),L (in),Qty\nQ1,1,A36,0.25,3,4,8\n",
  },
  {
    name: "two columns for the quantity, one of them chosen by its letter",
    text: "Part,Qty,Material,Thk (in),W (in),L (in),Qty\nQ1,1,A36,0.25,3,4,8\n",
    options: { columns: "G=Quantity" },
  },
  {
    name: "flanges and a length that may be the bend's or the flat's",
    text: "Item,Qty,Material,Thk,Flange lengths,Angle,LENGTH (mm)\nB1,1,A36,1/4,2; 3,90,300\n",
  },
  {
    name: "headings of a purchase list",
    text: "Item,REQ'D,Matl Spec,Ga/Thk,FLANGE LENGTHS,ANGLE,PART WIDTH\nB1,4,A1011 CS,16 ga,2;3,90,8 in\nB2,4,A36,3/16,2;3,90,8 in\nB3,4,A1011 CS,16,2;3,90,8 in\n",
  },
  {
    name: "headings of a cutting list",
    text: "Item,Order Qty,Matl,Nominal Thickness (in),Blank L (in),Blank W (in)\nB1,4,A36,0.25,12,6\n",
  },
  {
    name: "legs beside a blank's length: no width",
    text: "Item,Qty,Matl,Thk (in),Leg A (in),Leg B (in),Angle,Blank L (in)\nB1,4,A36,0.25,2,3,90,4.6\n",
  },
  {
    name: "a second delivery in a column of its own",
    text: "Part,Qty,Qty delivery 2,Material,Thk (in),W (in),L (in)\nQ1,10,20,A36,0.25,3,4\nQ2,4,,A36,0.25,3,4\n",
  },
  {
    name: "deliveries beside a quantity, one of them in other words",
    text: "Part,Quantity,Delivery 1/2,Material,Thk (in),W (in),L (in)\nQ1,10,5,A36,0.25,3,4\n",
  },
  {
    name: "a total that is another than the quantity",
    text: "Part,Qty,Total qty,Material,Thk (in),W (in),L (in)\nQ1,2,10,A36,0.25,3,4\n",
  },
  {
    name: "a second quantity that repeats the first, a delivery date",
    text: "Part,Qty,Total qty,Delivery date,Material,Thk (in),W (in),L (in)\nQ1,2,2,2026-06-05,A36,0.25,3,4\n",
  },
  {
    name: "legs and a length that may be the bend's or the flat's",
    text: "Part,Qty,Material,Thk (in),Leg A (in),Leg B (in),Length (in),Angle\nB1,1,A36,0.25,3,4,8,90\n",
  },
  {
    name: "a length and nothing that says the other side",
    text: "Part,Qty,Material,Thk (in),Length (in),Notes\nB1,1,A36,0.25,8,\n",
  },
  {
    name: "a column of gauges with a fraction of an inch among them",
    text: "Part,Qty,Material,Material gauge,Width (in),Length (in)\nG1,1,A1011 CS,10,3,8\nG2,1,A36,3/16,3,8\nG3,1,A1008 CS,16,3,8\n",
  },
  {
    name: "angles and grades said of every line, a flat plate among the brackets",
    text: "Mark,No. Reqd,Material,Thk.,Leg A,Leg B,Length\nK1,12,HRS,10GA,2,3,24\nK4,6,Alum 5052,1/8,2,4,36\nK7,1,A36 plate,1/4,6,,12\n",
    options: { columns: "G=Width", every: "Bend angles=90", materials: "HRS=A1011 CS" },
  },
  {
    name: "no heading at all",
    text: "BR-1,4,A36,1/4,3,4\nBR-2,6,A36,1/4,3,6\n",
  },
  {
    name: "no heading, the columns by their letters",
    text: "BR-1,4,A36,1/4,3,4\nBR-2,6,A36,1/4,3,6\n",
    options: { heading: 0, columns: "A=Part; B=Quantity; C=Material; D=Thickness (in); E=Width (in); F=Length (in)" },
  },
  {
    name: "material and quantity in no column",
    text: "Part,Thickness (in),Width (in),Length (in)\nT1,0.25,3,4\n",
  },
  {
    name: "material and quantity in no column, said of every line",
    text: "Part,Thickness (in),Width (in),Length (in)\nT1,0.25,3,4\n",
    options: { every: "Material=A36; Quantity=1" },
  },
  {
    name: "fractions that became dates, fractions under millimeters, a third of an inch",
    text: "Part,Qty,Material,Thk (mm),Width (mm),Length (mm)\nD1,1,A36,1/4,100,100\nD2,1,A36,16-Mar,100,100\nD3,1,A36,5,4/3 in,100\nD4,1,A36,0.125,100,100\n",
  },
  {
    name: "a quote that is never closed",
    text: 'Part,Qty,Material,Thk,Width,Length\nA,1,A36,1/4,"6,8\nB,1,A36,1/4,6,8\n',
  },
  {
    name: "headings again on every page, captions, blank lines",
    text: "Part,Qty,Material,Thk (in),Width (in),Length (in)\nDeck frames,,,,,\nA,1,A36,0.25,3,4\n,,,,,\nPart,Qty,Material,Thk (in),Width (in),Length (in)\nB,1,A36,0.25,3,4\n",
  },
  {
    name: "flanges written with x and +, one figure or two",
    text: 'Part,Qty,Material,Thk (in),Width (in),Flanges (in),Bend angle\nF1,1,A36,0.25,12,2 x 3,90\nF2,1,A36,0.25,12,2 + 3.5 + 2,90\nF3,1,A36,0.25,12,"2,3",90\nF4,1,A36,0.25,12,2; 3; 2,90; 45; 30\n',
  },
  {
    name: "angles parted by a stroke, and how many there are of one angle",
    text: "Part,Qty,Material,Thk (mm),Width (mm),Flanges (mm),Angle\nA1,1,A36,3,100,50; 60; 50,90/90\nA2,1,A36,3,100,50; 60; 50,45° / 90°\nA3,1,A36,3,100,50; 60; 50,90x2\nA4,1,A36,3,100,50; 60; 50,2 x 90\nA5,1,A36,3,100,50; 60; 50,90 x 45\nA6,1,A36,3,100,50; 60,22 1/2\nA7,1,A36,3,100,50; 60,90/90\nA8,1,A36,3,100,50; 60; 50,1/2\n",
  },
  {
    name: "units of headings that are said by hand: they stay, unless another is said",
    text: 'Mark,Req,Spec,Tk [mm],"Lg. (outside, mm)",Dev mm,Turn (deg)\nH1,1,A36,6,100,50; 60,90\n',
    options: {
      columns: "Req=Quantity; Spec=Material; Tk [mm]=Thickness; E=Width; Dev mm=Flanges (cm); G=Angle",
    },
  },
  {
    name: "a gauge column and one with its unit in a row of units, said by hand",
    text: "Mark,Req,Spec,Ga,Lg,Side\n,,,,mm,mm\nH1,1,A36,10,100,50\n",
    options: { columns: "Req=Quantity; Spec=Material; Ga=Thickness; E=Width; F=Flanges" },
  },
  {
    name: "decimal commas, and a point that parts thousands or decimals",
    text: "Part;Qty;Material;Thickness (mm);Width (mm);Length (mm)\nC1;1.200;A36;4,5;100;200\nC2;1,200;A36;1.200;100;200\nC3;4;A36;1,500;100;200\n",
  },
  {
    name: "the same, the sign said",
    text: "Part;Qty;Material;Thickness (mm);Width (mm);Length (mm)\nC1;1.200;A36;4,5;100;200\nC2;1,200;A36;1.200;100;200\nC3;4;A36;1,500;100;200\n",
    options: { decimal: "," },
  },
  {
    name: "decimal points, and a count with one",
    text: 'Part,Qty,Material,Thickness (in),Width (in),Length (in)\nC1,1.200,A36,0.25,10,20\nC2,"1,200",A36,0.25,10,20\n',
  },
  {
    name: "metric thicknesses but one in inches, sides without a unit",
    text: "Part,Qty,Material,Thickness,Width,Length\nX1,1,A36,3 mm,100,120\nX2,1,A36,6 mm,80,140\nX3,1,A36,1/4 in,90,60\n",
  },
  {
    name: "the same, the unit of the plain numbers said",
    text: "Part,Qty,Material,Thickness,Width,Length\nX1,1,A36,3 mm,100,120\nX2,1,A36,6 mm,80,140\nX3,1,A36,1/4 in,90,60\n",
    options: { units: "mm" },
  },
  {
    name: "dates that cannot be read and a count of none, beside other faults of their lines",
    text: "Part,Qty,Material,Thk (in),Width (in),Length (in),Due\nT1,0,HRS,0.25,3,4,Fri 4 Dec\nT2,2,A36,0.25,3,4,12/7/26\nT3,2,A36,0.25,3,4,2026-12-07\nTotals:,4,,,,,\n",
  },
  {
    name: "an alloy with its family, a coating alone, a half of its own, thousands with a space",
    text: 'Part,Qty,Material,Thk (in),Width (in),Length (in)\nJ1,1,Al 5052-H32,1/8,1½,½\nJ2,1,Aluminum 6061-T6,1/8,2 ¾ in,1-⅛\nJ3,1,Galvanized,0.06,4,5\nJ4,1 000,A36,1/4,1 000,"2\' 6½"""\nJ5,1,Al A36,1/4,4,5\n',
  },
  {
    name: "a coating alone, its grade said",
    text: "Part,Qty,Material,Thk (in),Width (in),Length (in)\nJ3,1,Galvanized,0.06,4,5\n",
    options: { materials: "Galvanized=A653 CS" },
  },
  {
    name: "days as people write them",
    text: 'Part,Qty,Material,Thk (in),Width (in),Length (in),Due\nD1,1,A36,0.25,3,4,6/25/2026\nD2,1,A36,0.25,3,4,25/6/2026\nD3,1,A36,0.25,3,4,6/6/2026\nD4,1,A36,0.25,3,4,"June 5, 2026"\nD5,1,A36,0.25,3,4,5 June 2026\nD6,1,A36,0.25,3,4,5-Jun-2026\nD7,1,A36,0.25,3,4,05.06.2026\nD8,1,A36,0.25,3,4,2026/06/05\nD9,1,A36,0.25,3,4,46178\nD10,1,A36,0.25,3,4,6/25/2026 14:30\nD11,1,A36,0.25,3,4,6/25/26\nD12,1,A36,0.25,3,4,2026-06-05\nD13,1,A36,0.25,3,4,6/5/2026\nD14,1,A36,0.25,3,4,26/06/05\nD15,1,A36,0.25,3,4,5/6/26\nD16,1,A36,0.25,3,4,6/31/2026\nD17,1,A36,0.25,3,4,31.02.2026\n',
  },
  {
    name: "days that can be two, the order said",
    text: "Part,Qty,Material,Thk (in),Width (in),Length (in),Due\nD1,1,A36,0.25,3,4,6/5/2026\nD2,1,A36,0.25,3,4,25/6/2026\nD3,1,A36,0.25,3,4,6/5/26\n",
    options: { dates: "month-first" },
  },
  {
    name: "two columns said to be flanges are one flange each",
    text: "Part,Qty,Material,Thk (in),Long,Short,Angle,Width (in)\nW1,2,A36,1/4,4,,,8\nW2,2,A36,1/4,4,2,90,8\nW3,2,A36,1/4,4,2,,8\n",
    options: { columns: "Long=Flanges; Short=Flanges", units: "in" },
  },
  {
    name: "one leg said, the other by its heading; an odd one is another leg",
    text: "Part,Qty,Material,Thk (in),Flange A (in),Flange B (in),Lip (in),Angle,Width (in)\nW1,2,A36,1/4,4,2,1,90,8\n",
    options: { columns: "Flange A (in)=Flanges; Lip (in)=Leg" },
  },
  {
    name: "two columns said to be the width",
    text: "Part,Qty,Material,Thk (in),A,B,L (in)\nW1,2,A36,1/4,4,2,8\n",
    options: { columns: "A=Width (in); E=Width (in); F=Width (in)" },
  },
  {
    name: "legs and angles over two rows: one of two angles is not both",
    text: "Item;Qty;Material;Thk;Flange;;;Angle;;Width\n;ea;;in;A;B;C;1;2;in\nS1;2;A36;0,25;2,5;3;2;90;45;12\nS2;2;A36;0,25;2,5;3;2;90;;12\nS3;2;A36;3 ?;2,5;3;;;;12\nS4;2;A36;0,25;2,5;;;;;12\n",
    options: { units: "in" },
  },
  {
    name: "a word over columns without a heading",
    text: "Item,Qty,Material,Thk (in),Flange A,Flange B,Flange C,Angle,,Width\nS1,2,A36,0.25,2.5,3,2,90,45,12\n",
  },
  {
    name: "the same, joined by the person",
    text: "Item,Qty,Material,Thk (in),Flange,Flange,Flange,Angle,,Width\nS1,2,A36,0.25,2.5,3,2,90,45,12\n",
    options: { columns: "H=Bend angles; I=Bend angles" },
  },
  {
    name: "included angles, by their heading",
    text: "Part,Nos,Material,Thk (in),Flanges (in),Included angle,Width (in)\nA,4,A36,3/16,2 x 3,135,12\nB,4,A36,3/16,2 x 3 x 2,-120; 90 deg,12\n",
  },
  {
    name: "included angles, called bend angles by the person; a heading of another language without its unit",
    text: "Part,Nos,Material,Dicke (mm),Flanges (mm),Included angle,Width (mm)\nA,4,A36,5,50 x 75,135,300\n",
    options: { columns: "Included angle=Bend angles; Dicke=Thickness" },
  },
  {
    name: "units and letters of the drawing in a row of their own",
    text: "Part,Qty,Material,Thk,Flanges,Angle,Width\n,ea,,mm,A x B,1,mm\nA,4,A36,5,50 x 75,90,300\n",
    options: { columns: "Flanges=Flanges (mm)" },
  },
  {
    name: "five reasons to refuse a list, all at once",
    text: "Part,Qty,Material,Tickness,Bends,Flanges,Qty\nA,4,A36,5,1,50 x 75,300\n",
    options: { columns: "Foo=Width; E=Bend anglse" },
  },
];
