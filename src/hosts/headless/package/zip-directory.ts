import { refuse } from "./file-refusal.ts";
import { LIMITS } from "./limits.ts";

/** One entry of the central directory (APPNOTE.TXT 6.3, 4.3.12), with what is needed to copy it unread. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly compressedSize: number;
  readonly size: number;
  /** Where the compressed bytes stand in the file. */
  readonly dataOffset: number;
  /** The local header, name and extra field as stored, and the central record. */
  readonly localHeader: Uint8Array;
  readonly centralRecord: Uint8Array;
}

const END_SIGNATURE = 0x06054b50;
const CENTRAL_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;
const OLE_SIGNATURE = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

export function readDirectory(bytes: Uint8Array): ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(view, bytes);
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  if (count === 0xffff || start === 0xffffffff) refuse("too-large", "zip64 packages are not read");
  if (count > LIMITS.entries) refuse("too-large", `package has ${count} entries; the limit is ${LIMITS.entries}`);
  const entries: ZipEntry[] = [];
  const seen = new Set<string>();
  let total = 0;
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + 46 > end || view.getUint32(at, true) !== CENTRAL_SIGNATURE)
      refuse("damaged", "central directory is damaged");
    const entry = readEntry(bytes, view, at);
    checkPath(entry.name);
    const key = entry.name.toLowerCase();
    if (seen.has(key)) refuse("damaged", `the package holds ${entry.name} twice`);
    seen.add(key);
    checkSize(entry);
    total += entry.size;
    if (total > LIMITS.totalBytes) refuse("too-large", `package unpacks to more than ${LIMITS.totalBytes} bytes`);
    entries.push(entry);
    at += entry.centralRecord.length;
  }
  return entries;
}

function findEnd(view: DataView, bytes: Uint8Array): number {
  if (OLE_SIGNATURE.every((byte, i) => bytes[i] === byte)) {
    const encrypted = new TextDecoder("utf-16le").decode(bytes).includes("EncryptedPackage");
    if (encrypted) refuse("encrypted", "workbook is encrypted; open it in Excel and save it without a password");
    refuse("not-a-zip", "file is an older binary document, not an .xlsx or .xlsm package");
  }
  if (bytes.length < 22 || view.getUint16(0, true) !== 0x4b50) refuse("not-a-zip", "file is not a zip package");
  for (let at = bytes.length - 22; at >= 0 && at >= bytes.length - 22 - 0xffff; at--) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  return refuse("damaged", "zip package has no central directory; it may be cut short");
}

function readEntry(bytes: Uint8Array, view: DataView, at: number): ZipEntry {
  const flags = view.getUint16(at + 8, true);
  const nameLength = view.getUint16(at + 28, true);
  const length = 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
  if (flags & 1) refuse("encrypted", `${name} is encrypted`);
  const local = view.getUint32(at + 42, true);
  if (local + 30 > bytes.length || view.getUint32(local, true) !== LOCAL_SIGNATURE) {
    refuse("damaged", `${name} has no local header`);
  }
  const dataOffset = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  const compressedSize = view.getUint32(at + 20, true);
  if (dataOffset + compressedSize > bytes.length) refuse("damaged", `${name} is cut short`);
  return {
    name,
    method: view.getUint16(at + 10, true),
    crc: view.getUint32(at + 16, true),
    compressedSize,
    size: view.getUint32(at + 24, true),
    dataOffset,
    localHeader: bytes.subarray(local, dataOffset),
    centralRecord: bytes.subarray(at, at + length),
  };
}

function checkPath(name: string): void {
  const parts = name.split("/");
  if (
    name.startsWith("/") ||
    name.includes("\\") ||
    /^[A-Za-z]:/.test(name) ||
    name.includes("\0") ||
    parts.includes("..")
  ) {
    refuse("unsafe-path", `part name ${JSON.stringify(name)} leaves the package`);
  }
}

function checkSize(entry: ZipEntry): void {
  if (entry.size > LIMITS.partBytes) {
    refuse("too-large", `${entry.name} unpacks to ${entry.size} bytes; the limit is ${LIMITS.partBytes}`);
  }
  if (entry.size > LIMITS.ratioFrom && entry.size > entry.compressedSize * LIMITS.ratio) {
    refuse("too-large", `${entry.name} unpacks to more than ${LIMITS.ratio} times its size`);
  }
}
