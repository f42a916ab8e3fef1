import { compileTemplate } from "../evaluate/compile-template.ts";
import type { Grid, Template } from "../evaluate/frame.ts";
import { Keep } from "../evaluate/keep.ts";
import { DEEPEST_NESTING, LONGEST_FORMULA } from "../formula/depth.ts";
import { formulaKey } from "../formula/key.ts";
import { parseFormula, SyntaxRefusal } from "../formula/parse.ts";
import { shiftFormula } from "../formula/shift.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";

/** Compiled formulas by row-relative key: a filled-down column is parsed and compiled once. */
export class Templates {
  private readonly byKey = new Map<string, Template>();

  constructor(private readonly grid: Grid) {}

  /** Gives the cell its template and literals, or its reason to keep its value. */
  compile(cell: FormulaCell): void {
    if (cell.template || cell.kept || cell.kind === "data-table") return;
    const { master } = cell;
    if (master && !/\$?[A-Z]{1,3}:\$?[A-Z]{1,3}(?!\d)|\d:\$?\d/i.test(master.text)) {
      this.compile(master);
      cell.template = master.template;
      cell.literals = master.literals;
      cell.kept = master.kept;
      return;
    }
    try {
      this.compileText(cell, master ? shiftFormula(master.text, master, cell) : cell.text);
    } catch (error) {
      if (error instanceof SyntaxRefusal) cell.kept = { reason: "unsupported-syntax", detail: error.message };
      else if (error instanceof Keep) cell.kept = error;
      else if (error instanceof RangeError) cell.kept = { reason: "depth", detail: "formula is nested too deeply" };
      else throw error;
    }
  }

  private compileText(cell: FormulaCell, text: string): void {
    if (text.length > LONGEST_FORMULA)
      throw new Keep("unsupported-syntax", `formula has ${text.length} signs; the limit is ${LONGEST_FORMULA}`);
    const array = cell.kind !== "normal";
    const { key, literals, cells, depth } = formulaKey(text, cell.row, cell.column);
    if (depth > DEEPEST_NESTING)
      throw new Keep("depth", `formula is nested ${depth} deep; the limit is ${DEEPEST_NESTING}`);
    const full = `${cell.sheet}${array ? "a" : "n"}${key}`;
    const known = this.byKey.get(full);
    if (known) {
      cell.template = known;
      cell.literals = literals;
      return;
    }
    const parsed = parseFormula(text);
    const template = compileTemplate(this.grid, parsed, cell, array);
    cell.template = template;
    cell.literals = template.literals;
    // The key's own scan must have seen the same literals and references, else it does not stand for the formula.
    const same =
      !template.local &&
      parsed.cells === cells &&
      parsed.literals.length === literals.length &&
      parsed.literals.every((literal, i) => literal === literals[i]);
    if (same) this.byKey.set(full, template);
  }
}
