import { missing } from "../../units/certain.ts";
import { headed, value } from "../building/cells.ts";
import { lookUp, working } from "../building/formulas.ts";
import { spillColumn } from "../building/spill-block.ts";
import type { SheetCell, SheetModel, Validation } from "../xlsx/model.ts";
import { cellName } from "../xlsx/xml.ts";
import { hasTable, type JobContents } from "./contents.ts";
import { CHECKS } from "./spill-sheets.ts";
import { inSystem } from "./units.ts";

/** Rows of one calculation: what it starts from, its steps, and room for a part with more bends. One page each. */
const BLOCK = 56;
const FIRST_BLOCK = 4;

interface Chosen {
  readonly title: string;
  /** Which of the lines it shows. */
  readonly part: keyof JobContents["shown"];
  /** Tables of the sheet Shop that it reads. */
  readonly tables: readonly string[];
  /** What it starts from, and where that stands. {part} is the chosen part's cell. */
  readonly inputs: readonly (readonly [name: string, formula: string])[];
  readonly function: string;
  /** Arguments by name, each one of the inputs. */
  readonly uses: Readonly<Record<string, string>>;
}

const ofPart = (column: string): readonly [string, string] => [
  column,
  lookUp("{part}", "Parts[Part]", `Parts[${column}]`),
];
/** What the plan has chosen for the part, where the bill leaves it open. */
const ofPlan = (column: string): readonly [string, string] => {
  const among = (header: string) => `INDEX(${CHECKS},0,${spillColumn("BILL.CHECK", header)})`;
  return [column, lookUp("{part}", among("Part"), among(column))];
};
const OPENING = ["Die opening (in)", lookUp("{Die}", "Dies[Die]", "Dies[Opening (in)]")] as const;

const CHOSEN: readonly Chosen[] = [
  {
    title: "Flat length over the die",
    part: "flat",
    tables: ["Dies", "Punches"],
    inputs: [
      ofPart("Material"),
      ofPart("Thickness"),
      ofPart("Flanges"),
      ofPart("Bend angles"),
      ofPlan("Die"),
      ofPlan("Punch"),
      OPENING,
      ["Punch nose (in)", lookUp("{Punch}", "Punches[Punch]", "Punches[Nose radius (in)]")],
    ],
    function: "AIR.FLAT",
    uses: {
      material: "Material",
      thickness: "Thickness",
      flanges: "Flanges",
      bend_angles: "Bend angles",
      die_opening: "Die opening (in)",
      punch_nose: "Punch nose (in)",
    },
  },
  {
    title: "Force of the bend",
    part: "force",
    tables: ["Dies"],
    inputs: [ofPart("Material"), ofPart("Thickness"), ofPart("Bend length"), ofPlan("Die"), OPENING],
    function: "BEND.TONNAGE",
    uses: {
      material: "Material",
      thickness: "Thickness",
      bend_length: "Bend length",
      die_opening: "Die opening (in)",
    },
  },
  {
    title: "Thickest sheet of this material on the first shear",
    part: "shear",
    tables: ["Shears"],
    inputs: [
      ofPart("Material"),
      ["Rated thickness (in)", "INDEX(Shears[Rated thickness (in)],1)"],
      ["Rated material", "INDEX(Shears[Rated material],1)"],
    ],
    function: "SHEAR.MAXTHICKNESS",
    uses: { material: "Material", rated_thickness: "Rated thickness (in)", rated_material: "Rated material" },
  },
];

const partRow = (block: number): number => FIRST_BLOCK + block * BLOCK + 1;

function blockCells(
  { title, part, inputs, function: name, uses }: Chosen,
  block: number,
  { shown, system }: JobContents,
): SheetCell[] {
  const top = FIRST_BLOCK + block * BLOCK;
  const cellOf = (input: string): string =>
    cellName(partRow(block) + 1 + inputs.findIndex(([found]) => found === input), 2);
  const linked = (formula: string): string =>
    formula.replace(/\{([^}]+)\}/g, (_, input: string) =>
      input === "part" ? cellName(partRow(block), 2) : cellOf(input),
    );
  const steps = partRow(block) + inputs.length + 2;
  const given: Record<string, string> = Object.fromEntries(
    Object.entries(uses).map(([argument, input]) => [argument, cellOf(input)]),
  );
  if (system === "mm") given["units"] = '"mm"';
  return [
    value(top, 1, "heading", title),
    value(partRow(block), 1, "label", "Part"),
    value(partRow(block), 2, "inputText", shown[part] ?? missing()),
    ...inputs.flatMap(([input, formula], i): SheetCell[] => [
      value(partRow(block) + 1 + i, 1, "label", inSystem(input, system)),
      { row: partRow(block) + 1 + i, column: 2, style: "wrapped", formula: inSystem(linked(formula), system) },
    ]),
    {
      row: steps,
      column: 1,
      heads: ["header", "header", "headerRight", "header", "header"],
      formula: working(name, given),
      spills: ["label", "wrapped", "figure", "text", "wrapped"],
    },
  ];
}

export function calculationSheet(job: JobContents): SheetModel {
  const chosen = CHOSEN.filter(
    ({ part, tables }) => job.shown[part] !== undefined && tables.every((name) => hasTable(job, name)),
  );
  const validations = chosen.map(
    (_, block): Validation => ({
      area: cellName(partRow(block), 2),
      type: "list",
      formula: `Parts!$A$5:$A$${4 + job.parts.length}`,
      prompt: "A part of the bill",
    }),
  );
  return {
    name: "Calculation",
    widths: [19, 46, 12, 9, 62],
    cells: [
      ...headed(
        "Calculation",
        "Answers step by step, recorded by the calculation itself. Choose another part in a shaded cell; the last step is the answer.",
      ),
      ...chosen.flatMap((each, block) => blockCells(each, block, job)),
    ],
    validations,
    merges: ["A2:E2"],
    print: {
      landscape: true,
      scale: 80,
      titleRows: "1:3",
      breaksBefore: chosen.slice(1).map((_, i) => FIRST_BLOCK + (i + 1) * BLOCK),
    },
  };
}
