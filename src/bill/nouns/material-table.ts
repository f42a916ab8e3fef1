/** The materials of one call: an edition, with the workbook's own rows laid over it. */
import type { Edition, GaugeSeries, Material } from "../../data/materials/material.ts";
import type { CellValue } from "../../units/cell.ts";
import { isBlank } from "../../units/cell.ts";
import { nearestIs } from "../../units/nearest.ts";
import { noAnswer, wrong } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";

/** "ASTM A572 Gr. 50" and "a572-gr-50" are one name; the British way to spell a metal is read as well. */
const fold = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[\s\-_.,/()]+/g, "")
    .replace("minium", "minum");

export class MaterialTable {
  readonly #byName = new Map<string, Material>();
  readonly materials: readonly Material[];

  constructor(
    readonly edition: Edition,
    readonly overrides: readonly Material[] = [],
  ) {
    const merged = new Map(edition.materials.map((material) => [material.name, material]));
    for (const override of overrides) merged.set(override.name, override);
    this.materials = [...merged.values()];
    for (const material of this.materials)
      for (const name of [...material.aliases, material.name]) this.#byName.set(fold(name), material);
  }

  get(name: string): Material | undefined {
    const found = this.#byName.get(fold(name));
    if (found || !FAMILY.test(name)) return found;
    const alloy = this.#byName.get(fold(name.replace(FAMILY, "")));
    return alloy?.gaugeSeries === "aluminum" ? alloy : undefined;
  }

  /** The material a cell names. 304 may arrive as a number. Refuses with the nearest names. */
  find(given: CellValue, parameter: string): Material {
    if (isBlank(given)) throw wrong(parameter, "given", given);
    const text = typeof given === "number" ? String(given) : given;
    if (typeof text !== "string") throw wrong(parameter, "the name of a material", given);
    const found = this.get(text);
    if (found) return found;
    const names = this.materials.map((material) => material.name);
    const alloy = fold(text.replace(FAMILY, ""));
    const tempers = names.filter((name) => fold(name).startsWith(alloy) && alloy.length >= 3);
    const hint =
      tempers.length > 0
        ? `name the temper or grade: ${tempers.map((name) => `"${name}"`).join(" or ")}`
        : (FAMILIES.find(([words]) => words.test(text.slice(0, LONGEST_NAME).trim().toLowerCase()))?.[1] ??
          [nearestIs(text, names), "MATERIAL.LIST shows all, and a data range adds your own"]
            .filter((words) => words !== undefined)
            .join("; "));
    throw noAnswer(parameter, "a material in the table", showGiven(given), hint);
  }

  /** Which gauge series a name means: a series by its own name, or an alloy's. */
  gaugeSeries(given: CellValue, parameter: string): GaugeSeries {
    const series = typeof given === "string" ? SERIES[fold(given)] : undefined;
    if (series) return series;
    const material = this.find(given, parameter);
    if (!material.gaugeSeries)
      throw noAnswer(
        parameter,
        "a material with a gauge series",
        showGiven(given),
        "copper alloys are sold by several gauges: give the thickness",
      );
    return material.gaugeSeries;
  }
}

/** Said before the alloy: "Alum 5052". */
const FAMILY = /^al(?:u(?:m(?:inum|inium)?)?)?[\s.-]+/i;

const LONGEST_NAME = 60;

const SERIES: Record<string, GaugeSeries> = Object.assign(Object.create(null), {
  steel: "steel",
  mildsteel: "steel",
  galvanized: "galvanized",
  galvanised: "galvanized",
  galvanizedsteel: "galvanized",
  stainless: "stainless",
  stainlesssteel: "stainless",
  aluminum: "aluminum",
});

const STEEL = 'name the grade: plate is "A36", hot-rolled sheet "A1011 CS", cold-rolled sheet "A1008 CS"';
const STAINLESS = 'name the grade: "304" or "316"';
const ALUMINUM = 'name alloy and temper, such as "5052-H32" or "6061-T6"';
const HOT_ROLLED = 'name the grade: hot-rolled sheet is "A1011 CS", plate "A36"';
const COLD_ROLLED = 'name the grade: cold-rolled sheet is "A1008 CS"';
const GALVANIZED = 'name the grade: galvanized sheet is "A653 CS"';
const LOW_CARBON = (grade: string): string =>
  `the table has "${grade}"; its low-carbon kin ${grade}L is a row of your own in a data range, or ${grade} if the drawing lets you`;
/** Words of the shop leave the strength open: say which grades there are of what they name. The first that fits. */
const FAMILIES: readonly (readonly [RegExp, string])[] = [
  [/^(?:ss\s*)?304l$/, LOW_CARBON("304")],
  [/^(?:ss\s*)?316l$/, LOW_CARBON("316")],
  [/\b(?:stainless|inox|sst?\b)/, STAINLESS],
  [/\bal(?:um?|uminum|uminium)?\b/, ALUMINUM],
  [/\bgalv/, GALVANIZED],
  [/\b(?:hrs?\b|hrpo|hot[\s-]*rolled)/, HOT_ROLLED],
  [/\b(?:crs?\b|cold[\s-]*rolled)/, COLD_ROLLED],
  [/\b(?:mild|black|carbon|iron|ms\b|steel)/, STEEL],
  [/\bcopper/, 'name the alloy: "C110 half hard"'],
  [/\bbrass/, 'name the alloy: "C260 half hard"'],
];
