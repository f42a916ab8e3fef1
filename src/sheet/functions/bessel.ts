import { finite } from "../evaluate/coerce.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { NUM } from "../evaluate/value.ts";
import { define } from "./define.ts";

/**
 * Bessel functions by their integrals (Abramowitz and Stegun 9.1.21, 9.1.22, 9.6.19, 9.6.24). Over a full period, and for
 * integrands that die away at both ends, the trapezoidal rule converges as fast as the digits of a double run out.
 */
const POINTS = 400;

function periodic(f: (theta: number) => number): number {
  let sum = (f(0) + f(Math.PI)) / 2;
  for (let i = 1; i < POINTS; i++) sum += f((Math.PI * i) / POINTS);
  return sum / POINTS;
}

const besselJ = (x: number, n: number): number => periodic((t) => Math.cos(n * t - x * Math.sin(t)));
const besselI = (x: number, n: number): number => periodic((t) => Math.exp(x * Math.cos(t)) * Math.cos(n * t));

/** Integral from 0 to where the integrand is gone, by Simpson's rule. */
function simpson(f: (t: number) => number, end: number, steps: number): number {
  const h = end / steps;
  let sum = f(0) + f(end);
  for (let i = 1; i < steps; i++) sum += f(i * h) * (i % 2 ? 4 : 2);
  return (sum * h) / 3;
}

/** Where exp(-x sinh t + n t) has fallen below 1e-320. */
const reach = (x: number, n: number): number => Math.asinh((740 + n * 20) / x);

function besselY(x: number, n: number): number {
  const first = simpson((t) => Math.sin(x * Math.sin(t) - n * t), Math.PI, 20_000) / Math.PI;
  const sign = n % 2 ? -1 : 1;
  const second =
    simpson((t) => (Math.exp(n * t) + sign * Math.exp(-n * t)) * Math.exp(-x * Math.sinh(t)), reach(x, n), 40_000) /
    Math.PI;
  return first - second;
}

const besselK = (x: number, n: number): number =>
  simpson((t) => Math.exp(-x * Math.cosh(t)) * Math.cosh(n * t), reach(x, n), 20_000);

const of = (name: string, positive: boolean, compute: (x: number, n: number) => number): WorksheetFunction =>
  define(name, "nn", (x, order) => {
    const n = Math.trunc(order);
    return n < 0 || (positive && x <= 0) ? NUM : finite(compute(x, n), NUM);
  });

export const bessel: readonly WorksheetFunction[] = [
  of("BESSELJ", false, besselJ),
  of("BESSELI", false, besselI),
  of("BESSELY", true, besselY),
  of("BESSELK", true, besselK),
];
