/** All published answers in one place: the tests go through them, and so does every check of how sharp they are. */
import { airBendCells, airBends } from "./air-bends.ts";
import { bendForce, bendForceFormulas } from "./bend-force.ts";
import { bendGeometry, bendGeometryFormulas } from "./bend-geometry.ts";
import { blankCells } from "./blank-cells.ts";
import { jetLiftTolerance } from "./jet-lift-tolerance.ts";
import { materials20262 } from "./materials-2026-2.ts";
import { measuredAnswers, measuredFormulas } from "./measured-answers.ts";
import { shear, shearFormulas } from "./shear.ts";
import { sheet } from "./sheet.ts";
import { shopRules } from "./shop-rules.ts";
import { tableFormulas, tables } from "./tables.ts";
import { thicknessLimits, thinOnWaterjet } from "./thickness-limits.ts";
import { tonnageChart } from "./tonnage-chart.ts";
import { workedBill } from "./worked-bill.ts";
import { workedWeek } from "./worked-week.ts";

export const calls = [
  ...bendGeometry,
  ...bendForce,
  ...shear,
  ...sheet,
  ...jetLiftTolerance,
  ...tables,
  ...airBends,
  ...blankCells,
  ...measuredAnswers,
  ...materials20262,
  ...tonnageChart,
];
export const formulas = [
  ...bendGeometryFormulas,
  ...bendForceFormulas,
  ...shearFormulas,
  ...tableFormulas,
  ...shopRules,
  ...measuredFormulas,
  ...thicknessLimits,
  thinOnWaterjet,
];
export const cells = [...workedBill, ...workedWeek, ...airBendCells];
