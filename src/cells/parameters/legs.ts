import { LEGS, type Legs } from "../../calc/bend/legs.ts";
import type { CellParameter } from "../record/record.ts";
import { choice } from "./choice.ts";

/** `legs`: where the drawing measures a flange to. */
export const legs = (): CellParameter<Legs> =>
  choice({
    description:
      'Where flanges are measured to: "outside" corner, "tangent" point, "inside" corner, or "DIN" (outer tangent from 90 degrees)',
    words: LEGS,
    fallback: "outside",
  });
