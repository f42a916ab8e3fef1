/**
 * One sheet's layout as a slicing tree in a single Int32Array. Every node is kept as tight as its contents: what is left
 * over is nowhere in the tree but is the difference between a node's cap (how large it could grow inside its sheet) and
 * its tight size, so a piece may go wherever its neighbors can still make room. Slots are reused; slot 0 is the root.
 */
import { missing } from "../../units/certain.ts";
import { ALONG_X, type Direction } from "./problem.ts";

export const STRIDE = 11;
export const PARENT = 0;
export const FIRST = 1;
export const NEXT = 2;
/** item * 2 + turned for a leaf; INTERNAL or DEAD otherwise. */
export const ITEM = 3;
export const DIRECTION = 4;
export const TIGHT_X = 5;
export const TIGHT_Y = 6;
export const CAP_X = 7;
export const CAP_Y = 8;
export const DEPTH = 9;
export const LEAVES = 10;
export const INTERNAL = -1;
export const DEAD = -2;

/** Chosen: shorter layouts are copied by a plain loop. */
const SHORT = 400;

export class GuillotineLayout {
  data = new Int32Array(STRIDE * 16);
  /** Slots handed out so far, dead ones among them. */
  slots = 1;
  free = -1;
  sheet = 0;
  /** Given by a search, another one after every change: layouts of one version are equal. */
  version = 0;
  /** The most room that any node or piece has beside it, along x and along y. */
  roomX = 0;
  roomY = 0;
  w = 0;
  h = 0;
  /** Area of the pieces on the sheet. */
  area = 0;

  /** Empties the layout for a sheet of w x h whose parts lie in `direction`. */
  start(sheet: number, w: number, h: number, direction: Direction): void {
    this.sheet = sheet;
    this.w = w;
    this.h = h;
    this.area = 0;
    this.slots = 1;
    this.free = -1;
    const d = this.data;
    d[PARENT] = -1;
    d[FIRST] = -1;
    d[NEXT] = -1;
    d[ITEM] = INTERNAL;
    d[DIRECTION] = direction;
    d[DEPTH] = 0;
    this.settle();
  }

  copyFrom(other: GuillotineLayout): void {
    const length = other.slots * STRIDE;
    if (this.data.length < length) this.data = new Int32Array(other.data.length);
    const from = other.data;
    const to = this.data;
    if (length < SHORT) for (let i = 0; i < length; i++) to[i] = from[i] ?? missing();
    else to.set(from.subarray(0, length));
    this.version = other.version;
    this.roomX = other.roomX;
    this.roomY = other.roomY;
    this.slots = other.slots;
    this.free = other.free;
    this.sheet = other.sheet;
    this.w = other.w;
    this.h = other.h;
    this.area = other.area;
  }

  private slot(): number {
    if (this.free >= 0) {
      const at = this.free;
      this.free = this.data[at + NEXT] ?? missing();
      return at;
    }
    const at = this.slots * STRIDE;
    this.slots++;
    if (at + STRIDE > this.data.length) {
      const larger = new Int32Array(this.data.length * 2);
      larger.set(this.data);
      this.data = larger;
    }
    return at;
  }

  private adopt(parent: number, child: number): void {
    const d = this.data;
    d[child + PARENT] = parent;
    d[child + NEXT] = d[parent + FIRST] ?? missing();
    d[parent + FIRST] = child;
  }

  private leaf(item: number, x: number, y: number): number {
    const at = this.slot();
    const d = this.data;
    d[at + ITEM] = item;
    d[at + FIRST] = -1;
    d[at + TIGHT_X] = x;
    d[at + TIGHT_Y] = y;
    return at;
  }

  /** Adds a piece as a further part of the internal node `at`; returns its leaf. Call `settle` afterwards. */
  addTo(at: number, item: number, x: number, y: number): number {
    const leaf = this.leaf(item, x, y);
    this.adopt(at, leaf);
    this.area += x * y;
    return leaf;
  }

  /** Adds an empty node across `at`, to be filled at once; returns it. */
  addNode(at: number): number {
    const node = this.slot();
    const d = this.data;
    d[node + ITEM] = INTERNAL;
    d[node + DIRECTION] = 1 - (d[at + DIRECTION] ?? missing());
    d[node + FIRST] = -1;
    this.adopt(at, node);
    return node;
  }

  /** Puts a piece beside the leaf `at`, the two becoming one node across the parent's direction. */
  pairWith(at: number, item: number, x: number, y: number): number {
    const node = this.slot();
    const d = this.data;
    const parent = d[at + PARENT] ?? missing();
    d[node + ITEM] = INTERNAL;
    d[node + DIRECTION] = 1 - (d[parent + DIRECTION] ?? missing());
    d[node + FIRST] = -1;
    this.unlink(at);
    this.adopt(parent, node);
    this.adopt(node, at);
    const leaf = this.leaf(item, x, y);
    this.adopt(node, leaf);
    this.area += x * y;
    return leaf;
  }

