/**
 * The words of a PDF that a browser has printed, line by line as a person reads them. Reads what such a file holds
 * (ISO 32000-1, 7.3, 9.4 and 9.10): plain objects, packed streams, fonts whose letters are told by a ToUnicode map.
 */
import { inflateSync } from "node:zlib";

interface Letter {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly text: string;
}

/** Lines of every page, from the top down; columns stand apart by two blanks. Words that are turned are left out. */
export function pdfPages(pdf: Uint8Array): string[][] {
  const whole = Buffer.from(pdf).toString("latin1");
  const objects = new Map(
    [...whole.matchAll(/(?:^|\n)(\d+) 0 obj\s*([\s\S]*?)endobj/g)].map(([, id, body]) => [id!, body!]),
  );
  const unpacked = (id: string): string => {
    const body = objects.get(id)!;
    const packed = body.slice(body.indexOf("stream\n") + "stream\n".length, body.lastIndexOf("endstream"));
    return inflateSync(Buffer.from(packed, "latin1")).toString("latin1");
  };
  const maps = new Map<string, ReadonlyMap<number, string>>();
  const mapOf = (font: string): ReadonlyMap<number, string> => {
    const known = maps.get(font) ?? lettersOf(unpacked(/\/ToUnicode (\d+) 0 R/.exec(objects.get(font)!)![1]!));
    maps.set(font, known);
    return known;
  };
  return [...objects.values()]
    .filter((body) => /\/Type ?\/Page\b/.test(body))
    .map((page) => {
      const fonts = new Map([...page.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name, id]) => [name!, id!]));
      const content = unpacked(/\/Contents (\d+) 0 R/.exec(page)![1]!);
      return linesOf(shown(content, (name) => mapOf(fonts.get(name)!)));
    });
}

const hex = (digits: string): number => Number.parseInt(digits, 16);
const unicode = (digits: string): string =>
  digits
    .match(/.{4}/g)!
    .map((four) => String.fromCharCode(hex(four)))
    .join("");

/** What the numbers of a font's letters stand for. */
function lettersOf(map: string): Map<number, string> {
  const found = new Map<number, string>();
  for (const [, body] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, from, to] of body!.matchAll(/<(\w+)> <(\w+)>/g)) found.set(hex(from!), unicode(to!));
  for (const [, body] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from, last, to] of body!.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g))
      for (let code = hex(from!); code <= hex(last!); code++)
        found.set(code, String.fromCharCode(hex(to!) + code - hex(from!)));
  return found;
}

function shown(content: string, lettersIn: (font: string) => ReadonlyMap<number, string>): Letter[] {
  const letters: Letter[] = [];
  const kept: number[][] = [];
  let here = [1, 0, 0, 1, 0, 0];
  let at = here;
  let font = "";
  let size = 0;
  let given: string[] = [];
  const times = (a: readonly number[], b: readonly number[]): number[] => [
    a[0]! * b[0]! + a[1]! * b[2]!,
    a[0]! * b[1]! + a[1]! * b[3]!,
    a[2]! * b[0]! + a[3]! * b[2]!,
    a[2]! * b[1]! + a[3]! * b[3]!,
    a[4]! * b[0]! + a[5]! * b[2]! + b[4]!,
    a[4]! * b[1]! + a[5]! * b[3]! + b[5]!,
  ];
  for (const [word] of content.matchAll(/\((?:\\.|[^\\)])*\)|<[0-9A-Fa-f\s]*>|[^\s[\]<>()]+/g)) {
    const numbers = given.map(Number); // of the last few words: no operator that is read here takes more
    if (word === "q") kept.push(here);
    else if (word === "Q") here = kept.pop() ?? here;
    else if (word === "cm") here = times(numbers.slice(-6), here);
    else if (word === "Tf") [font, size] = [given.at(-2)!.slice(1), numbers.at(-1)!];
    else if (word === "Tm") at = numbers.slice(-6);
    else if (word === "Td") at = times([1, 0, 0, 1, ...numbers.slice(-2)], at);
    else if (word === "Tj") {
      const [a, b, , d, x, y] = times(at, here);
      const text = (given.at(-1)!.match(/[0-9A-Fa-f]{4}/g) ?? []).map((code) => lettersIn(font).get(hex(code)) ?? "");
      if (Math.abs(b!) < Math.abs(a!) / 100)
        letters.push({ x: x!, y: y!, size: size * Math.abs(d!), text: text.join("") });
    } else {
      given = [...given.slice(-5), word];
      continue;
    }
    given = [];
  }
  return letters;
}

/** Letters whose feet stand within 2 pt of each other are one line. */
function linesOf(letters: readonly Letter[]): string[] {
  const rows: Letter[][] = [];
  for (const letter of [...letters].sort((a, b) => b.y - a.y)) {
    const row = rows.at(-1);
    if (row && row[0]!.y - letter.y < 2) row.push(letter);
    else rows.push([letter]);
  }
  return rows.map((row) =>
    row
      .sort((a, b) => a.x - b.x)
      .map(({ x, text }, i) => {
        const before = row[i - 1];
        // No letter is wider than its height.
        return `${before && x - before.x > 1.2 * before.size * before.text.length ? "  " : ""}${text}`;
      })
      .join(""),
  );
}
