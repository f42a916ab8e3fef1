import { strToU8, zipSync } from "fflate";
import { itemAt } from "../../units/certain.ts";

/** A fixed sequence of pseudo-random numbers (the minimal standard generator, Park and Miller 1988). */
function* sequence(seed: number): Generator<number> {
  for (let state = seed; ; ) {
    state = (state * 48_271) % 2_147_483_647;
    yield state / 2_147_483_647;
  }
}

const cell = (name: string, value: number | string): string =>
  typeof value === "number"
    ? `<c r="${name}"><v>${value}</v></c>`
    : `<c r="${name}" t="inlineStr"><is><t>${value}</t></is></c>`;

const formula = (name: string, text: string): string =>
  `<c r="${name}"><f>${text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;")}</f></c>`;

const MATERIALS = ["A36", "304", "5052-H32"];

/** One row of the bill: six inputs, six formulas. Two of the formulas read differently in every row. */
function billRow(row: number, rows: number, random: () => number, ordinary: boolean): string {
  const thickness = (1 + Math.floor(random() * 24)) / 64 + 0.03;
  const material = itemAt(MATERIALS, row % MATERIALS.length);
  const inputs = [
    row - 1,
    material,
    thickness,
    1 + Math.floor(random() * 96) / 4,
    2 + Math.floor(random() * 40) / 4,
    `P${Math.floor(random() * rows)}`,
  ];
  const given = inputs.map((value, i) => cell(`${"ABCDEF"[i]}${row}`, value));
  const price = (0.1 + random()).toFixed(4);
  const factor = (1 + random() * 9).toFixed(3);
  const weight = ordinary ? `C${row}*D${row}*E${row}*0.2836` : `SHOP.BLANK.WEIGHT(B${row},C${row},D${row},E${row})`;
  return [
    `<row r="${row}">`,
    ...given,
    formula(`G${row}`, weight),
    formula(`H${row}`, `_xlfn.XLOOKUP(F${row},Stock!A$2:A$${rows + 1},Stock!B$2:B$${rows + 1},0)`),
    formula(`I${row}`, `ROUND(G${row}*${price}+D${row}/${factor},4)`),
    formula(`J${row}`, `IF(H${row}>${(row * 37) % 1000},"buy ${row}",H${row}*${factor})`),
    formula(`K${row}`, row === 2 ? `I${row}` : `K${row - 1}+I${row}`),
    formula(`L${row}`, `SUM(I$2:I${row})-K${row}`),
    "</row>",
  ].join("");
}

const sheet = (rows: string[]): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows.join("")}</sheetData></worksheet>`;

/**
 * The benchmark's workbook: a bill of so many rows x 12 columns (custom functions, XLOOKUP in random order into an
 * unsorted table, formulas whose text differs in every row, running totals two ways) and the table it looks up in.
 * `ordinary` leaves the custom functions out, for programs that do not have them.
 */
export function benchmarkWorkbook(rows: number, ordinary = false): Uint8Array {
  const numbers = sequence(20_260_314);
  const random = (): number => numbers.next().value as number;
  const order = Array.from({ length: rows }, (_, i) => i);
  for (let i = rows - 1; i > 0; i--) {
    const other = Math.floor(random() * (i + 1));
    [order[i], order[other]] = [itemAt(order, other), itemAt(order, i)];
  }
  const head = `<row r="1">${["No", "Material", "Thickness", "Length", "Width", "Part", "Weight", "Stock", "Price", "Order", "Total", "Check"].map((title, i) => cell(`${"ABCDEFGHIJKL"[i]}1`, title)).join("")}</row>`;
  const bill = [head, ...order.map((_, i) => billRow(i + 2, rows, random, ordinary))];
  const stock = [
    `<row r="1">${cell("A1", "Part")}${cell("B1", "On hand")}</row>`,
    ...order.map(
      (part, i) => `<row r="${i + 2}">${cell(`A${i + 2}`, `P${part}`)}${cell(`B${i + 2}`, (part * 7919) % 1000)}</row>`,
    ),
  ];
  const relation = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const packageRelation = "http://schemas.openxmlformats.org/package/2006/relationships";
  const worksheet = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
  const files: Record<string, string> = {
    "[Content_Types].xml": `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${worksheet}"/><Override PartName="/xl/worksheets/sheet2.xml" ContentType="${worksheet}"/></Types>`,
    "_rels/.rels": `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="${packageRelation}"><Relationship Id="rId1" Type="${relation}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${relation}"><sheets><sheet name="Bill" sheetId="1" r:id="rId1"/><sheet name="Stock" sheetId="2" r:id="rId2"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Relationships xmlns="${packageRelation}"><Relationship Id="rId1" Type="${relation}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${relation}/worksheet" Target="worksheets/sheet2.xml"/></Relationships>`,
    "xl/worksheets/sheet1.xml": sheet(bill),
    "xl/worksheets/sheet2.xml": sheet(stock),
  };
  const epoch = { mtime: new Date(1980, 0, 1), level: 6 } as const;
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, [strToU8(text), epoch]])));
}
