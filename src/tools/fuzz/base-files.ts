/** Sound files to damage: a small workbook with something of everything, and a bill as CSV. */
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';

const relations = (...all: (readonly [string, string])[]): string =>
  `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${all
    .map(([type, target], i) => `<Relationship Id="rId${i + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`)
    .join("")}</Relationships>`;

const formula = (cell: string, text: string, value: string, more = "") =>
  `<c r="${cell}"${more}><f>${text}</f><v>${value}</v></c>`;

export const BASE_PARTS: Readonly<Record<string, string>> = {
  "[Content_Types].xml": `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${TYPE}.worksheet+xml"/><Override PartName="/xl/worksheets/sheet2.xml" ContentType="${TYPE}.worksheet+xml"/><Override PartName="/xl/sharedStrings.xml" ContentType="${TYPE}.sharedStrings+xml"/><Override PartName="/xl/tables/table1.xml" ContentType="${TYPE}.table+xml"/></Types>`,
  "_rels/.rels": relations(["officeDocument", "xl/workbook.xml"]),
  "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Bill" sheetId="1" r:id="rId1"/><sheet name="Shop" sheetId="2" r:id="rId2"/></sheets><definedNames><definedName name="rate">Shop!$B$2</definedName><definedName name="twice">LAMBDA(x,2*x)</definedName><definedName name="total">SUM(Bill!$B$2:$B$4)</definedName></definedNames><calcPr calcId="191029"/></workbook>`,
  "xl/_rels/workbook.xml.rels": relations(
    ["worksheet", "worksheets/sheet1.xml"],
    ["worksheet", "worksheets/sheet2.xml"],
    ["sharedStrings", "sharedStrings.xml"],
  ),
  "xl/sharedStrings.xml": `${HEAD}<sst xmlns="${MAIN}" count="3" uniqueCount="3"><si><t>Part</t></si><si><t>Thickness</t></si><si><r><t>A</t></r><r><t>36</t></r></si></sst>`,
  "xl/worksheets/sheet1.xml": `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><dimension ref="A1:H6"/><sheetData><row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c></row><row r="2"><c r="A2" t="s"><v>2</v></c><c r="B2"><v>0.25</v></c>${formula("C2", "SHOP.BEND.SETBACK(B2,0.16,90)", "0.41")}${formula("D2", "total*rate", "0")}</row><row r="3"><c r="A3" t="inlineStr"><is><t>304</t></is></c><c r="B3"><v>0.125</v></c><c r="C3"><f t="shared" ref="C3:C5" si="0">B3*2</f><v>0.25</v></c></row><row r="4"><c r="B4"><v>46026</v></c><c r="C4"><f t="shared" si="0"/><v>0</v></c><c r="D4" t="str"><f>IFERROR(VLOOKUP("x",A1:B4,2,0),"none")</f><v>none</v></c></row><row r="5"><c r="A5" t="b"><v>1</v></c><c r="B5" t="e"><v>#N/A</v></c><c r="C5"><f t="shared" si="0"/><v>0</v></c><c r="E5"><f t="array" ref="E5:G6">SEQUENCE(2,3)</f><v>1</v></c><c r="F5"><v>2</v></c><c r="G5"><v>3</v></c></row><row r="6">${formula("A6", "twice(B2)", "0.5")}<c r="E6"><v>4</v></c><c r="F6"><v>5</v></c><c r="G6"><v>6</v></c></row></sheetData></worksheet>`,
  "xl/worksheets/_rels/sheet2.xml.rels": relations(["table", "../tables/table1.xml"]),
  "xl/worksheets/sheet2.xml": `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Rate</t></is></c><c r="B1" t="inlineStr"><is><t>Value</t></is></c></row><row r="2"><c r="A2" t="inlineStr"><is><t>Overhead</t></is></c><c r="B2"><v>1.25</v></c></row><row r="3">${formula("A3", "SUM(Rates[Value])", "1.25")}${formula("B3", "INDIRECT(&quot;Bill!B&quot;&amp;2)", "0.25")}</row></sheetData><tableParts count="1"><tablePart r:id="rId1"/></tableParts></worksheet>`,
  "xl/tables/table1.xml": `${HEAD}<table xmlns="${MAIN}" id="1" name="Rates" displayName="Rates" ref="A1:B2" totalsRowShown="0"><tableColumns count="2"><tableColumn id="1" name="Rate"/><tableColumn id="2" name="Value"/></tableColumns></table>`,
};

export const BASE_CSV = `Part,Material,Thickness (in),Quantity,Width (in),Flanges (in),Bend angles
HB1,A36,1/4,20,4,"2; 3",90
HB2,304,10 ga,8,6.5,"1.5; 3; 1.5","90; 45"
"Label, long",6061-T6,0.125,4,12,"2; 2",90
`;
