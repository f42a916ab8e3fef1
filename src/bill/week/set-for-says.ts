import { showThickness } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { Step } from "./steps.ts";

/** What a machine is set up for: "A36 0.250 in (1/4)", "V 2, Plain"; "" at a bench. */
export function setForSays({ setFor, change, line: { plan } }: Step, system: UnitSystem): string {
  if (setFor === "" || change === 0) return setFor;
  const sheet = `${plan.line.material.name} ${plan.line.thickness}`;
  return setFor === sheet ? `${plan.line.material.name} ${showThickness(plan.line.thickness, system)}` : setFor;
}
