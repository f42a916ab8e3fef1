import { step, type Working } from "../../units/working.ts";
import { type Seconds, seconds } from "./seconds.ts";

/** Set-up of a line at the brake: the first job on a set of tools takes longer by the shop's factor. Whole seconds. */
export const brakeSetUp = (usual: Seconds, firstOnTools: boolean, factor: number, work?: Working): Seconds =>
  step(
    work,
    "S brake",
    firstOnTools ? "brake set-up, first job on these tools" : "brake set-up, tools as before",
    seconds(Math.ceil(usual * (firstOnTools ? factor : 1))),
    "s",
    "the workbook's set-up and factor",
  );
