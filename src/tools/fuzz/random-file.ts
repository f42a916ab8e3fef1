/** The file with number `index` of the series `seed`: a sound one, damaged in one to three ways. Always the same one. */
import { strFromU8, strToU8, zipSync } from "fflate";
import { pick, randomFrom } from "../random/random.ts";
import { BASE_CSV, BASE_PARTS } from "./base-files.ts";
import { JOB_PARTS } from "./job-file.ts";
import { cell, KEYS, type Random, upTo } from "./values.ts";

interface RandomFile {
  readonly kind: "workbook" | "csv";
  readonly bytes: Uint8Array;
}

const SPREAD = 0x9e3779b1; // as in random-call.ts

export function randomFile(seed: number, index: number): RandomFile {
  const random = randomFrom(Math.imul(seed ^ (index + 1), SPREAD) ^ 0x51);
  const times = 1 + upTo(random, 2);
  if (random() < 0.2) {
    let text = BASE_CSV.repeat(random() < 0.02 ? 2000 : 1);
    for (let i = 0; i < times; i++) text = damagedText(random, text);
    return { kind: "csv", bytes: random() < 0.3 ? damagedBytes(random, strToU8(text)) : strToU8(text) };
  }
  const job = random() < 0.25;
  const parts: Record<string, string> = job ? { ...JOB_PARTS } : { ...BASE_PARTS };
  for (let i = 0; i < times; i++) (job && random() < 0.8 ? otherCell : pick(random, PART_DAMAGE))(random, parts);
  const bytes = zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])), {
    level: random() < 0.5 ? 0 : 6,
    mtime: new Date(2020, 0, 1),
  });
  return { kind: "workbook", bytes: random() < 0.25 ? damagedBytes(random, bytes) : bytes };
}

const SHEET = "xl/worksheets/sheet1.xml";
const WORKBOOK = "xl/workbook.xml";
const NUMBERS = ["-1", "0", "1e308", "99999999999", "1048577", "16385", "4294967296", "NaN", "2147483648", "0.5", ""];
const TEXTS = [
  ...KEYS,
  "",
  "&#0;",
  "&lol;",
  "\u0000",
  "A0",
  "XFD1048576",
  "A1:XFD1048576",
  "ZZZZ1",
  "'Bill'!A1",
  "#REF!",
  "😀",
];
const FORMULAS = [
  "SEQUENCE(1000,1000)",
  "SEQUENCE(1048576,16384)",
  "MAKEARRAY(2000,2000,LAMBDA(r,c,r*c))",
  "REDUCE(0,SEQUENCE(100000),LAMBDA(a,b,a+b))",
  "MMULT(SEQUENCE(300,300),SEQUENCE(300,300))",
  'REPT("x",32767)&amp;REPT("x",32767)',
  'TEXT(1,REPT("0",5000))',
  "SUM(A:XFD)",
  "A1:XFD1048576",
  "COUNTIF(A:A,C2)+SUMIFS(B:B,A:A,&quot;*&quot;)",
  "OFFSET(A1,1E9,0)",
  'INDIRECT("A"&amp;1048577)',
  "LET(x,x,x)",
  "loop(1)",
  "C2+D2",
  "FACT(170)*FACT(170)",
  "1/0",
  'WEBSERVICE("http://example.invalid")',
  'HYPERLINK("file:///etc/passwd")',
  "cmd|'/c calc'!A1",
  "[1]Other!A1",
  'SHOP.CUT.PLAN({"a"},{"b"},{1},100)',
  'SHOP.FLAT.LENGTH("2;3",90,0.25,SEQUENCE(1000,100))',
  'SHOP.SHEET.THICKNESS(SEQUENCE(20000),"steel")',
  "SUBSTITUTE(REPT(&quot;ab&quot;,16000),&quot;a&quot;,REPT(&quot;c&quot;,30000))",
  "(((((",
  '"',
  "",
];

