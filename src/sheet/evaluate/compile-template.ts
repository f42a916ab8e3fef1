import type { AstExpression } from "@borgar/fx/xlsx";
import type { CellValue } from "../../units/cell.ts";
import { entryOf, firstOf, itemAt } from "../../units/certain.ts";
import { functionName } from "../formula/function-name.ts";
import type { Parsed } from "../formula/parse.ts";
import { Compiler } from "./compile.ts";
import type { Code, Grid, Template } from "./frame.ts";
import { lift } from "./lift.ts";
import { binaryOperators, cancels } from "./operators.ts";
import { isMatrix } from "./value.ts";

/** Compiles a whole formula. `array` for array and dynamic-array formulas. */
export function compileTemplate(
  grid: Grid,
  parsed: Pick<Parsed, "tree" | "literals" | "wrapped">,
  at: { readonly sheet: number; readonly row: number; readonly column: number },
  array: boolean,
): Template {
  const compiler = new Compiler(grid, at.sheet, at.row, at.column);
  const { tree } = parsed;
  const sums = !parsed.wrapped && tree.type === "BinaryExpression" && (tree.operator === "+" || tree.operator === "-");
  return {
    code: sums ? snapping(compiler, tree, array) : compiler.code(tree, array, []),
    precedents: compiler.precedents,
    literals: parsed.literals,
    dynamic: compiler.dynamic,
    local: compiler.local,
    rootCustom: rootCustom(grid, tree),
  };
}

/** The formula's last addition or subtraction: a result that is only rounding noise becomes 0. */
function snapping(
  compiler: Compiler,
  tree: Extract<AstExpression, { type: "BinaryExpression" }>,
  array: boolean,
): Code {
  const left = compiler.single(firstOf(tree.arguments), array, []);
  const right = compiler.single(itemAt(tree.arguments, 1), array, []);
  const operate = entryOf({ get: (sign: string) => binaryOperators[sign] }, tree.operator);
  const snapped = (a: CellValue, b: CellValue): CellValue => {
    const result = operate(a, b);
    return typeof result === "number" && typeof a === "number" && typeof b === "number" && cancels(result, a, b)
      ? 0
      : result;
  };
  return (frame) => {
    const a = left(frame);
    const b = right(frame);
    return isMatrix(a) || isMatrix(b) ? lift([a, b], ([x, y]) => snapped(x, y)) : snapped(a, b);
  };
}

function rootCustom(grid: Grid, tree: AstExpression): string | undefined {
  if (tree.type !== "CallExpression" || tree.callee.type !== "Identifier") return undefined;
  const { name, custom } = functionName(tree.callee.name, grid.custom.namespace);
  return custom ? grid.custom.resolve(name) : undefined;
}
