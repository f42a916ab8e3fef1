/** The looks a cell can have. Black on white with gray rules, so that a print shows what the screen shows. */
import { escapeXml, MAIN, XML } from "./xml.ts";

interface Look {
  readonly font?: keyof typeof FONTS;
  readonly fill?: keyof typeof FILLS;
  readonly border?: keyof typeof BORDERS;
  readonly format?: string;
  readonly align?: "left" | "center" | "right";
  /** Letters of room beside the text: a right-aligned figure must not run into the words after it. */
  readonly indent?: 1;
  readonly top?: true;
  readonly wrap?: true;
  /** The reader may type here, also when the sheet is protected. */
  readonly input?: true;
}

const FONT = "Arial"; // metrically the same in every office suite: what fits on one screen fits on another
const font = (size: number, extra = "", color = "FF000000"): string =>
  `<font>${extra}<sz val="${size}"/><color rgb="${color}"/><name val="${FONT}"/><family val="2"/></font>`;
const FONTS = {
  plain: font(10),
  bold: font(10, "<b/>"),
  title: font(16, "<b/>"),
  heading: font(11, "<b/>"),
  quiet: font(9, "<i/>", "FF404040"),
} as const;

const solid = (color: string): string =>
  `<fill><patternFill patternType="solid"><fgColor rgb="${color}"/><bgColor indexed="64"/></patternFill></fill>`;
const FILLS = {
  none: '<fill><patternFill patternType="none"/></fill>',
  gray125: '<fill><patternFill patternType="gray125"/></fill>', // the format reserves the second place for it
  header: solid("FFE7E6E3"),
  input: solid("FFFBF8EF"),
} as const;

const line = (side: string, style?: string): string =>
  style ? `<${side} style="${style}"><color rgb="FF8C8C8C"/></${side}>` : `<${side}/>`;
const border = (top?: string, bottom?: string): string =>
  `<border>${line("left")}${line("right")}${line("top", top)}${line("bottom", bottom)}<diagonal/></border>`;
const BORDERS = {
  none: border(),
  row: border(undefined, "hair"),
  header: border("thin", "thin"),
  total: border("thin", undefined),
} as const;

const LOOKS = {
  plain: {},
  title: { font: "title" },
  heading: { font: "heading" },
  note: { font: "quiet", wrap: true, top: true },
  aside: { font: "quiet", align: "left", indent: 1 },
  words: { wrap: true, top: true },
  strong: { font: "bold", wrap: true, top: true },
  strongLine: { font: "bold", border: "row", top: true, align: "left" },
  header: { font: "bold", fill: "header", border: "header", wrap: true, align: "left", indent: 1 },
  headerRight: { font: "bold", fill: "header", border: "header", wrap: true, align: "right" },
  label: { font: "bold", border: "row", top: true, align: "left", indent: 1 },
  text: { border: "row", top: true, align: "left", indent: 1 },
  wrapped: { border: "row", top: true, wrap: true, align: "left", indent: 1 },
  status: { border: "row", top: true, align: "center" },
  count: { border: "row", top: true, format: "#,##0" },
  inch: { border: "row", top: true, format: "0.000" },
  inchShort: { border: "row", top: true, format: "0.00" },
  tenth: { border: "row", top: true, format: "#,##0.0" },
  dayLeft: { border: "row", top: true, format: "yyyy-mm-dd", align: "left", indent: 1 },
  plainNumber: { border: "row", top: true, align: "right" },
  percent: { border: "row", top: true, format: "0%" },
  money: { border: "row", top: true, format: "#,##0.00" },
  /** A figure, or words where there is none. */
  offer: { border: "row", top: true, format: "#,##0.00", align: "right" },
  moment: { border: "row", top: true, format: "yyyy-mm-dd hh:mm", align: "right" },
  day: { border: "row", top: true, format: "yyyy-mm-dd", align: "right" },
  /** Whatever an example answers: a figure at the left, a text wrapped. */
  answer: { border: "row", top: true, wrap: true, align: "left", indent: 1 },
  figure: { border: "row", top: true, format: "0.0000", align: "right" },
  inputText: { fill: "input", border: "row", top: true, format: "@", align: "left", indent: 1, input: true },
  /** Below the bill: what is typed there later stays text too. */
  textColumn: { format: "@", align: "left", indent: 1, input: true },
  inputNumber: { fill: "input", border: "row", top: true, align: "right", input: true },
  inputShare: { fill: "input", border: "row", top: true, format: "0%", align: "right", input: true },
  inputMoment: { fill: "input", border: "row", top: true, format: "yyyy-mm-dd hh:mm", align: "right", input: true },
  inputDay: { fill: "input", border: "row", top: true, format: "yyyy-mm-dd", align: "right", input: true },
  totalLabel: { font: "bold", border: "total" },
  totalCount: { font: "bold", border: "total", format: "#,##0" },
  totalTenth: { font: "bold", border: "total", format: "#,##0.0" },
  totalMoney: { font: "bold", border: "total", format: "#,##0.00" },
} as const satisfies Readonly<Record<string, Look>>;

