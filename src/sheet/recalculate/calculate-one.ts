import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { compileTemplate } from "../evaluate/compile-template.ts";
import type { CustomFunctions } from "../evaluate/custom-functions.ts";
import { Frame } from "../evaluate/frame.ts";
import { Keep } from "../evaluate/keep.ts";
import { dereference } from "../evaluate/reference.ts";
import { DEEPEST_NESTING, formulaDepth } from "../formula/depth.ts";
import { parseFormula, SyntaxRefusal } from "../formula/parse.ts";
import { serialNow } from "../formula/serial-now.ts";
import { emptyGrid } from "./empty-grid.ts";

interface FormulaAnswer {
  readonly value: CellValue | CellMatrix;
  /** Unit of the answer when the formula is one call of a custom function, else null. */
  readonly unit: string | null;
}

/**
 * Evaluates one formula on a workbook of one cell, with or without the leading "=". Never throws: what is not a formula
 * is #VALUE! with a message, an unknown function #NAME? with the nearest name. An array comes back as rows.
 */
export function evaluateFormula(text: string, functions: CustomFunctions): FormulaAnswer {
  let unit: string | null = null;
  // The unit travels beside the value: the last call made is the root's when the root is a custom function.
  const listening: CustomFunctions = {
    namespace: functions.namespace,
    resolve: (name) => functions.resolve(name),
    names: () => functions.names(),
    call: (name, args) => {
      const answer = functions.call(name, args);
      unit = answer.unit;
      return answer;
    },
  };
  try {
    if (formulaDepth(text) > DEEPEST_NESTING) {
      throw new SyntaxRefusal(`formula must be nested at most ${DEEPEST_NESTING} deep`);
    }
    const grid = emptyGrid(listening, serialNow(new Date()));
    const template = compileTemplate(grid, parseFormula(text), { sheet: 0, row: 0, column: 0 }, true);
    const value = dereference(template.code(new Frame(grid, 0, 0, 0, template.literals)), new Frame(grid, 0, 0, 0, []));
    return {
      value: plain(value, template.rootCustom !== undefined),
      unit: template.rootCustom === undefined ? null : unit,
    };
  } catch (error) {
    if (error instanceof SyntaxRefusal)
      return { value: new CellError("#VALUE!", notAFormula(text, error)), unit: null };
    if (error instanceof Keep) return { value: new CellError("#VALUE!", beyond(text, error)), unit: null };
    if (error instanceof RangeError)
      return { value: new CellError("#VALUE!", "formula nested too deeply"), unit: null };
    throw error;
  }
}

const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}...` : text);

const notAFormula = (text: string, error: SyntaxRefusal): string =>
  `formula must be a worksheet formula; got ${shortened(text)}; ${error.message}`;

/** What only a workbook, its files or a larger engine can answer. */
const beyond = (text: string, { detail }: Keep): string =>
  `formula must be one that can be calculated alone; got ${shortened(text)}; ${detail}`;

/** A formula that refers to nothing answers 0 like in Excel; what a custom function leaves empty stays empty. */
const plain = (value: CellValue | CellMatrix, custom: boolean): CellValue | CellMatrix =>
  value === null && !custom ? 0 : value;
