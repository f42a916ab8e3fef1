/** A list of integers without boxing: positions of a million cells. */
export class IntegerList {
  private items = new Int32Array(1024);
  length = 0;

  push(value: number): void {
    if (this.length === this.items.length) {
      const grown = new Int32Array(this.length * 2);
      grown.set(this.items);
      this.items = grown;
    }
    this.items[this.length++] = value;
  }

  at(index: number): number {
    return this.items[index]!;
  }
}
