import type { AstExpression } from "@borgar/fx/xlsx";
import { SyntaxRefusal } from "../formula/parse.ts";
import { compileCall } from "./call.ts";
import type { Compiling, Names } from "./compiling.ts";
import type { Code, Frame, Scope, WorksheetFunction } from "./frame.ts";
import { Lambda, NUM, VALUE, type Value } from "./value.ts";

/** Names as a formula means them: files write LAMBDA's and LET's with a prefix. */
export const bareName = (name: string): string => name.replace(/^_xl(?:pm|op)\./i, "").toLowerCase();

export function scopeAt(frame: Frame, hops: number): Value {
  let scope = frame.scope;
  for (let i = 0; i < hops; i++) scope = scope?.outer;
  return scope?.value;
}

/** LAMBDA(x,[y],calculation): a value to be called. */
export function compileLambda(
  compiler: Compiling,
  node: Extract<AstExpression, { type: "LambdaExpression" }>,
  names: Names,
): Code {
  const parameters = node.params.map((parameter) => bareName(parameter.name));
  const least = node.params.filter((parameter) => !/^_xlop\./i.test(parameter.name)).length;
  if (!node.body) throw new SyntaxRefusal("LAMBDA needs a calculation as its last argument");
  const body = compiler.code(node.body, true, [...names, ...parameters]);
  return (frame) => {
    const outer = frame.scope;
    return new Lambda(least, parameters.length, (args) => {
      if (args.length < least || args.length > parameters.length) return VALUE;
      return within(frame, outer, parameters, args, body);
    });
  };
}

/** SUM in BYROW(A1:C9,SUM): the function itself, to be called with values later. */
export function functionValue(compiler: Compiling, fn: WorksheetFunction): Code {
  if (fn.dynamic) compiler.dynamic = true;
  const byCount = new Map<number, Code>();
  const codeFor = (count: number): Code => {
    const known = byCount.get(count);
    if (known) return known;
    const names = Array.from({ length: count }, (_, i) => `argument ${i}`);
    const nodes = names.map((value): AstExpression => ({ type: "ReferenceIdentifier", value, kind: "name" }));
    const made = compileCall(compiler, fn, nodes, true, names);
    byCount.set(count, made);
    return made;
  };
  return (frame) =>
    new Lambda(fn.least, fn.most, (args) => {
      if (args.length < fn.least || args.length > fn.most) return VALUE;
      return within(frame, frame.scope, args, args, codeFor(args.length));
    });
}

/** LET(name, value, ..., calculation). */
export function compileLet(
  compiler: Compiling,
  node: Extract<AstExpression, { type: "LetExpression" }>,
  array: boolean,
  names: Names,
): Code {
  let inner = names;
  const values = node.declarations.map((declaration) => {
    const code = declaration.init ? compiler.code(declaration.init, array, inner) : () => null;
    inner = [...inner, bareName(declaration.id.name)];
    return code;
  });
  if (!node.body) throw new SyntaxRefusal("LET needs a calculation as its last argument");
  const body = compiler.code(node.body, array, inner);
  return (frame) => {
    const before: Scope | undefined = frame.scope;
    try {
      for (const value of values) frame.scope = { value: value(frame), outer: frame.scope };
      return body(frame);
    } finally {
      frame.scope = before;
    }
  };
}

/** Evaluates a body with the given values bound inside a scope. */
function within(
  frame: Frame,
  outer: Scope | undefined,
  parameters: readonly unknown[],
  args: readonly Value[],
  body: Code,
): Value {
  const before = frame.scope;
  let scope = outer;
  for (let i = 0; i < parameters.length; i++) scope = { value: args[i], outer: scope };
  frame.scope = scope;
  try {
    return body(frame);
  } catch (error) {
    // A LAMBDA that calls itself without end: Excel answers #NUM!.
    if (error instanceof RangeError) return NUM;
    throw error;
  } finally {
    frame.scope = before;
  }
}
