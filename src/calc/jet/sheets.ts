import { atMost } from "../../units/nearly.ts";
import type { Millimetres } from "../../units/quantity.ts";

/** A rectangle to be cut so many times. */
export interface JetBlank {
  readonly length: Millimetres;
  readonly width: Millimetres;
  /** Which of its sizes lies along the sheet: the first, the second, or either. */
  readonly grain: "along" | "across" | "free";
  readonly count: number;
}

/** One sheet, or several alike: how many of each blank, in the order they were given. */
export interface JetSheet {
  readonly repeats: number;
  readonly counts: readonly number[];
}

/**
 * Sheets for blanks laid in rows with a web between them: the widest rows first, each blank in the first row with room
 * (first fit by falling width, common practice; derived). No cut has to go through: a waterjet cuts any outline. Blanks
 * that do not lie on the sheet, or for which `most` sheets do not suffice, are not in the answer.
 */
export function jetSheets(
  blanks: readonly JetBlank[],
  sheet: { readonly length: Millimetres; readonly width: Millimetres },
  web: Millimetres,
  most: number,
): JetSheet[] {
  const room = roomOn(sheet, web);
  const laid = blanks
    .flatMap((blank, index) => {
      const size = asLaid(blank, room, web);
      return size ? [{ ...size, index, left: blank.count }] : [];
    })
    .sort((a, b) => b.height - a.height || b.along - a.along);
  const sheets: JetSheet[] = [];
  for (let used = 0; used < most && laid.some(({ left }) => left > 0); ) {
    const counts = oneSheet(laid, room, blanks.length);
    // As many alike as the numbers allow.
    const repeats = Math.min(
      most - used,
      ...laid.flatMap(({ index, left }) => (counts[index]! > 0 ? [Math.floor(left / counts[index]!)] : [])),
    );
    for (const piece of laid) piece.left -= repeats * counts[piece.index]!;
    sheets.push({ repeats, counts });
    used += repeats;
  }
  return sheets;
}

/** Does one of it lie on the sheet, the web round it? */
export const liesOnSheet = (
  blank: Omit<JetBlank, "count">,
  sheet: { readonly length: Millimetres; readonly width: Millimetres },
  web: Millimetres,
): boolean => asLaid(blank, roomOn(sheet, web), web) !== undefined;

const roomOn = ({ length, width }: { readonly length: number; readonly width: number }, web: number): Room => ({
  length: length - web,
  width: width - web,
});

interface Laid {
  readonly index: number;
  /** With the web that belongs to it. */
  readonly along: number;
  readonly height: number;
  left: number;
}
interface Room {
  readonly length: number;
  readonly width: number;
}

/** Turned as its grain asks, else long side along the sheet; undefined where it does not lie on it. */
function asLaid(
  { length, width, grain }: Omit<JetBlank, "count">,
  room: Room,
  web: number,
): Pick<Laid, "along" | "height"> | undefined {
  const ways: [number, number][] =
    grain === "along"
      ? [[length, width]]
      : grain === "across"
        ? [[width, length]]
        : [
            [Math.max(length, width), Math.min(length, width)],
            [Math.min(length, width), Math.max(length, width)],
          ];
  const way = ways.find(([along, height]) => atMost(along + web, room.length) && atMost(height + web, room.width));
  return way && { along: way[0] + web, height: way[1] + web };
}

function oneSheet(laid: readonly Laid[], room: Room, blanks: number): number[] {
  const counts = Array.from({ length: blanks }, () => 0);
  const rows: { height: number; free: number }[] = [];
  let used = 0;
  for (const { index, along, height, left } of laid) {
    let open = left;
    while (open > 0) {
      let row = rows.find((each) => atMost(height, each.height) && atMost(along, each.free));
      if (!row) {
        if (!atMost(used + height, room.width)) break;
        row = { height, free: room.length };
        rows.push(row);
        used += height;
      }
      const placed = Math.max(1, Math.min(open, Math.floor(row.free / along + LAST_BITS)));
      row.free -= placed * along;
      counts[index]! += placed;
      open -= placed;
    }
  }
  return counts;
}
const LAST_BITS = 1e-9; // numerical: ten tenths are one