  private unlink(at: number): void {
    const d = this.data;
    const parent = d[at + PARENT] ?? missing();
    let before = d[parent + FIRST] ?? missing();
    if (before === at) {
      d[parent + FIRST] = d[at + NEXT] ?? missing();
      return;
    }
    while (d[before + NEXT] !== at) before = d[before + NEXT] ?? missing();
    d[before + NEXT] = d[at + NEXT] ?? missing();
  }

  private release(at: number): void {
    this.data[at + ITEM] = DEAD;
    this.data[at + NEXT] = this.free;
    this.free = at;
  }

  /** Takes the subtree at `at` (not the root) off the sheet, reporting each piece; call `settle` afterwards. */
  remove(at: number, taken: (item: number) => void): void {
    const d = this.data;
    let parent = d[at + PARENT] ?? missing();
    this.unlink(at);
    this.discard(at, taken);
    while (parent !== 0 && d[parent + FIRST] === -1) {
      const empty = parent;
      parent = d[parent + PARENT] ?? missing();
      this.unlink(empty);
      this.release(empty);
    }
    if (parent !== 0) this.dissolveSingle(parent);
  }

  private discard(at: number, taken: (item: number) => void): void {
    const d = this.data;
    const item = d[at + ITEM] ?? missing();
    if (item >= 0) {
      this.area -= (d[at + TIGHT_X] ?? missing()) * (d[at + TIGHT_Y] ?? missing());
      taken(item);
    } else {
      for (let child = d[at + FIRST] ?? missing(); child !== -1; ) {
        const next = d[child + NEXT] ?? missing();
        this.discard(child, taken);
        child = next;
      }
    }
    this.release(at);
  }

  /** A node of one part is that part: a leaf moves up, the parts of a node move into its grandparent. */
  private dissolveSingle(at: number): void {
    const d = this.data;
    const child = d[at + FIRST] ?? missing();
    if (d[child + NEXT] !== -1) return;
    const parent = d[at + PARENT] ?? missing();
    this.unlink(at);
    if ((d[child + ITEM] ?? missing()) >= 0) this.adopt(parent, child);
    else {
      for (let grand = d[child + FIRST] ?? missing(); grand !== -1; ) {
        const next = d[grand + NEXT] ?? missing();
        this.adopt(parent, grand);
        grand = next;
      }
      this.release(child);
    }
    this.release(at);
  }

  eachPiece(take: (item: number) => void): void {
    for (let at = 0; at < this.slots * STRIDE; at += STRIDE) {
      const item = this.data[at + ITEM] ?? missing();
      if (item >= 0) take(item);
    }
  }

  /** Recomputes tight sizes upward and caps downward. */
  settle(): void {
    this.tighten(0);
    const d = this.data;
    d[CAP_X] = this.w;
    d[CAP_Y] = this.h;
    this.roomX = 0;
    this.roomY = 0;
    this.spread(0);
  }

  private tighten(at: number): void {
    const d = this.data;
    const along = TIGHT_X + (d[at + DIRECTION] ?? missing());
    const across = along === TIGHT_X ? TIGHT_Y : TIGHT_X;
    let sum = 0;
    let widest = 0;
    let leaves = 0;
    for (let child = d[at + FIRST] ?? missing(); child !== -1; child = d[child + NEXT] ?? missing()) {
      if (d[child + ITEM] === INTERNAL) {
        this.tighten(child);
        leaves += d[child + LEAVES] ?? missing();
      } else leaves++;
      sum += d[child + along] ?? missing();
      widest = Math.max(widest, d[child + across] ?? missing());
    }
    d[at + along] = sum;
    d[at + across] = widest;
    d[at + LEAVES] = leaves;
  }

  private spread(at: number): void {
    const d = this.data;
    const direction = d[at + DIRECTION] ?? missing();
    const along = direction === ALONG_X ? 0 : 1;
    const across = 1 - along;
    const slack = (d[at + CAP_X + along] ?? missing()) - (d[at + TIGHT_X + along] ?? missing());
    const cap = d[at + CAP_X + across] ?? missing();
    const depth = (d[at + DEPTH] ?? missing()) + 1;
    let narrowest = cap;
    for (let child = d[at + FIRST] ?? missing(); child !== -1; child = d[child + NEXT] ?? missing()) {
      d[child + CAP_X + along] = (d[child + TIGHT_X + along] ?? missing()) + slack;
      d[child + CAP_X + across] = cap;
      d[child + DEPTH] = depth;
      if (d[child + ITEM] === INTERNAL) this.spread(child);
      else narrowest = Math.min(narrowest, d[child + TIGHT_X + across] ?? missing());
    }
    const beside = cap - narrowest;
    const roomX = along === 0 ? slack : beside;
    const roomY = along === 0 ? beside : slack;
    if (roomX > this.roomX) this.roomX = roomX;
    if (roomY > this.roomY) this.roomY = roomY;
  }
}
