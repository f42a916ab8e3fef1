/** Formulas as the file stores them. */
import { findRecord, NAMESPACE } from "../../cells/catalogue.ts";
import { publicName } from "../../cells/record/record.ts";
import { missing } from "../../units/certain.ts";

/** A call with its arguments by name, in the record's own order; an argument left out in between stays blank. */
export function shop(name: string, given: Readonly<Record<string, string>> = {}): string {
  const record = findRecord(name);
  if (!record) throw new Error(`function must be one of the catalogue; got ${name}`);
  const names = Object.keys(record.parameters).map(publicName);
  const unknown = Object.keys(given).filter((key) => !names.includes(key));
  if (unknown.length > 0) throw new Error(`argument must be one of ${names.join(", ")}; got ${unknown.join(", ")}`);
  const last = Math.max(-1, ...Object.keys(given).map((key) => names.indexOf(key)));
  return stored(
    name,
    names.slice(0, last + 1).map((key) => given[key] ?? ""),
  );
}

/** WORKING takes the arguments of the function it explains. */
export const working = (name: string, given: Readonly<Record<string, string>>): string =>
  shop(name, given).replace(/^[^(]+\(/, `${prefixed("WORKING")}("${name}",`);

const prefixed = (name: string): string => `_xldudf_${NAMESPACE}_${name.replaceAll(".", "_")}`;
const stored = (name: string, values: readonly string[]): string => `${prefixed(name)}(${values.join(",")})`;

/** A1# in the file. */
export const spillOf = (cell: string): string => `_xlfn.ANCHORARRAY(${cell})`;
export const lookUp = (wanted: string, among: string, answer: string): string =>
  `_xlfn.XLOOKUP(${wanted},${among},${answer},"")`;

/** Functions of later date than the file format, as they stand in examples. */
const LATER = /\b(VSTACK|HSTACK)\(/g;
/** A formula as it is typed, "=SHOP.BEND.SETBACK(0.04,0.16,90)", as the file stores it. */
export const storedFormula = (typed: string): string =>
  typed
    .replace(/^=/, "")
    .replace(new RegExp(`\\b${NAMESPACE}\\.([A-Z.]+)\\(`, "g"), (_, name: string) => `${prefixed(name)}(`)
    .replace(LATER, "_xlfn.$1(");

/** The other way round: a stored formula as it is typed into Excel. */
export const calledTyped = (formula: string): string =>
  `=${formula
    .replace(
      new RegExp(`_xldudf_${NAMESPACE}_([A-Z_]+)\\(`, "g"),
      (_, name: string) => `${NAMESPACE}.${name.replaceAll("_", ".")}(`,
    )
    .replace(/_xlfn\.ANCHORARRAY\(([^()]*)\)/g, "$1#")
    .replace(/_xlfn\.(?:_xlws\.)?/g, "")}`;

/** Functions of the catalogue that a stored formula calls. */
export const calledIn = (formula: string): string[] =>
  [...formula.matchAll(new RegExp(`_xldudf_${NAMESPACE}_([A-Z_]+)\\(`, "g"))].map(([, name]) =>
    (name ?? missing()).replaceAll("_", "."),
  );
