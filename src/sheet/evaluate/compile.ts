import type { AstExpression } from "@borgar/fx/xlsx";
import { CellError, type CellMatrix, type CellValue, ERROR_CODES, type ErrorCode } from "../../units/cell.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { functionName } from "../formula/function-name.ts";
import { SyntaxRefusal } from "../formula/parse.ts";
import { compileCall } from "./call.ts";
import type { Compiling, Names } from "./compiling.ts";
import type { Code, Frame, Grid, Template } from "./frame.ts";
import { keep } from "./keep.ts";
import { bareName, compileLambda, compileLet, functionValue, scopeAt } from "./lambda-code.ts";
import { applyBinary, binaryOperators, type Scalar, unaryOperators } from "./operators.ts";
import type { Precedent } from "./precedent.ts";
import { areasOf, dereference, intersect, join, overlap, unwrapped } from "./reference.ts";
import { compileRange, compileTable, type ReferenceCode } from "./reference-code.ts";
import { AreaList, errorOf, isMatrix, Lambda, NAME, NULL, RangeRef, VALUE, type Value } from "./value.ts";

/**
 * Turns a formula tree into closures. `array` says whether an expression is evaluated as an array formula (every
 * element) or as an ordinary one (one cell of a range by implicit intersection); parameters of kind "a" switch it on.
 */
export class Compiler implements Compiling {
  readonly precedents: Precedent[] = [];
  dynamic = false;
  local = false;

  constructor(
    readonly grid: Grid,
    readonly sheet: number,
    readonly row: number,
    readonly column: number,
  ) {}

  code(node: AstExpression, array: boolean, names: Names): Code {
    switch (node.type) {
      case "Literal": {
        if (typeof node.value === "boolean") return constant(node.value);
        const slot = Number(node.value);
        return (frame) => frame.literals[slot] ?? null;
      }
      case "ErrorLiteral":
        return constant(literalError(node.value));
      case "ArrayExpression": {
        const matrix = node.elements.map((row) => row.map((element) => arrayElement(element)));
        return constant(matrix);
      }
      case "ReferenceIdentifier":
        return this.reference(node.value, node.kind, names).code;
      case "UnaryExpression":
        return this.unary(node.operator, firstOf(node.arguments), array, names);
      case "BinaryExpression":
        return this.binary(node, array, names);
      case "CallExpression":
        return this.call(node, array, names);
      case "LambdaExpression":
        return compileLambda(this, node, names);
      case "LetExpression":
        return compileLet(this, node, array, names);
      default:
        throw new SyntaxRefusal(`cannot read ${(node as { type: string }).type}`);
    }
  }

  single(node: AstExpression, array: boolean, names: Names): (frame: Frame) => CellValue | CellMatrix {
    if (node.type === "ReferenceIdentifier") {
      const reference = this.reference(node.value, node.kind, names);
      if (reference.cell) return reference.cell;
      return array
        ? (frame) => dereference(reference.code(frame), frame)
        : (frame) => intersect(reference.code(frame), frame);
    }
    const code = this.code(node, array, names);
    if (node.type === "Literal" || node.type === "ArrayExpression") return code as (frame: Frame) => CellValue;
    return array ? (frame) => dereference(code(frame), frame) : (frame) => intersectOrKeep(code(frame), frame);
  }

  private reference(text: string, kind: string, names: Names): ReferenceCode {
    if (kind === "table") return compileTable(this, text);
    if (kind !== "name") return compileRange(this, text);
    const bound = names.lastIndexOf(bareName(text));
    if (bound >= 0) {
      const hops = names.length - 1 - bound;
      return { code: (frame) => scopeAt(frame, hops) };
    }
    return { code: this.definedName(text) };
  }

  private definedName(text: string): Code {
    const bang = text.lastIndexOf("!");
    const prefix = bang >= 0 ? text.slice(0, bang).replace(/^'|'$/g, "").replaceAll("''", "'") : "";
    const book = /^\[(\d+)\]/.exec(prefix);
    if (book && book[1] !== "0") return () => keep("external-link", text);
    const sheetName = prefix.replace(/^\[\d+\]/, "");
    const sheet = sheetName === "" ? this.sheet : this.grid.sheetIndex(sheetName);
    if (sheet === undefined) return constant(errorOf("#REF!"));
    const name = text.slice(bang + 1);
    const found = this.grid.definedName(name, sheet);
    if (found === undefined) {
      const table = this.grid.table(name);
      if (table) return compileTable(this, `${name}[]`).code;
      const fn = this.grid.functions.find(functionName(name, "").name);
      if (fn) return functionValue(this, fn);
      return constant(new CellError("#NAME?", `${name} is neither a name nor a function of this workbook`));
    }
    if (found === null || typeof found !== "object" || found instanceof CellError) return constant(found);
    this.precedents.push(...found.precedents);
    this.dynamic ||= found.dynamic;
    return (frame) => {
      const template = this.grid.definedName(name, sheet) as Template;
      return template.code(inCell(frame, template.literals));
    };
  }

  private unary(operator: string, argument: AstExpression, array: boolean, names: Names): Code {
    if (operator === "@") {
      const code = this.code(argument, array, names);
      return (frame) => intersect(code(frame), frame);
    }
    if (operator === "#") {
      const code = this.code(argument, array, names);
      this.dynamic = true;
      return (frame) => {
        const value = code(frame);
        if (!(value instanceof RangeRef)) return value instanceof CellError ? value : errorOf("#REF!");
        return frame.grid.spillOf(value.sheet, value.top, value.left) ?? errorOf("#REF!");
      };
    }
    const code = this.single(argument, array, names);
    const operate = unaryOperators[operator];
    if (!operate) throw new SyntaxRefusal(`unknown operator ${operator}`);
    return (frame) => {
      const value = code(frame);
      return isMatrix(value) ? value.map((row) => row.map(operate)) : operate(value);
    };
  }