type Damage = (random: Random, parts: Record<string, string>) => void;
const anyPart = (random: Random, parts: Record<string, string>): string => pick(random, Object.keys(parts));
const inPart =
  (change: (random: Random, text: string) => string, part?: string): Damage =>
  (random, parts) => {
    const name = part ?? anyPart(random, parts);
    if (parts[name] !== undefined) parts[name] = change(random, parts[name]);
  };

/** One formula of the sheet by another. */
const otherFormula = (random: Random, text: string): string => {
  const all = [...text.matchAll(/<f[^>]*>([^<]*)<\/f>/g)];
  if (all.length === 0) return text;
  const { index, 0: whole, 1: inner = "" } = pick(random, all);
  const at = index + whole.lastIndexOf(`${inner}</f>`);
  const given = pick(random, FORMULAS);
  return `${text.slice(0, at)}${given}${text.slice(at + inner.length)}`;
};
const deep = (random: Random): number => pick(random, [50, 500, 5_000, 50_000]);

/** One cell of a bill or of a shop's table by what somebody might type there. */
const otherCell: Damage = (random, parts) => {
  const name = random() < 0.5 ? SHEET : "xl/worksheets/sheet2.xml";
  const text = parts[name] ?? "";
  const all = [...text.matchAll(/<c(?: t="inlineStr")?>.*?<\/c>|<c\/>/g)];
  if (all.length === 0) return;
  const { index, 0: whole } = pick(random, all);
  const given = cell(random);
  const typed = typeof given === "number" || typeof given === "string" ? String(given) : "";
  const escaped = typed.replace(/[&<]|\p{Cc}|\p{Cs}/gu, " ");
  parts[name] =
    `${text.slice(0, index)}<c t="inlineStr"><is><t>${escaped}</t></is></c>${text.slice(index + whole.length)}`;
};

const PART_DAMAGE: readonly Damage[] = [
  inPart(damagedText),
  inPart(damagedText, SHEET),
  inPart(otherFormula, SHEET),
  inPart(otherFormula, SHEET),
  inPart(otherNumber, SHEET),
  inPart(otherNumber),
  inPart(otherText),
  inPart(otherText, SHEET),
  (random, parts) => {
    delete parts[anyPart(random, parts)];
  },
  (random, parts) => {
    const [a, b] = [anyPart(random, parts), anyPart(random, parts)];
    [parts[a], parts[b]] = [parts[b] ?? "", parts[a] ?? ""];
  },
  (random, parts) => {
    parts[pick(random, ["../evil.xml", "/absolute", "xl/../../x", "C:\\x", "__proto__x", "xl/worksheets/SHEET1.xml"])] =
      "x";
  },
  // Deep nesting: of elements, of brackets, of signs, of calls.
  inPart((random, text) => text.replace("</sheetData>", `${"<row>".repeat(deep(random))}</sheetData>`), SHEET),
  inPart(
    (random, text) => withFormula(text, `${"(".repeat(deep(random))}1${random() < 0.5 ? ")".repeat(5_000) : ""}`),
    SHEET,
  ),
  inPart((random, text) => withFormula(text, `${"-".repeat(deep(random))}1`), SHEET),
  inPart((random, text) => {
    const depth = deep(random);
    return withFormula(text, `${"ABS(".repeat(depth)}1${")".repeat(depth)}`);
  }, SHEET),
  // A long chain of cells, a circle of cells, a circle of names.
  inPart((random, text) => {
    const rows = deep(random);
    const chain = Array.from(
      { length: rows },
      (_, i) => `<row r="${i + 7}"><c r="A${i + 7}"><f>A${i + (random() < 0.0005 ? 8 : 6)}+1</f></c></row>`,
    );
    return text.replace("</sheetData>", `${chain.join("")}</sheetData>`);
  }, SHEET),
  inPart((_, text) => withFormula(text, "A6+C2").replace("twice(B2)", "C2"), SHEET),
  (random, parts) => {
    const circle = pick(random, [
      ["a", "b", "b", "a"],
      ["loop", "LAMBDA(x,loop(x))", "total", "total"],
      ["loop", "LAMBDA(x,loop(x)+loop(x))", "rate", "loop(1)"],
    ]);
    const names = `<definedName name="${circle[0]}">${circle[1]}</definedName><definedName name="${circle[2]}">${circle[3]}</definedName>`;
    parts[WORKBOOK] = (parts[WORKBOOK] ?? "").replace("<definedNames>", `<definedNames>${names}`);
    if (parts[SHEET]) parts[SHEET] = withFormula(parts[SHEET], `${circle[0]}${random() < 0.5 ? "(1)" : ""}`);
  },
  // A document type: entities that grow, or that read a file.
  inPart((random, text) => {
    const entity =
      random() < 0.5
        ? '<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;">'
        : '<!ENTITY a SYSTEM "file:///etc/passwd">';
    return text.replace("?>", `?><!DOCTYPE x [${entity}]>`);
  }),
  inPart((_, text) => text.replace(/<v>\d/, "<v>&a;"), SHEET),
  // A part that unpacks to far more than it weighs.
  inPart((_, text) => text + " ".repeat(30_000_000), "xl/sharedStrings.xml"),
];

