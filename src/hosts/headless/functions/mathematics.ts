import { finite } from "../evaluate/coerce.ts";
import { DIV0, NUM } from "../evaluate/value.ts";
import { define, type WorksheetFunction } from "./define.ts";
import { roundTo } from "./round-to.ts";

const radians = Math.PI / 180;

export const mathematics: readonly WorksheetFunction[] = [
  define("ABS", "n", (x) => Math.abs(x)),
  define("SIGN", "n", (x) => Math.sign(x)),
  define("SQRT", "n", (x) => (x < 0 ? NUM : Math.sqrt(x))),
  define("EXP", "n", (x) => finite(Math.exp(x), NUM)),
  define("LN", "n", (x) => (x <= 0 ? NUM : Math.log(x))),
  define("LOG10", "n", (x) => (x <= 0 ? NUM : Math.log10(x))),
  define("PI", "", () => Math.PI),
  define("SIN", "n", (x) => Math.sin(x)),
  define("COS", "n", (x) => Math.cos(x)),
  define("TAN", "n", (x) => Math.tan(x)),
  define("RADIANS", "n", (x) => x * radians),
  define("DEGREES", "n", (x) => x / radians),
  define("INT", "n", (x) => Math.floor(x)),
  define("MOD", "nn", (x, y) => (y === 0 ? DIV0 : finite(x - y * Math.floor(x / y), NUM))),
  define("ROUND", "nn", (x, digits) => roundTo(x, digits, Math.round)),
  define("ROUNDUP", "nn", (x, digits) => roundTo(x, digits, Math.ceil)),
  define("ROUNDDOWN", "nn", (x, digits) => roundTo(x, digits, Math.floor)),
  define("TRUNC", "n?n", (x, digits = 0) => roundTo(x, digits, Math.floor)),
];
