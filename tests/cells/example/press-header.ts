/** Travels of brake, gauge and die, as BEND.ORDER reads them. */
export const PRESS_HEADER = [
  "Opening (in)",
  "Shoulder radius (mm)",
  "Die angle (deg)",
  "Finger from (mm)",
  "Finger to (mm)",
  "Nearest stop (mm)",
  "Furthest stop (mm)",
  "Finger draws back",
  "Open height (mm)",
  "Stroke (mm)",
  "Clearance (mm)",
  "Off the end",
];
