import { compileTemplate } from "../evaluate/compile-template.ts";
import type { Grid, Template } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import { parseFormula, SyntaxRefusal } from "../formula/parse.ts";
import type { DefinedName } from "../workbook/workbook.ts";

/** Defined names, compiled when first used: the sheet's own before the workbook's. Relative parts count from A1. */
export class Names {
  private readonly byName = new Map<string, DefinedName>();
  private readonly compiled = new Map<string, Template>();
  private readonly open = new Set<string>();

  constructor(
    private readonly grid: Grid,
    names: readonly DefinedName[],
  ) {
    for (const name of names) this.byName.set(keyOf(name.name, name.scope), name);
  }

  find(name: string, sheet: number): Template | undefined {
    const own = keyOf(name, sheet);
    const key = this.byName.has(own) ? own : keyOf(name, undefined);
    const defined = this.byName.get(key);
    if (defined === undefined || defined.macro) return undefined;
    const ready = this.compiled.get(key);
    if (ready) return ready;
    // A name that refers to itself (a recursive LAMBDA) is looked up again when it is called.
    if (this.open.has(key)) return onDemand(() => this.compiled.get(key));
    this.open.add(key);
    const template = this.compile(defined, sheet);
    this.open.delete(key);
    this.compiled.set(key, template);
    return template;
  }

  private compile(defined: DefinedName, sheet: number): Template {
    const at = { sheet: defined.scope ?? sheet, row: 0, column: 0 };
    for (const text of [defined.text, `(${defined.text})`]) {
      try {
        return compileTemplate(this.grid, parseFormula(text), at, true);
      } catch (error) {
        if (!(error instanceof SyntaxRefusal)) throw error;
      }
    }
    return onDemand(() => keep("unsupported-syntax", `name ${defined.name}: ${defined.text}`));
  }
}

const keyOf = (name: string, scope: number | undefined): string => `${scope ?? ""}!${name.toLowerCase()}`;

const onDemand = (find: () => Template | undefined): Template => ({
  code: (frame) => find()?.code(frame),
  precedents: [],
  literals: [],
  dynamic: true,
  local: false,
  rootCustom: undefined,
});