export type StyleName = keyof typeof LOOKS;
const NAMES = Object.keys(LOOKS) as StyleName[];
export const styleIndex = (name: StyleName): number => NAMES.indexOf(name);
const FIGURES: readonly StyleName[] = NAMES.filter((name) => {
  const { format, align } = LOOKS[name] as Look;
  return align === "right" || (align === undefined && format !== undefined && format !== "@");
});
/** Its header stands over the figures. */
export const isRightAligned = (name: StyleName): boolean => FIGURES.includes(name);
export const wraps = (name: StyleName): boolean => (LOOKS[name] as Look).wrap === true;

const BUILT_IN: Readonly<Record<string, number>> = {
  General: 0,
  "0.00": 2,
  "#,##0": 3,
  "#,##0.00": 4,
  "0%": 9,
  "@": 49,
};
const OWN_FORMATS = [
  ...new Set(NAMES.map((name) => (LOOKS[name] as Look).format ?? "General").filter((format) => !(format in BUILT_IN))),
];
const FIRST_OWN = 164; // the numbers below belong to the built-in formats
const formatId = (format = "General"): number => BUILT_IN[format] ?? FIRST_OWN + OWN_FORMATS.indexOf(format);

/** Differential looks: of the two words that ask for attention (the word says it without color), and of a figure that is a day. */
export const EMPHASIS = ["stop", "check", "moment"] as const;
const DIFFERENTIAL = {
  stop: '<dxf><font><b/></font><fill><patternFill patternType="solid"><bgColor rgb="FFBDBDBD"/></patternFill></fill></dxf>',
  check:
    '<dxf><font><b/></font><fill><patternFill patternType="solid"><bgColor rgb="FFE9E9E9"/></patternFill></fill></dxf>',
  moment: `<dxf><numFmt numFmtId="${formatId(LOOKS.moment.format)}" formatCode="${LOOKS.moment.format}"/></dxf>`,
} as const;

const indexIn = (table: object, key: string): number => Object.keys(table).indexOf(key);

function cellFormat(name: StyleName): string {
  const { font = "plain", fill = "none", border = "none", format, align, indent, top, wrap, input }: Look = LOOKS[name];
  const alignment = [
    align && `horizontal="${align}"`,
    indent && `indent="${indent}"`,
    top && 'vertical="top"',
    wrap && 'wrapText="1"',
  ].filter(Boolean);
  const inside =
    (alignment.length > 0 ? `<alignment ${alignment.join(" ")}/>` : "") + (input ? '<protection locked="0"/>' : "");
  const attributes =
    `numFmtId="${formatId(format)}" fontId="${indexIn(FONTS, font)}" fillId="${indexIn(FILLS, fill)}" ` +
    `borderId="${indexIn(BORDERS, border)}" xfId="0" applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1"` +
    (alignment.length > 0 ? ' applyAlignment="1"' : "") +
    (input ? ' applyProtection="1"' : "");
  return inside ? `<xf ${attributes}>${inside}</xf>` : `<xf ${attributes}/>`;
}

const list = (tag: string, items: readonly string[]): string =>
  `<${tag} count="${items.length}">${items.join("")}</${tag}>`;

export const stylesXml = (): string =>
  `${XML}<styleSheet xmlns="${MAIN}">` +
  list(
    "numFmts",
    OWN_FORMATS.map((format) => `<numFmt numFmtId="${formatId(format)}" formatCode="${escapeXml(format)}"/>`),
  ) +
  list("fonts", Object.values(FONTS)) +
  list("fills", Object.values(FILLS)) +
  list("borders", Object.values(BORDERS)) +
  list("cellStyleXfs", ['<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>']) +
  list("cellXfs", NAMES.map(cellFormat)) +
  list("cellStyles", ['<cellStyle name="Normal" xfId="0" builtinId="0"/>']) +
  list(
    "dxfs",
    EMPHASIS.map((look) => DIFFERENTIAL[look]),
  ) +
  "</styleSheet>";