  private binary(node: Extract<AstExpression, { type: "BinaryExpression" }>, array: boolean, names: Names): Code {
    // A long chain a+b+c+... is a tree as deep as the formula is long: walk its left spine instead of recursing.
    const steps: { operate: Scalar; right: AstExpression }[] = [];
    let left: AstExpression = node;
    while (left.type === "BinaryExpression") {
      const operate = binaryOperators[left.operator];
      if (!operate) break;
      steps.push({ operate, right: itemAt(left.arguments, 1) });
      left = firstOf(left.arguments);
    }
    if (steps.length === 0) return this.referenceOperator(node, array, names);
    const first = this.single(left, array, names);
    const rest = steps.reverse().map(({ operate, right }) => ({ operate, right: this.single(right, array, names) }));
    const [only, ...more] = rest;
    if (only && more.length === 0) {
      const { operate, right } = only;
      return (frame) => applyBinary(operate, first(frame), right(frame));
    }
    return (frame) => {
      let value = first(frame);
      for (const { operate, right } of rest) value = applyBinary(operate, value, right(frame));
      return value;
    };
  }

  private referenceOperator(
    node: Extract<AstExpression, { type: "BinaryExpression" }>,
    array: boolean,
    names: Names,
  ): Code {
    const a = this.code(firstOf(node.arguments), array, names);
    const b = this.code(itemAt(node.arguments, 1), array, names);
    if (node.operator === ":") {
      this.dynamic = true;
      return (frame) => join(a(frame), b(frame));
    }
    if (node.operator === ",") {
      return (frame) => {
        const [x, y] = [a(frame), b(frame)];
        if (x instanceof CellError) return x;
        if (y instanceof CellError) return y;
        return new AreaList([...areasOf(x), ...areasOf(y)]);
      };
    }
    return (frame) => {
      const both = areasOf(a(frame)).flatMap((x) => areasOf(b(frame)).flatMap((y) => overlap(x, y) ?? []));
      return both.length === 0 ? NULL : both.length === 1 ? both[0] : new AreaList(both);
    };
  }

  private call(node: Extract<AstExpression, { type: "CallExpression" }>, array: boolean, names: Names): Code {
    const callee = node.callee as AstExpression | { type: "Identifier"; name: string };
    if (callee.type !== "Identifier") {
      return this.applyLambda(this.code(callee, array, names), node.arguments, names);
    }
    const bound = names.lastIndexOf(bareName(callee.name));
    if (bound >= 0) {
      const hops = names.length - 1 - bound;
      return this.applyLambda((frame) => scopeAt(frame, hops), node.arguments, names);
    }
    const { name, custom } = functionName(callee.name, this.grid.custom.namespace);
    if (custom) {
      const canonical = this.grid.custom.resolve(name);
      if (canonical !== undefined) return this.customCall(canonical, node.arguments, names);
      return (frame) => frame.grid.unknownFunction(`${frame.grid.custom.namespace}.${name}`);
    }
    const known = this.grid.functions.find(name);
    if (known) {
      if (known.dynamic) this.dynamic = true;
      return compileCall(this, known, node.arguments, array, names);
    }
    if (this.grid.definedName(callee.name, this.sheet) !== undefined) {
      return this.applyLambda(this.definedName(callee.name), node.arguments, names);
    }
    return (frame) => frame.grid.unknownFunction(callee.name);
  }

  private customCall(canonical: string, nodes: readonly (AstExpression | null)[], names: Names): Code {
    const args = nodes.map((node) => (node === null ? undefined : this.single(node, true, names)));
    return (frame) =>
      frame.grid.custom.call(
        canonical,
        args.map((arg) => arg?.(frame)),
      ).value;
  }

  private applyLambda(target: Code, nodes: readonly (AstExpression | null)[], names: Names): Code {
    const args = nodes.map((node) => (node === null ? undefined : this.code(node, true, names)));
    return (frame) => {
      const lambda = target(frame);
      if (lambda instanceof CellError) return lambda;
      if (!(lambda instanceof Lambda)) return VALUE;
      return lambda.call(args.map((arg) => arg?.(frame)));
    };
  }
}

const constant =
  (value: Value): Code =>
  () =>
    value;

/** A computed array in an ordinary formula stays an array: only references are narrowed to one cell. */
function intersectOrKeep(value: Value, frame: Frame): CellValue | CellMatrix {
  return isMatrix(value) ? unwrapped(value) : intersect(value, frame);
}

function inCell(frame: Frame, literals: readonly (number | string)[]): Frame {
  const copy = Object.create(Object.getPrototypeOf(frame)) as Frame;
  return Object.assign(copy, frame, { literals, scope: undefined });
}

function literalError(text: string): CellError {
  const code = text.toUpperCase();
  return (ERROR_CODES as readonly string[]).includes(code) ? errorOf(code as ErrorCode) : NAME;
}

function arrayElement(node: AstExpression): CellValue {
  if (node.type === "Literal") return node.value;
  if (node.type === "ErrorLiteral") return literalError(node.value);
  throw new SyntaxRefusal("an array constant holds numbers, text, TRUE or FALSE and errors only");
}
