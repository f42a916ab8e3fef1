import { crc32, deflate } from "#deflate";
import type { ZipEntry } from "./zip-directory.ts";

/**
 * Writes the package again with some parts replaced. Untouched parts are copied as they are packed; order, names, time
 * stamps and extra fields stay. The same input and changes always give the same bytes.
 */
export function writePackage(
  bytes: Uint8Array,
  entries: readonly ZipEntry[],
  replaced: ReadonlyMap<string, Uint8Array>,
): Uint8Array {
  const pieces: Uint8Array[] = [];
  const central: Uint8Array[] = [];
  let offset = 0;
  const add = (piece: Uint8Array): void => {
    pieces.push(piece);
    offset += piece.length;
  };
  for (const entry of entries) {
    const content = replaced.get(entry.name);
    const packed = content
      ? deflate(content)
      : bytes.subarray(entry.dataOffset, entry.dataOffset + entry.compressedSize);
    const facts = content
      ? { method: 8, crc: crc32(content), compressedSize: packed.length, size: content.length }
      : entry;
    const local = Uint8Array.from(entry.localHeader);
    const record = Uint8Array.from(entry.centralRecord);
    const start = offset;
    patch(local, 4, facts);
    patch(record, 6, facts);
    new DataView(record.buffer).setUint32(42, start, true);
    add(local);
    add(packed);
    central.push(record);
  }
  const centralStart = offset;
  for (const record of central) add(record);
  add(endRecord(entries.length, offset - centralStart, centralStart));
  return join(pieces, offset);
}

interface Facts {
  readonly method: number;
  readonly crc: number;
  readonly compressedSize: number;
  readonly size: number;
}

/** Both headers hold flags, method, time, date, checksum and sizes in the same order, from a different offset. */
function patch(header: Uint8Array, versionAt: number, facts: Facts): void {
  const view = new DataView(header.buffer);
  const flagsAt = versionAt + 2;
  // The sizes stand in the header now, so no data descriptor follows the part.
  view.setUint16(flagsAt, view.getUint16(flagsAt, true) & ~8, true);
  view.setUint16(flagsAt + 2, facts.method, true);
  view.setUint32(flagsAt + 8, facts.crc, true);
  view.setUint32(flagsAt + 12, facts.compressedSize, true);
  view.setUint32(flagsAt + 16, facts.size, true);
}

function endRecord(count: number, size: number, start: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(22));
  view.setUint32(0, 0x06054b50, true);
  view.setUint16(8, count, true);
  view.setUint16(10, count, true);
  view.setUint32(12, size, true);
  view.setUint32(16, start, true);
  return new Uint8Array(view.buffer);
}

function join(pieces: readonly Uint8Array[], length: number): Uint8Array {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
