/** Nodes and weights of a Gauss-Legendre rule on 0..1. */
import { itemAt } from "../../../units/certain.ts";

interface GaussRule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/**
 * Gauss-Legendre rule of `order` points on 0..1: Newton on the Legendre recurrence from the usual cosine guess.
 * Source: Abramowitz & Stegun 25.4.29-30 (memory, unverified; the tests integrate polynomials exactly).
 */
export function gaussRule(order: number): GaussRule {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < order; i++) {
    let z = Math.cos((Math.PI * (i + 0.75)) / (order + 0.5));
    let slope = 0;
    for (let newton = 0; newton < 8; newton++) {
      let value = 1;
      let previous = 0;
      for (let j = 0; j < order; j++) {
        [value, previous] = [((2 * j + 1) * z * value - j * previous) / (j + 1), value];
      }
      slope = (order * (z * value - previous)) / (z * z - 1);
      z -= value / slope;
    }
    nodes.push((1 - z) / 2);
    weights.push(1 / ((1 - z * z) * slope * slope));
  }
  return { nodes, weights };
}

/**
 * Row i holds the weights that carry values at the rule's nodes to their integral from 0 to node i: the exact integral
 * of the polynomial through all the values (Lagrange basis, integrated by the rule itself).
 */
export function integralToNodes({ nodes, weights }: GaussRule): readonly (readonly number[])[] {
  const basis = (own: number, x: number) =>
    nodes.reduce((product, node) => (node === own ? product : (product * (x - node)) / (own - node)), 1);
  return nodes.map((end) =>
    nodes.map((own) => end * weights.reduce((sum, weight, k) => sum + weight * basis(own, end * itemAt(nodes, k)), 0)),
  );
}
