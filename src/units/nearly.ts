/**
 * Comparisons that forgive the last bits a unit conversion leaves behind: 10 x 0.2 in is not below 2 in because one of
 * them came as millimeters. Relative 1e-9 is far below any gauge and far above rounding.
 */
const SLACK = 1e-9;

export const atLeast = (value: number, limit: number): boolean =>
  value >= limit - SLACK * Math.max(Math.abs(value), Math.abs(limit));

export const atMost = (value: number, limit: number): boolean => atLeast(limit, value);
