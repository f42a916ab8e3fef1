import { Inflate } from "fflate";
import { crc32 } from "./crc32.ts";
import { refuse } from "./file-refusal.ts";
import type { ZipEntry } from "./zip-directory.ts";

const STORED = 0;
const DEFLATED = 8;

/** Unpacks one part. Stops as soon as more comes out than the directory promised; the checksum must agree. */
export function readPart(bytes: Uint8Array, entry: ZipEntry): Uint8Array {
  const packed = bytes.subarray(entry.dataOffset, entry.dataOffset + entry.compressedSize);
  const content = entry.method === STORED ? packed : inflate(packed, entry);
  if (content.length !== entry.size || crc32(content) !== entry.crc)
    refuse("damaged", entry.name, "as its checksum says", "other bytes");
  return content;
}

function inflate(packed: Uint8Array, entry: ZipEntry): Uint8Array {
  if (entry.method !== DEFLATED) refuse("damaged", entry.name, "packed by deflate", `method ${entry.method}`);
  const content = new Uint8Array(entry.size);
  let filled = 0;
  const stream = new Inflate((chunk) => {
    if (filled + chunk.length > entry.size)
      refuse("damaged", entry.name, `${entry.size} bytes when unpacked, as it states`, "more");
    content.set(chunk, filled);
    filled += chunk.length;
  });
  try {
    // In slices, so that a lying entry is stopped early.
    for (let at = 0; at < packed.length; at += 65_536) {
      stream.push(packed.subarray(at, at + 65_536), at + 65_536 >= packed.length);
    }
  } catch (error) {
    if (error instanceof Error) refuse("damaged", entry.name, "a sound deflate stream", error.message);
    throw error;
  }
  return filled === entry.size ? content : content.subarray(0, filled);
}
