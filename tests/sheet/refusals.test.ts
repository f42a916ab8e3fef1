import { zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { noCustomFunctions } from "../../src/sheet/evaluate/custom-functions.ts";
import { recalculateBytes } from "../../src/sheet/recalculate/recalculate-bytes.ts";
import { GRAMMAR } from "../../src/tools/fuzz/grammar.ts";
import { packageOf, zipOf } from "./make-package.ts";

const refusedOf = (bytes: Uint8Array) =>
  recalculateBytes(bytes, { functions: noCustomFunctions, now: undefined, verify: false, in: "in.xlsx", out: null })
    .result.report.refused;

const good = packageOf({ sheets: { Sheet1: "<sheetData/>" } });

/** Overwrites bytes wherever a signature stands (APPNOTE 4.3: headers are little-endian). */
function patched(bytes: Uint8Array, signature: number, offset: number, value: number, size: 2 | 4): Uint8Array {
  const copy = Uint8Array.from(bytes);
  const view = new DataView(copy.buffer);
  for (let at = 0; at + 4 <= copy.length; at++) {
    if (view.getUint32(at, true) !== signature) continue;
    if (size === 2) view.setUint16(at + offset, value, true);
    else view.setUint32(at + offset, value, true);
  }
  return copy;
}

const ole = (text: string): Uint8Array => {
  const bytes = new Uint8Array(1024);
  bytes.set([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]);
  [...text].forEach((char, i) => {
    bytes[512 + 2 * i] = char.charCodeAt(0);
  });
  return bytes;
};

/** A part inside the bytes of another: the directory names both, and the inner one is counted twice. */
function overlapping(): Uint8Array {
  const inner = zipSync({ "b.xml": [new TextEncoder().encode("<b/>"), { level: 0 }] });
  const whole = zipSync({ "a.xml": [inner, { level: 0 }], "b.xml": [new TextEncoder().encode("<b/>"), { level: 0 }] });
  const view = new DataView(whole.buffer, whole.byteOffset, whole.byteLength);
  for (let at = 0, seen = 0; at + 4 <= whole.length; at++) {
    // The second record of the directory proper (the inner file has one of its own) is b's.
    if (view.getUint32(at, true) === 0x02014b50 && ++seen === 3) view.setUint32(at + 42, 30 + "a.xml".length, true);
  }
  return whole;
}

describe("a file that will not be read is refused by name", () => {
  test.each<[string, Uint8Array, string]>([
    ["text", new TextEncoder().encode("Part,Qty\nA,1\n".repeat(20)), "not-a-zip"],
    ["nothing at all", new Uint8Array(0), "not-a-zip"],
    ["an older binary workbook", ole("Workbook"), "not-a-zip"],
    ["an encrypted workbook", ole("EncryptedPackage"), "encrypted"],
    ["an encrypted zip entry", patched(good, 0x02014b50, 8, 1, 2), "encrypted"],
    ["a zip cut short", good.subarray(0, good.length - 40), "damaged"],
    ["a wrong checksum", patched(good, 0x02014b50, 16, 12345, 4), "damaged"],
    ["an unknown packing method", patched(good, 0x02014b50, 10, 99, 2), "damaged"],
    ["a part larger than it says", patched(good, 0x02014b50, 24, 3, 4), "damaged"],
    ["a part that would unpack to gigabytes", patched(good, 0x02014b50, 24, 0x7fffffff, 4), "too-large"],
    [
      "elements nested deeper than any workbook's",
      packageOf({ sheets: { Sheet1: `<sheetData>${"<row>".repeat(50_000)}</sheetData>` } }),
      "too-large",
    ],
    ["a ratio no sheet reaches", zipOf({ "a.xml": new Uint8Array(20_000_000) }), "too-large"],
    ["a part inside another", overlapping(), "damaged"],
    ["a header that names another part than the directory", patched(good, 0x04034b50, 26, 3, 2), "damaged"],
    ["a path that escapes", zipOf({ "../outside.xml": "x" }), "unsafe-path"],
    ["an absolute path", zipOf({ "/etc/thing.xml": "x" }), "unsafe-path"],
    [
      "a signed workbook",
      packageOf({ sheets: { S: "<sheetData/>" }, more: { "_xmlsignatures/sig1.xml": "<x/>" } }),
      "signed",
    ],
    ["a zip without workbook", zipOf({ "readme.txt": "hello" }), "not-a-workbook"],
    [
      "an entity",
      packageOf({ sheets: { S: '<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "b">]><worksheet/>' } }),
      "external-entity",
    ],
    ["XML that is not well formed", packageOf({ sheets: { S: "<sheetData><row></sheetData>" } }), "damaged"],
    [
      "a cell outside the sheet",
      packageOf({ sheets: { S: '<sheetData><row r="1"><c r="XFE1"><v>1</v></c></row></sheetData>' } }),
      "damaged",
    ],
    [
      "an array formula over the whole sheet",
      packageOf({
        sheets: {
          S: '<sheetData><row r="1"><c r="A1"><f t="array" ref="A1:XFD1048576">SEQUENCE(2,3)</f></c></row></sheetData>',
        },
      }),
      "too-large",
    ],
  ])("%s", (_, bytes, reason) => {
    const refused = refusedOf(bytes);
    expect(refused?.reason).toBe(reason);
    expect(refused?.message).toMatch(GRAMMAR);
  });

  test("a part inside another is named", () => {
    expect(refusedOf(overlapping())?.message).toContain("overlaps");
  });

  test("a good one is not", () => {
    expect(refusedOf(good)).toBeNull();
  });
});
