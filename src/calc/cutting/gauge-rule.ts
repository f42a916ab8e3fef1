/**
 * Which parts of one piece can be parted by parallel cuts on the shear. The part that falls behind the blade is the one
 * the back gauge measures; the rest stays in front under the hold-downs. So of a set of parallel parts exactly one is
 * never gauged, the one left in front at the end, and only that one may be longer than the gauge reaches or narrower
 * than the shear can drop.
 */
export interface GaugeRule {
  /** Longest cut the blade makes. Infinity: no limit. */
  readonly longestCut: number;
  /** Farthest the back gauge goes. Infinity: no limit. */
  readonly reach: number;
  /** Narrowest part that may fall behind the blade: the larger of least drop and the gauge's nearest stop. */
  readonly leastDrop: number;
  /** Narrowest part the hold-downs can grip in front of the blade. */
  readonly leastHold: number;
}

export const NO_FRONT = -2;
export const WASTE_IN_FRONT = -1;

export const isUnlimited = (rule: GaugeRule): boolean =>
  rule.longestCut === Infinity && rule.reach === Infinity && rule.leastDrop <= 0 && rule.leastHold <= 0;

/** A part that can only be the one in front. */
export const mustStayInFront = (extent: number, rule: GaugeRule): boolean =>
  extent > rule.reach || extent < rule.leastDrop;

/**
 * Which part stays in front when a piece is parted into `extents[0..count)` and `waste` (the rest, 0 or more).
 * Answers an index, WASTE_IN_FRONT, or NO_FRONT when the shear cannot part the piece so. Waste that falls is cut in
 * pieces no longer than the reach, none narrower than the least drop.
 */
export function frontPart(extents: ArrayLike<number>, count: number, waste: number, rule: GaugeRule): number {
  if (count === 1 && waste === 0) return 0;
  let forced = -1;
  let widest = 0;
  for (let i = 0; i < count; i++) {
    const extent = extents[i] as number;
    if (mustStayInFront(extent, rule)) {
      if (forced >= 0) return NO_FRONT;
      forced = i;
    }
    if (extent > (extents[widest] as number)) widest = i;
  }
  if (forced < 0 && waste > 0 && waste >= rule.leastHold) return WASTE_IN_FRONT;
  const front = forced >= 0 ? forced : widest;
  if ((extents[front] as number) < rule.leastHold) return NO_FRONT;
  return waste === 0 || canFallInPieces(waste, rule) ? front : NO_FRONT;
}

/** Equal falls in which waste is cut off: more than one where it is longer than the gauge reaches. */
export const wasteFallCount = (waste: number, rule: GaugeRule): number => Math.max(1, Math.ceil(waste / rule.reach));

/** Whether waste can be cut off in equal falls within the gauge's range. */
export const canFallInPieces = (waste: number, rule: GaugeRule): boolean =>
  Math.floor(waste / wasteFallCount(waste, rule)) >= rule.leastDrop;
