import { value } from "../../building/cells.ts";
import { lookUp, working } from "../../building/formulas.ts";
import type { SheetCell, SheetModel, Validation } from "../../xlsx/model.ts";
import { cellName } from "../../xlsx/xml.ts";
import { PARTS } from "../bill/job.ts";

/** Rows of one calculation: what it starts from, its steps, and room for a part with more bends. One page each. */
const BLOCK = 56;
const FIRST_BLOCK = 4;

interface Chosen {
  readonly title: string;
  readonly part: string;
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
const OPENING = ["Die opening (in)", lookUp("{Die}", "Dies[Die]", "Dies[Opening (in)]")] as const;

const CHOSEN: readonly Chosen[] = [
  {
    title: "Flat length over the die",
    part: "DF-08",
    inputs: [
      ofPart("Material"),
      ofPart("Thickness"),
      ofPart("Flanges"),
      ofPart("Bend angles"),
      ofPart("Die"),
      ofPart("Punch"),
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
    part: "DF-09",
    inputs: [ofPart("Material"), ofPart("Thickness"), ofPart("Bend length"), ofPart("Die"), OPENING],
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
    part: "WW-05",
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

function blockCells({ title, part, inputs, function: name, uses }: Chosen, block: number): SheetCell[] {
  const top = FIRST_BLOCK + block * BLOCK;
  const cellOf = (input: string): string =>
    cellName(partRow(block) + 1 + inputs.findIndex(([found]) => found === input), 2);
  const linked = (formula: string): string =>
    formula.replace(/\{([^}]+)\}/g, (_, input: string) =>
      input === "part" ? cellName(partRow(block), 2) : cellOf(input),
    );
  const steps = partRow(block) + inputs.length + 2;
  const given = Object.fromEntries(Object.entries(uses).map(([argument, input]) => [argument, cellOf(input)]));
  return [
    value(top, 1, "heading", title),
    value(partRow(block), 1, "label", "Part"),
    value(partRow(block), 2, "inputText", part),
    ...inputs.flatMap(([input, formula], i): SheetCell[] => [
      value(partRow(block) + 1 + i, 1, "label", input),
      { row: partRow(block) + 1 + i, column: 2, style: "wrapped", formula: linked(formula) },
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

export function calculationSheet(): SheetModel {
  const validations = CHOSEN.map(
    (_, block): Validation => ({
      area: cellName(partRow(block), 2),
      type: "list",
      formula: `Parts!$A$5:$A$${4 + PARTS.length}`,
      prompt: "A part of the bill",
    }),
  );
  return {
    name: "Calculation",
    widths: [19, 46, 12, 9, 62],
    cells: [
      value(1, 1, "title", "Calculation"),
      value(
        2,
        1,
        "note",
        "Three answers step by step, recorded by the calculation itself. Choose another part in a shaded cell; the last step is the answer.",
      ),
      ...CHOSEN.flatMap(blockCells),
    ],
    validations,
    merges: ["A2:E2"],
    print: {
      landscape: true,
      scale: 80,
      titleRows: "1:3",
      breaksBefore: CHOSEN.slice(1).map((_, i) => FIRST_BLOCK + (i + 1) * BLOCK),
    },
  };
}
