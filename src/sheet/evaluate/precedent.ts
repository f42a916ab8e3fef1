/** A reference a formula makes before it is evaluated; relative parts are distances from the cell. */
export interface Precedent {
  /** Sheet index, or -1 for the formula's own. */
  readonly sheet: number;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly relativeTop: boolean;
  readonly relativeLeft: boolean;
  readonly relativeBottom: boolean;
  readonly relativeRight: boolean;
}
