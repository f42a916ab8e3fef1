/** For every long record, the module that takes its place in the functions bundle: its outline as plain data. */
import { RECORDS } from "../../cells/catalogue.ts";
import { outlineOf } from "../../hosts/excel/outlined.ts";

interface OutlineModule {
  /** Name of the record's file: "bend-order.ts". */
  readonly file: string;
  /** `outlined`: where the module finds the function of that name. */
  source(outlined: string): string;
}

/** BEND.ORDER stands in bend-order.ts as bendOrder: the rule by which the catalogue finds its records. */
export const outlineModules = (): OutlineModule[] =>
  RECORDS.filter(({ long }) => long).map((record) => {
    const words = record.name.toLowerCase().split(/[._]/);
    const exported = words.map((word, i) => (i === 0 ? word : word.charAt(0).toUpperCase() + word.slice(1))).join("");
    return {
      file: `${words.join("-")}.ts`,
      source: (outlined) =>
        `import { outlined } from ${JSON.stringify(outlined)};\nexport const ${exported} = outlined(${JSON.stringify(outlineOf(record))});`,
    };
  });
