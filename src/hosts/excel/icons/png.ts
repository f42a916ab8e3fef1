/** Writes a PNG (ISO/IEC 15948): 8 bits a channel, red green blue alpha, no interlace. */
import { crc32, deflateSync } from "node:zlib";

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const frame = Buffer.alloc(8 + body.length);
  frame.writeUInt32BE(data.length, 0);
  body.copy(frame, 4);
  frame.writeUInt32BE(crc32(body), 4 + body.length);
  return frame;
}

/** `pixels`: size x size x 4 bytes, row by row from the top. */
export function png(size: number, pixels: Uint8Array): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 6, 0, 0, 0], 8); // 8 bits, RGBA, deflate, adaptive filters, no interlace
  const stride = size * 4;
  const lines = Buffer.alloc(size * (stride + 1)); // each line begins with filter 0: as it is
  for (let y = 0; y < size; y++) lines.set(pixels.subarray(y * stride, (y + 1) * stride), y * (stride + 1) + 1);
  return Buffer.concat([
    SIGNATURE,
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(lines, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}
