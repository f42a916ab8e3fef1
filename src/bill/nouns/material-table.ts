/** The materials of one call: an edition, with the workbook's own rows laid over it. */
import type { Edition, GaugeSeries, Material } from "../../data/materials/material.ts";
import type { CellValue } from "../../units/cell.ts";
import { isBlank } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
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
    return this.#byName.get(fold(name));
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
        : (GENERIC[fold(text)] ??
          `nearest is "${nearest(text, names)}"; MATERIAL.LIST shows all, and a data range adds your own`);
    throw noAnswer(parameter, "a material of the table", showGiven(given), hint);
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
const FAMILY = /^al(?:um(?:inum|inium)?)?[\s.-]+/i;

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
/** Family names leave the strength open: say which grades there are. */
const GENERIC: Record<string, string> = Object.assign(Object.create(null), {
  steel: STEEL,
  mildsteel: STEEL,
  stainless: STAINLESS,
  stainlesssteel: STAINLESS,
  aluminum: ALUMINUM,
  hrs: HOT_ROLLED,
  hr: HOT_ROLLED,
  hotrolled: HOT_ROLLED,
  hotrolledsteel: HOT_ROLLED,
  hrpo: HOT_ROLLED,
  ms: STEEL,
  crs: COLD_ROLLED,
  cr: COLD_ROLLED,
  coldrolled: COLD_ROLLED,
  coldrolledsteel: COLD_ROLLED,
  galv: GALVANIZED,
  galvanized: GALVANIZED,
  galvanizedsteel: GALVANIZED,
  ss: STAINLESS,
  sst: STAINLESS,
  "304l":
    'the table has "304"; its low-carbon kin 304L is a row of your own in a data range, or 304 if the drawing lets you',
  ss304l:
    'the table has "304"; its low-carbon kin 304L is a row of your own in a data range, or 304 if the drawing lets you',
  "316l":
    'the table has "316"; its low-carbon kin 316L is a row of your own in a data range, or 316 if the drawing lets you',
  al: ALUMINUM,
  alum: ALUMINUM,
  copper: 'name the alloy: "C110 half hard"',
  brass: 'name the alloy: "C260 half hard"',
});
