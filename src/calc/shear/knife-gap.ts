import { type Millimeters, mm, type Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/**
 * Gap between the knives: a share of the thickness, per side; on a shear there is one side, so it is not doubled.
 * Source: Groover 5e Table 19.1 (read; blanking values), hot-rolled plate 5-8 % (memory).
 */
export const knifeGap = (thickness: Millimeters, share: Ratio, source: string, work?: Working): Millimeters => {
  step(work, "Ac", "gap as a share of the thickness", share, "", source);
  return step(work, "c", "knife gap", mm(share * thickness), "mm", "Ac t, Groover 5e eq. 19.2 (read)");
};