const withFormula = (text: string, given: string): string => text.replace(/<f>total\*rate<\/f>/, `<f>${given}</f>`);

function otherNumber(random: Random, text: string): string {
  const all = [...text.matchAll(/(?<=[">])-?\d+(?:\.\d+)?(?=["<])/g)];
  if (all.length === 0) return text;
  const { index, 0: whole } = pick(random, all);
  return `${text.slice(0, index)}${pick(random, NUMBERS)}${text.slice(index + whole.length)}`;
}

function otherText(random: Random, text: string): string {
  const all = [...text.matchAll(/(?<==")[^"]*(?=")/g)];
  if (all.length === 0) return text;
  const { index, 0: whole } = pick(random, all);
  return `${text.slice(0, index)}${pick(random, TEXTS)}${text.slice(index + whole.length)}`;
}

/** A piece cut out, doubled, moved, or signs thrown in. */
function damagedText(random: Random, text: string): string {
  const from = upTo(random, text.length);
  const to = Math.min(text.length, from + upTo(random, 60));
  const piece = text.slice(from, to);
  switch (upTo(random, 4)) {
    case 0:
      return text.slice(0, from) + text.slice(to);
    case 1:
      return text.slice(0, to) + piece.repeat(1 + upTo(random, 3)) + text.slice(to);
    case 2: {
      const rest = text.slice(0, from) + text.slice(to);
      const at = upTo(random, rest.length);
      return rest.slice(0, at) + piece + rest.slice(at);
    }
    case 3:
      return (
        text.slice(0, from) +
        pick(random, ["<", ">", "&", '"', "\u0000", "]]>", "<!--", ",", ";", "\r", "\n\n", "'"]) +
        text.slice(to)
      );
    default:
      return text.slice(0, from);
  }
}

/** Cut short, bits turned, a size field blown up, rubbish in front or behind. */
function damagedBytes(random: Random, bytes: Uint8Array): Uint8Array {
  const copy = bytes.slice();
  switch (upTo(random, 4)) {
    case 0:
      return copy.slice(0, upTo(random, copy.length));
    case 1:
      for (let i = 1 + upTo(random, 8); i > 0; i--) {
        const at = upTo(random, copy.length - 1);
        copy[at] = (copy[at] ?? 0) ^ (1 << upTo(random, 7));
      }
      return copy;
    case 2: {
      const at = upTo(random, Math.max(0, copy.length - 5));
      const field = [0xff, 0xff, 0xff, random() < 0.5 ? 0x7f : 0xff];
      copy.set(field.slice(0, copy.length), at);
      return copy;
    }
    case 3: {
      const more = new Uint8Array(copy.length + 16);
      more.set(copy, random() < 0.5 ? 16 : 0);
      return more;
    }
    default:
      return strToU8(strFromU8(copy, true).slice(0, upTo(random, copy.length)));
  }
}
