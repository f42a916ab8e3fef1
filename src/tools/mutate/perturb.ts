/** Changes one figure at a time by 1 % or by one step and asks the published answers whether they notice. */
import { createRequire } from "node:module";
import { Script } from "node:vm";
import { itemAt } from "../../units/certain.ts";
import type { Constant } from "./constants.ts";
import type { SwitchedBundle } from "./switched-bundle.ts";

const HANG_MS = 4_000; // chosen: ten times a whole run of the published answers

export interface Perturbed extends Constant {
  /** The published answer that failed; "error" where the change breaks the program; undefined where nothing noticed. */
  readonly noticedBy: string | undefined;
  /** How many published answers use this figure. */
  readonly usedBy: number;
}

/** A figure of the data by 1 %; in calculations a whole number by one step, because it counts or chooses. */
export const changed = ({ file, value }: Pick<Constant, "file" | "value">): readonly number[] =>
  value === 0 || (Number.isInteger(value) && file.startsWith("src/calc/"))
    ? [value + 1, value - 1]
    : [value * 1.01, value * 0.99];

interface Row {
  readonly row: { readonly id: string };
  misses(): boolean;
}
type Figure = (id: number, own: number) => number;
type Load = (figure: Figure, module: object, require: NodeJS.Require) => readonly Row[];

export class Perturbation {
  readonly #load: Load;
  readonly #require = createRequire(import.meta.url);
  /** Per figure the rows that ask for it; "all" for a figure that is read when the program loads. */
  readonly #users = new Map<number, number[] | "all">();
  readonly rows: number;

  constructor(readonly bundle: SwitchedBundle) {
    const wrapped = `(($figure, module, require) => {${bundle.code}\nreturn module.exports.judged;})`;
    this.#load = new Script(wrapped).runInThisContext() as Load;
    this.rows = this.#watchUse();
  }

  #watchUse(): number {
    let row = -1;
    const rows = this.#load(
      (id, own) => {
        const known = this.#users.get(id);
        if (row < 0) this.#users.set(id, "all");
        else if (known === undefined) this.#users.set(id, [row]);
        else if (known !== "all" && known.at(-1) !== row) known.push(row);
        return own;
      },
      { exports: {} },
      this.#require,
    );
    rows.forEach((each, i) => {
      row = i;
      if (each.misses()) throw new Error(`"${each.row.id}" must hold before anything is changed`);
    });
    return rows.length;
  }

  /** The first published answer missed when the figure `id` is `value`. */
  #firstMiss(id: number, value: number, users: readonly number[] | "all"): string | undefined {
    const ask = (): string | undefined => {
      const rows = this.#load((each, own) => (each === id ? value : own), { exports: {} }, this.#require);
      return (users === "all" ? rows : users.map((i) => itemAt(rows, i))).find((row) => row.misses())?.row.id;
    };
    try {
      return within(HANG_MS, ask);
    } catch (problem) {
      return `error: ${problem instanceof Error ? problem.message : String(problem)}`.slice(0, 80);
    }
  }

  verdict(constant: Constant): Perturbed {
    const users = this.#users.get(constant.id) ?? [];
    const usedBy = users === "all" ? this.rows : users.length;
    const noticedBy =
      usedBy === 0
        ? undefined
        : changed(constant)
            .map((value) => () => this.#firstMiss(constant.id, value, users))
            .reduce<string | undefined>((found, ask) => found ?? ask(), undefined);
    return { ...constant, noticedBy, usedBy };
  }
}

/** A changed bound may never be reached: stops a calculation that hangs, which only a script of its own allows. */
function within<T>(ms: number, ask: () => T): T {
  const scope = globalThis as unknown as { $ask?: () => T };
  scope.$ask = ask;
  return new Script("$ask()").runInThisContext({ timeout: ms }) as T;
}
