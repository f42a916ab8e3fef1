/** What the State cell of a workbook says; the pane looks for the same words. */
export const RUNNING = "The functions are running.";
export const FROZEN = "Values only, for reading: nothing in this copy is calculated.";
export const DEAD =
  "The functions are NOT running here: every figure you see is an old one or an error. Install the add-in, or do not use this workbook for work.";
export const ZEROS =
  "This Excel passes blank cells to the functions as 0, so their answers are wrong: update Excel, and quote nothing until then.";
