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
  if (count === 0xffff || start === 0xffffffff) refuse("too-large", "package", "a zip of less than 4 GB", "zip64");
  if (count > LIMITS.entries) refuse("too-large", "package", `a zip of at most ${LIMITS.entries} parts`, count);
  const entries: ZipEntry[] = [];
  const seen = new Set<string>();
  let total = 0;
  let at = start;
  for (let i = 0; i < count; i++) {
    if (at + 46 > end || view.getUint32(at, true) !== CENTRAL_SIGNATURE)
      refuse("damaged", "package", "a zip with a whole central directory", "a damaged one");
    const entry = readEntry(bytes, view, at);
    checkPath(entry.name);
    const key = entry.name.toLowerCase();
    if (seen.has(key)) refuse("damaged", "package", "a zip with every part once", `${entry.name} twice`);
    seen.add(key);
    checkSize(entry);
    checkLocal(bytes, view, at, entry);
    total += entry.size;
    if (total > LIMITS.totalBytes)
      refuse("too-large", "package", `at most ${LIMITS.totalBytes} bytes when unpacked`, "more");
    entries.push(entry);
    at += entry.centralRecord.length;
  }
  checkApart(entries, start);
  return entries;
}

const startOf = ({ dataOffset, localHeader }: ZipEntry): number => dataOffset - localHeader.length;

/** Each part has bytes of its own in front of the directory: parts that share theirs unpack to far more than they are. */
function checkApart(entries: readonly ZipEntry[], directory: number): void {
  const inOrder = [...entries].sort((a, b) => startOf(a) - startOf(b));
  inOrder.forEach((entry, i) => {
    const next = inOrder[i + 1];
    const end = next ? startOf(next) : directory;
    if (entry.dataOffset + entry.compressedSize > end)
      refuse("damaged", entry.name, "apart from other parts", "one that overlaps the next");
  });
}

function findEnd(view: DataView, bytes: Uint8Array): number {
  if (OLE_SIGNATURE.every((byte, i) => bytes[i] === byte)) {
    const encrypted = new TextDecoder("utf-16le").decode(bytes).includes("EncryptedPackage");
    if (encrypted)
      refuse("encrypted", "workbook", "without a password", "an encrypted one", "open it in Excel and save it without");
    refuse("not-a-zip", "file", "an .xlsx or .xlsm package", "an older binary document", "save it as .xlsx");
  }
  if (bytes.length < 22 || view.getUint16(0, true) !== 0x4b50)
    refuse("not-a-zip", "file", "an .xlsx or .xlsm package", "no zip");
  for (let at = bytes.length - 22; at >= 0 && at >= bytes.length - 22 - 0xffff; at--) {
    if (view.getUint32(at, true) === END_SIGNATURE) return at;
  }
  return refuse("damaged", "package", "a zip with a central directory", "none", "it may be cut short");
}

function readEntry(bytes: Uint8Array, view: DataView, at: number): ZipEntry {
  const flags = view.getUint16(at + 8, true);
  const nameLength = view.getUint16(at + 28, true);
  const length = 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
  if (flags & 1) refuse("encrypted", name, "without encryption", "an encrypted part");
  const local = view.getUint32(at + 42, true);
  if (local + 30 > bytes.length || view.getUint32(local, true) !== LOCAL_SIGNATURE) {
    refuse("damaged", name, "a part with a header of its own", "none");
  }
  const dataOffset = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  const compressedSize = view.getUint32(at + 20, true);
  if (dataOffset + compressedSize > bytes.length) refuse("damaged", name, "whole", "a part that is cut short");
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

/** A part's own header tells the same as the directory; sizes may be left to a record behind the part (flag 8). */
function checkLocal(bytes: Uint8Array, view: DataView, central: number, entry: ZipEntry): void {
  const { name } = entry;
  const local = startOf(entry);
  const length = view.getUint16(local + 26, true);
  const own = new TextDecoder().decode(bytes.subarray(local + 30, local + 30 + length));
  const later = (view.getUint16(local + 6, true) & 8) !== 0;
  const fields = [
    [8, 10, 2],
    [14, 16, 4],
    [18, 20, 4],
    [22, 24, 4],
  ] as const;
  const agrees = fields.every(([inLocal, inCentral, size]) => {
    const [a, b] = [local + inLocal, central + inCentral].map((at) =>
      size === 2 ? view.getUint16(at, true) : view.getUint32(at, true),
    ) as [number, number];
    return a === b || (size === 4 && later && a === 0);
  });
  if (own !== name || !agrees)
    refuse("damaged", name, "described alike in its header and in the directory", "otherwise");
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
    refuse("unsafe-path", "part name", "a path within the package", JSON.stringify(name));
  }
}

function checkSize(entry: ZipEntry): void {
  if (entry.size > LIMITS.partBytes) {
    refuse("too-large", entry.name, `at most ${LIMITS.partBytes} bytes when unpacked`, entry.size);
  }
  if (entry.size > LIMITS.ratioFrom && entry.size > entry.compressedSize * LIMITS.ratio) {
    refuse("too-large", entry.name, `at most ${LIMITS.ratio} times its packed size`, "more");
  }
}
