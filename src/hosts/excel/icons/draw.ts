/** The add-in's own mark: a bent bracket seen from the side, and beside it three lines of a bill. */
import { itemAt } from "../../../units/certain.ts";
import { png } from "./png.ts";

type Color = readonly [number, number, number];
const PLATE: Color = [0x1f, 0x3a, 0x45];
const METAL: Color = [0xf4, 0xeb, 0xdd];
const INK: Color = [0xe8, 0x8b, 0x4a];
const WHITE: Color = [0xff, 0xff, 0xff];

/** Share of the picture, from the top left. */
const BRACKET = { left: 0.27, top: 0.17, right: 0.84, bottom: 0.77, bend: 0.2, half: 0.065 };
const LINES = { from: 0.5, to: [0.84, 0.84, 0.7], at: [0.23, 0.37, 0.51], half: 0.04 };
const CORNER = 0.2;
const SAMPLES = 6; // per pixel and direction: the edges of a 16 px icon are nothing but steps otherwise

function onBracket(x: number, y: number): boolean {
  const { left, top, right, bottom, bend, half } = BRACKET;
  const [centerX, centerY] = [left + bend, bottom - bend];
  if (y >= top && y <= centerY && Math.abs(x - left) <= half) return true;
  if (x >= centerX && x <= right && Math.abs(y - bottom) <= half) return true;
  return x < centerX && y > centerY && Math.abs(Math.hypot(x - centerX, y - centerY) - bend) <= half;
}

const onLine = (x: number, y: number): boolean =>
  LINES.at.some((at, i) => Math.abs(y - at) <= LINES.half && x >= LINES.from && x <= itemAt(LINES.to, i));

const onPlate = (x: number, y: number): boolean => {
  const [dx, dy] = [x, y].map((value) => Math.max(CORNER - Math.min(value, 1 - value), 0)) as [number, number];
  return Math.hypot(dx, dy) <= CORNER;
};

const inColor = (x: number, y: number): Color | undefined =>
  onBracket(x, y) ? METAL : onLine(x, y) ? INK : onPlate(x, y) ? PLATE : undefined;

/** The app package's: the same mark on a light plate, so that the two add-ins are told apart where both show. */
const inAppColor = (x: number, y: number): Color | undefined =>
  onBracket(x, y) ? PLATE : onLine(x, y) ? INK : onPlate(x, y) ? METAL : undefined;

/** White on nothing, as the unified manifest wants its second icon. */
const inOutline = (x: number, y: number): Color | undefined => (onBracket(x, y) || onLine(x, y) ? WHITE : undefined);

function draw(size: number, at: (x: number, y: number) => Color | undefined): Buffer {
  const pixels = new Uint8Array(size * size * 4);
  for (let pixel = 0; pixel < size * size; pixel++) {
    const sum = [0, 0, 0];
    let covered = 0;
    for (let sample = 0; sample < SAMPLES * SAMPLES; sample++) {
      const x = (pixel % size) + ((sample % SAMPLES) + 0.5) / SAMPLES;
      const y = Math.floor(pixel / size) + (Math.floor(sample / SAMPLES) + 0.5) / SAMPLES;
      const color = at(x / size, y / size);
      if (!color) continue;
      covered++;
      for (let channel = 0; channel < 3; channel++) sum[channel] = itemAt(sum, channel) + itemAt(color, channel);
    }
    if (covered === 0) continue;
    pixels.set([...sum.map((value) => Math.round(value / covered)), (255 * covered) / SAMPLES ** 2], pixel * 4);
  }
  return png(size, pixels);
}

export const colorIcon = (size: number): Buffer => draw(size, inColor);
export const appIcon = (size: number): Buffer => draw(size, inAppColor);
export const outlineIcon = (size: number): Buffer => draw(size, inOutline);
