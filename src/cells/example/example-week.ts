/** Open work of two jobs as an argument of a formula. */
export const EXAMPLE_STEPS =
  'VSTACK({"Job","Part","Station","Set-up (min)","Total (min)","Set for","Due"},{"Fair","A1","Shear",5,65,"10 ga","2026-03-03"},{"Fair","A1","Brake",30,240,"V 1","2026-03-03"},{"Pier","B1","Shear",5,35,"10 ga","2026-03-04"})';
