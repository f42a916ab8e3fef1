import type { Material } from "../../data/materials/material.ts";

/** A temper that cracks below its table, whatever the nose: a least radius is published for it and nothing tighter is usual. */
export const cracks = ({ usualRadius, radiusRule }: Pick<Material, "usualRadius" | "radiusRule">): boolean =>
  usualRadius === undefined && radiusRule !== undefined;
