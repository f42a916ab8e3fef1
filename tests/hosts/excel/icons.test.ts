import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { colorIcon, outlineIcon } from "../../../src/hosts/excel/icons/draw.ts";

/** Width, height and the pixel in the middle of the bracket's lower leg, read by the rules of ISO/IEC 15948. */
function read(png: Buffer) {
  const size = png.readUInt32BE(16);
  const data: Buffer[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at))
    if (png.toString("latin1", at + 4, at + 8) === "IDAT")
      data.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  const lines = inflateSync(Buffer.concat(data));
  const pixel = (x: number, y: number) => [...lines.subarray(y * (size * 4 + 1) + 1 + x * 4).subarray(0, 4)];
  return { size, height: png.readUInt32BE(20), lines: lines.length, pixel };
}

describe("icons", () => {
  it.each([16, 32, 64, 80, 128, 192])(
    "the colored one in %i px is square, metal on a plate with clear corners",
    (size) => {
      const icon = read(colorIcon(size));
      expect([icon.size, icon.height, icon.lines]).toEqual([size, size, size * (size * 4 + 1)]);
      expect(icon.pixel(0, 0)[3]).toBeLessThan(128);
      expect(icon.pixel(Math.floor(size * 0.6), Math.floor(size * 0.77))).toEqual([0xf4, 0xeb, 0xdd, 255]);
      expect(icon.pixel(Math.floor(size * 0.1), Math.floor(size * 0.5))).toEqual([0x1f, 0x3a, 0x45, 255]);
    },
  );

  it("the outline is white on nothing, as the unified manifest requires it", () => {
    const icon = read(outlineIcon(32));
    for (let i = 0; i < 32 * 32; i++) {
      const [red, green, blue, alpha] = icon.pixel(i % 32, Math.floor(i / 32));
      if (alpha! > 0) expect([red, green, blue]).toEqual([255, 255, 255]);
    }
    expect(icon.pixel(1, 1)[3]).toBe(0);
    expect(icon.pixel(19, 24)[3]).toBe(255);
  });
});
