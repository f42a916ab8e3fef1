/**
 * How long a search may go on. The units are counted work (places looked at, cells of a table filled), so a budget of
 * units stops at the same point on every machine; `stop` is a clock held by somebody else and is only asked now and then.
 */
export class Budget {
  used = 0;
  /** Why the search ended, once it has. */
  ended: "" | "units" | "time" = "";
  private nextLook: number;

  constructor(
    readonly units: number,
    private readonly stop?: () => boolean,
    /** Units between two looks at the clock: about a millisecond's work. */
    private readonly every = 200_000,
  ) {
    this.nextLook = every;
  }

  /** A part of what is left: it ends with the whole, which must be told what it used. */
  share(units: number): Budget {
    return new Budget(Math.min(units, this.units - this.used), this.stop, this.every);
  }

  spend(units: number): void {
    this.used += units;
  }

  over(): boolean {
    if (this.ended !== "") return true;
    if (this.used >= this.units) this.ended = "units";
    else if (this.used >= this.nextLook) {
      this.nextLook = this.used + this.every;
      if (this.stop?.()) this.ended = "time";
    }
    return this.ended !== "";
  }
}
