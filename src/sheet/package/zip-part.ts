import { crc32, inflate, TOO_MUCH } from "#deflate";
import { refuse } from "./file-refusal.ts";
import type { ZipEntry } from "./zip-directory.ts";

const STORED = 0;
const DEFLATED = 8;

/** Unpacks one part. Stops as soon as more comes out than the directory promised; the checksum must agree. */
export function readPart(bytes: Uint8Array, entry: ZipEntry): Uint8Array {
  const packed = bytes.subarray(entry.dataOffset, entry.dataOffset + entry.compressedSize);
  const content = entry.method === STORED ? packed : unpacked(packed, entry);
  if (content.length !== entry.size || crc32(content) !== entry.crc)
    refuse("damaged", entry.name, "as its checksum says", "other bytes");
  return content;
}

function unpacked(packed: Uint8Array, entry: ZipEntry): Uint8Array {
  if (entry.method !== DEFLATED) refuse("damaged", entry.name, "packed by deflate", `method ${entry.method}`);
  try {
    return inflate(packed, entry.size);
  } catch (error) {
    if (error === TOO_MUCH) refuse("damaged", entry.name, `${entry.size} bytes when unpacked, as it states`, "more");
    return refuse("damaged", entry.name, "a sound deflate stream", error instanceof Error ? error.message : "another");
  }
}
