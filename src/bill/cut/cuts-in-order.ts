import { type CutListRow, cutList } from "../../calc/cutting/cut-list.ts";
import type { CutGroup } from "./plan-cutting.ts";

/** The shear's cuts of a group as a person follows them; none for the waterjet. */
export const cutsInOrder = ({ plan }: CutGroup): readonly CutListRow[] => (plan ? cutList(plan) : []);
