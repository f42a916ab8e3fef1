/** Packing and unpacking on Node: its own zlib, several times as fast as one in JavaScript. */
import { crc32 as checksum, deflateRawSync, inflateRawSync } from "node:zlib";

/** A stream that unpacks to more than it declared. */
export const TOO_MUCH = "more than stated";

/** Unpacks a raw deflate stream of `size` bytes. Throws TOO_MUCH as soon as more comes out, an Error on damage. */
export function inflate(packed: Uint8Array, size: number): Uint8Array {
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, size) });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ERR_BUFFER_TOO_LARGE") throw TOO_MUCH;
    throw error;
  }
}

/** Level 2 of this zlib packs cells as small as level 3 in half the time. */
export const deflate = (content: Uint8Array): Uint8Array => deflateRawSync(content, { level: 2 });

export const crc32 = (content: Uint8Array): number => checksum(content);
