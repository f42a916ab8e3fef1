/** Changes one figure at a time by 1 % or by one step and asks the published answers whether they notice. */
import { createRequire } from "node:module";
import { Script } from "node:vm";
import type { Constant } from "./constants.ts";
import type { SwitchedBundle } from "./switched-bundle.ts";

const HANG_MS = 20_000; // chosen: far above a whole run of the published answers

export interface Verdict extends Constant {
  /** The published answer that failed; "error" where the change breaks the program; undefined where nothing noticed. */
  readonly noticedBy: string | undefined;
}

/** A figure of the data by 1 %; in calculations a whole number by one step, because it counts or chooses. */
export const changed = ({ file, value }: Pick<Constant, "file" | "value">): readonly number[] =>
  value === 0 || (Number.isInteger(value) && file.startsWith("src/calc/"))
    ? [value + 1, value - 1]
    : [value * 1.01, value * 0.99];

export class Perturbation {
  readonly #script: Script;
  readonly #require = createRequire(import.meta.url);

  constructor(readonly bundle: SwitchedBundle) {
    const wrapped = `(($figure, module, require) => {${bundle.code}\nreturn module.exports.firstMiss();})`;
    this.#script = new Script(`$run = ${wrapped};`);
  }

  /** The first published answer missed when the figure `id` is `value`. */
  run(id: number, value: number): string | undefined {
    const scope = globalThis as unknown as { $run?: unknown; $ask?: unknown };
    this.#script.runInThisContext();
    const $run = scope.$run as (...given: unknown[]) => string | undefined;
    const figure = (each: number, own: number) => (each === id ? value : own);
    scope.$ask = () => $run(figure, { exports: {} }, this.#require);
    try {
      return new Script("$ask()").runInThisContext({ timeout: HANG_MS }) as string | undefined;
    } catch (problem) {
      return `error: ${problem instanceof Error ? problem.message : String(problem)}`.slice(0, 80);
    }
  }

  verdict(constant: Constant): Verdict {
    for (const value of changed(constant)) {
      const noticedBy = this.run(constant.id, value);
      if (noticedBy !== undefined) return { ...constant, noticedBy };
    }
    return { ...constant, noticedBy: undefined };
  }
}
