/**
 * The letters of a PDF that a browser has printed: how large each text stands on the paper, in points. Reads what such a
 * file holds (ISO 32000-1, 8.4 and 9.4): plain objects, packed content streams, q Q cm BT Tf Tm Tj TJ.
 */
import { inflateSync } from "node:zlib";

type Matrix = readonly [number, number, number, number, number, number];
const SAME: Matrix = [1, 0, 0, 1, 0, 0];
const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];

/** One list of sizes a content stream that shows text. */
export function letterSizes(pdf: Uint8Array): number[][] {
  const whole = Buffer.from(pdf);
  const found: number[][] = [];
  for (let at = whole.indexOf("stream\n"); at >= 0; at = whole.indexOf("stream\n", at + 1)) {
    if (whole.subarray(at - 3, at).toString("latin1") === "end") continue;
    const begin = at + "stream\n".length;
    const head = whole.subarray(whole.lastIndexOf("obj", at), at).toString("latin1");
    if (!head.includes("/FlateDecode") || /\/Subtype ?\/Image|\/Length1|\/FontFile|\/Type ?\/XRef/.test(head)) continue;
    const content = inflateSync(whole.subarray(begin, whole.indexOf("endstream", begin))).toString("latin1");
    if (/\bBT\b/.test(content)) found.push(sizesOf(content));
  }
  return found;
}

function sizesOf(content: string): number[] {
  const sizes: number[] = [];
  const kept: Matrix[] = [];
  let here = SAME;
  let text = SAME;
  let size = 0;
  let numbers: number[] = [];
  for (const [word] of content.matchAll(/\((?:\\.|[^\\)])*\)|<[0-9A-Fa-f\s]*>|[^\s[\]<>()]+/g)) {
    const number = Number(word);
    if (!Number.isNaN(number)) {
      numbers.push(number);
      continue;
    }
    if (word.startsWith("(") || word.startsWith("<") || word.startsWith("/")) continue;
    if (word === "q") kept.push(here);
    else if (word === "Q") here = kept.pop() ?? SAME;
    else if (word === "cm") here = times(numbers.slice(-6) as unknown as Matrix, here);
    else if (word === "BT") text = SAME;
    else if (word === "Tf") size = numbers.at(-1) ?? 0;
    else if (word === "Tm") text = numbers.slice(-6) as unknown as Matrix;
    else if (word === "Tj" || word === "TJ") {
      const [, , across, up] = times(text, here);
      sizes.push(size * Math.hypot(across, up));
    }
    numbers = [];
  }
  return sizes;
}
