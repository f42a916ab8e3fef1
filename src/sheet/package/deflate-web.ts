/** Packing and unpacking in a browser, with the fflate library. */
import { deflateSync, Inflate } from "fflate";

/** A stream that unpacks to more than it declared. */
export const TOO_MUCH = "more than stated";

/** Unpacks a raw deflate stream of `size` bytes. Throws TOO_MUCH as soon as more comes out, an Error on damage. */
export function inflate(packed: Uint8Array, size: number): Uint8Array {
  const content = new Uint8Array(size);
  let filled = 0;
  const stream = new Inflate((chunk) => {
    if (filled + chunk.length > size) throw TOO_MUCH;
    content.set(chunk, filled);
    filled += chunk.length;
  });
  // In slices, so that a lying entry is stopped early.
  for (let at = 0; at < packed.length; at += 65_536)
    stream.push(packed.subarray(at, at + 65_536), at + 65_536 >= packed.length);
  return filled === size ? content : content.subarray(0, filled);
}

export const deflate = (content: Uint8Array): Uint8Array => deflateSync(content, { level: 3 });

/** CRC-32 of ISO 3309 as zip uses it. */
const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

export function crc32(content: Uint8Array): number {
  let c = 0xffffffff;
  for (let i = 0; i < content.length; i++) c = TABLE[(c ^ content[i]!) & 0xff]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
