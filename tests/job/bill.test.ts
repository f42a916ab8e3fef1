import { describe, expect, it } from "vitest";
import { billRowAt } from "../../src/job/bill-row.ts";
import type { Book } from "../../src/job/book.ts";
import { findTable } from "../../src/job/find-table.ts";
import { lineReport } from "../../src/job/line-report.ts";
import { readShopBill } from "../../src/job/shop-bill.ts";
import { PRESS_HEADER } from "../cells/bill/sample-shop.ts";

const PARTS = [
  ["Job", "anything"],
  [],
  [null, "Part", "Material", "Thickness", "Quantity", "Width (in)", "Flanges", "Bend angles", "Die", "Punch"],
  [null, "A-1", "A36", "1/4", 10, 12, "2; 3", 90, "V 2", "Plain"],
  [null, "A-2", "steel", "1/4", 10, 12, "2; 3", 90, "V 2", "Plain"],
  [],
  [null, "below the bill", null, null, null],
];
const SHOP = [
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
const book = (parts: unknown[][] = PARTS, shop: unknown[][] = SHOP): Book =>
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

describe("the bill in a workbook", () => {
  it("is found by its headers, wherever it stands, and ends at the first empty row", () => {
    const bill = readShopBill(book())!;
    expect(bill.table).toMatchObject({ top: 2, left: 1 });
    expect(bill.rows.map(({ part }) => part)).toEqual(["A-1", "A-2"]);
    expect(bill.missing).toEqual([]);
  });

  it("is not there where a column it needs is missing", () => {
    expect(readShopBill(book([["Part", "Material", "Thickness", "Quantity"]]))).toBeUndefined();
    expect(readShopBill([])).toBeUndefined();
  });

  it("two tables side by side are two tables", () => {
    expect(findTable(book(), { has: [["Punch"], ["Angle"]] })!.matrix).toEqual([
      ["Punch", "Angle (deg)", "Nose radius (in)"],
      ["Plain", 75, 0.0625],
    ]);
  });

  it("what the shop lacks is said in the one grammar, and no line is checked without it", () => {
    const bill = readShopBill(book(PARTS, [SHOP[0]!, SHOP[1]!]))!;
    expect(bill.missing).toEqual(["dies must be given; got nothing"]);
    expect(lineReport(bill.rows[0]!, bill)).toMatchObject({ status: "unreadable", sentences: bill.missing });
  });

  it("plain numbers are millimetres where the die table says so", () => {
    const metric = [...SHOP.slice(0, 3), ["Die", "Opening (mm)", "Angle (deg)"], ["V 2", 50.8, 80]];
    expect(readShopBill(book(PARTS, metric))!.system).toBe("mm");
    expect(readShopBill(book())!.system).toBe("in");
  });

  it("a row of another sheet is about the part it names", () => {
    const bill = readShopBill(book())!;
    const [offer, , sums] = book();
    expect(billRowAt(bill, offer!, 3)!.part).toBe("A-1");
    expect(billRowAt(bill, offer!, 2)).toBeUndefined(); // the header
    expect(billRowAt(bill, sums!, 1)!.part).toBe("A-2");
    expect(billRowAt(bill, sums!, 2)).toBeUndefined(); // no such part
  });
});

describe("the report of a line", () => {
  const bill = readShopBill(book())!;
  it("has drawings, figures and sentences; a wrong line only the sentence of what is wrong", () => {
    const good = lineReport(bill.rows[0]!, bill);
    expect(good.drawings.map(({ name }) => name)).toEqual(["Bent", "Flat", "Hit 1: end of bend 1"]);
    // 2 x 3 x 1/4 in A36 over a 2 in die: the README's bracket, about 73 US tons for 4 ft, so a quarter of it for 1 ft.
    const force = Number.parseFloat(good.figures.find(([name]) => name === "Force")![1]);
    expect(force).toBeCloseTo(73 / 4, 0);
    const wrong = lineReport(bill.rows[1]!, bill);
    expect(wrong.status).toBe("unreadable");
    expect(wrong.sentences[0]).toMatch(/"Material" must be .*; got "steel"/);
    expect(wrong.drawings).toEqual([]);
  });

  it("tools drawn in the workbook are used for their own die, plain ones for every other", () => {
    const corners = (tool: string, ...points: number[][]) => points.map(([x, y]) => [tool, x, y]);
    const tools = (opening: number) => [
      ...SHOP,
      [],
      ["Tool", "X (mm)", "Y (mm)"],
      ...corners("punch", [0, 0], [10, 17.32], [10, 120], [-10, 120], [-10, 17.32]),
      ...corners("ram", [-40, 120], [40, 120], [40, 600], [-40, 600]),
      ...corners("die", [-40, 0], [-25.4, 0], [0, -30.27], [25.4, 0], [40, 0], [40, -80], [-40, -80]),
      ...corners("bed", [-50, -80], [50, -80], [50, -700], [-50, -700]),
      ...corners("finger", [0, 0], [60, 0], [60, 25], [0, 25]),
      [],
      PRESS_HEADER,
      [opening, 0, 80, 0, 25, 5, 700, "yes", 150, 200, 1, "no"],
    ];
    const picture = (opening: number) => {
      const read = readShopBill(book(PARTS, tools(opening)))!;
      expect(read.missing).toEqual([]);
      return lineReport(read.rows[0]!, read).drawings[2]!.svg;
    };
    expect(picture(2)).not.toContain("tools drawn plain");
    expect(picture(1)).toContain("tools drawn plain");
  });

  it("a part that no sheet can be says why and is not drawn", () => {
    const short = PARTS.map((row) => row.map((cell) => (cell === "2; 3" ? "0.2; 3" : cell)));
    const read = readShopBill(book(short))!;
    const report = lineReport(read.rows[0]!, read);
    expect(report).toMatchObject({ status: "unreadable", drawings: [] });
    expect(report.sentences[0]).toMatch(/must be .*; got/);
  });

  it("tools that cannot be leave the checks standing", () => {
    const crossed = ["punch", "ram", "die", "bed", "finger"].flatMap((tool) => [
      [tool, 0, 0],
      [tool, 1, 1],
      [tool, 1, 0],
      [tool, 0, 1],
    ]);
    const settings = [2, 0, 80, 0, 25, 5, 700, "yes", 150, 200, 1, "no"];
    const headers = PRESS_HEADER;
    const read = readShopBill(
      book(PARTS, [...SHOP, [], ["Tool", "X (mm)", "Y (mm)"], ...crossed, [], headers, settings]),
    )!;
    const report = lineReport(read.rows[0]!, read);
    expect(report.status).not.toBe("unreadable");
    expect(report.drawings).toEqual([]);
    expect(report.sentences.at(-1)).toMatch(/^Not drawn: outlines "\w+" must be a polygon that does not cross itself/);
  });

  it("text of the workbook never becomes markup in a drawing", () => {
    const evil = PARTS.map((row) => row.map((cell) => (cell === "A-1" ? '"><script>alert(1)</script>' : cell)));
    const read = readShopBill(book(evil))!;
    for (const { svg } of lineReport(read.rows[0]!, read).drawings) expect(svg).not.toContain("<script");
  });
});
