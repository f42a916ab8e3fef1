/**
 * Which parts of one piece can be parted by parallel cuts on the shear. What is measured is a part, never the scrap: by the
 * back gauge it falls behind the blade, against a front stop it lies in front, to a mark it may do either. So of a set of
 * parallel parts exactly one need not be measured, the one left at the end, and only that one may be longer than every stop
 * reaches or narrower than the shear can drop. Waste is left over at the end, or trimmed off that last part.
 */
export interface GaugeRule {
  /** Longest cut the blade makes. Infinity: no limit. */
  readonly longestCut: number;
  /** Farthest a part is measured, by whatever stop; Infinity where it may be cut to a mark. */
  readonly reach: number;
  /** Farthest the back gauge goes. */
  readonly backReach: number;
  /** Farthest a part in front is measured: front stop, or Infinity to a mark; 0: never. */
  readonly frontReach: number;
  /** Narrowest part that may fall behind the blade: the larger of least drop and the gauge's nearest stop. */
  readonly leastDrop: number;
  /** Narrowest part the hold-downs can grip in front of the blade. */
  readonly leastHold: number;
  /** Narrowest waste that can be sheared off. */
  readonly leastWaste: number;
  /** A part that falls twists when it is narrower than this and longer than so many of its widths. 0: none does. */
  readonly twistWidth: number;
  readonly twistLength: number;
}

export const NO_FRONT = -2;
export const WASTE_IN_FRONT = -1;

export const isUnlimited = (rule: GaugeRule): boolean =>
  rule.longestCut === Infinity &&
  rule.backReach === Infinity &&
  rule.leastDrop <= 0 &&
  rule.leastHold <= 0 &&
  rule.leastWaste <= 0 &&
  rule.twistWidth <= 0;

export const twists = (extent: number, length: number, { twistWidth, twistLength }: GaugeRule): boolean =>
  extent < twistWidth && length > twistLength * extent;

/** A part that can only be the one in front. */
export const mustStayInFront = (extent: number, rule: GaugeRule): boolean =>
  extent > rule.reach || extent < rule.leastDrop;

/**
 * Which part stays in front when a piece is parted into `extents[0..count)` and `waste` (the rest, 0 or more).
 * Answers an index, WASTE_IN_FRONT, or NO_FRONT when the shear cannot part the piece so.
 */
export function frontPart(extents: ArrayLike<number>, count: number, waste: number, rule: GaugeRule): number {
  if (count === 1 && waste === 0) return 0;
  if (waste > 0 && waste < rule.leastWaste) return NO_FRONT;
  let forced = -1;
  let widest = 0;
  let long = 0;
  for (let i = 0; i < count; i++) {
    const extent = extents[i] as number;
    if (mustStayInFront(extent, rule)) {
      if (forced >= 0) return NO_FRONT;
      forced = i;
    }
    if (extent > rule.backReach) long++;
    if (extent > (extents[widest] as number)) widest = i;
  }
  // A part against the front stop lets the rest fall, which must be wide enough for it.
  const mayFall = (extent: number) => long === 0 || extent >= rule.leastDrop;
  // Of parts that no back gauge reaches the widest stays where it lies, and the waste drops: nothing heavy is taken up again.
  if (forced < 0 && waste > 0 && long > 0 && (extents[widest] as number) >= rule.leastHold) return widest;
  if (forced < 0 && waste > 0 && waste >= rule.leastHold && mayFall(waste)) return WASTE_IN_FRONT;
  const front = forced >= 0 ? forced : widest;
  const own = extents[front] as number;
  if (own < rule.leastHold) return NO_FRONT;
  if (own > rule.backReach) long--;
  if (waste > 0) return own <= rule.frontReach ? front : NO_FRONT;
  return mayFall(own) ? front : NO_FRONT;
}
