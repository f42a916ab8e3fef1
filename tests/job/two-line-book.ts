/** A small workbook: two lines, the second one wrong; a brake, a punch and a die beside them; a sheet that names parts. */
import type { Book } from "../../src/job/book.ts";

export const PARTS = [
  ["Job", "anything"],
  [],
  [null, "Part", "Material", "Thickness", "Quantity", "Width (in)", "Flanges", "Bend angles", "Die", "Punch"],
  [null, "A-1", "A36", "1/4", 10, 12, "2; 3", 90, "V 2", "Plain"],
  [null, "A-2", "steel", "1/4", 10, 12, "2; 3", 90, "V 2", "Plain"],
  [],
  [null, "below the bill", null, null, null],
];
export const SHOP = [
  [
    "Brake",
    "Rated force (US ton)",
    "Bed length (in)",
    "Between housings (in)",
    null,
    "Punch",
    "Angle (deg)",
    "Nose radius (in)",
  ],
  ["B", 150, 144, 126, null, "Plain", 75, 0.0625],
  [],
  ["Die", "Opening (in)", "Angle (deg)"],
  ["V 2", 2, 80],
];
export const book = (parts: unknown[][] = PARTS, shop: unknown[][] = SHOP): Book =>
  [
    { name: "Offer", rows: parts },
    { name: "Tools", rows: shop },
    {
      name: "Sums",
      rows: [
        ["Part", "Answer"],
        ["A-2", 7],
        ["A-9", 7],
      ],
    },
  ] as unknown as Book;
