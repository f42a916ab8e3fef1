/** Metric lines in a list of inches are asked about; ordinary lists of inches are not. */
import { describe, expect, it } from "vitest";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { rowsOfFile } from "../../../src/job/part-list/list-file.ts";
import { type PartListOptions, readPartList } from "../../../src/job/part-list/part-list.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";

const context = { system: "in", materials: currentMaterials(), material: undefined } as const;
const HEADING = "Part,Qty,Material,Thickness,Flanges,Bend angles,Width";
const IN = "Part,Qty,Material,Thickness (in),Flanges (in),Bend angles,Width (in)";
const MM = "Part,Qty,Material,Thickness (mm),Flanges (mm),Bend angles,Width (mm)";

const asked = (lines: readonly string[], heading = HEADING, options: PartListOptions = {}): string[] =>
  readPartList(rowsOfFile(new TextEncoder().encode([heading, ...lines].join("\n"))).rows, options, context).faults.map(
    ({ column, row, kind }) => `${column}${row} ${kind}`,
  );

const INCHES = ["A,4,A36,3/16,2 x 3,90,12", "B,4,A36,1/4,1.5 x 4.375,90,24"];

describe("a metric line among inches", () => {
  it.each<[what: string, line: string, heading: string, places: string[]]>([
    ["whole eighths of an inch in mm", "N,4,A1008 CS,16 ga,12.7 x 19,90,38.1", HEADING, ["E4", "G4"]],
    ["whole figures far from the others", "P,4,A1008 CS,16 ga,20 x 20,90,40", HEADING, ["E4", "G4"]],
    ["a plate in steps of 5", "Q,4,A36,1/4,40,,60", HEADING, ["E4", "G4"]],
    ["eighths in mm, whatever the heading says", "N,4,A1011 CS,11 ga,25.4 x 38.1,90,76.2", IN, ["E4", "G4"]],
    ["a thickness that no plate has", "Q,4,5052-H32,1.6,2 x 2,90,12", IN, ["D4"]],
    ["the same, under 1", "R,4,A36,.8,2 x 2,90,12", IN, ["D4"]],
    ["an angle in radians", "C,4,A36,1/4,2 x 3,1.57,12", HEADING, ["F4"]],
    ["a deck plate in feet of inches", "D,4,A36,1/4,48,,96", HEADING, []],
    ["plate in sixteenths, written to thousandths", "E,4,A36,0.813,4 x 4,90,12", IN, []],
    ["an angle that says its unit", "C,4,A36,1/4,2 x 3,1.5 deg,12", HEADING, []],
  ])("%s", (_, line, heading, places) => {
    expect(asked([...INCHES, line], heading)).toEqual(places.map((place) => `${place} unit in doubt`));
  });

  it("a gauge under mm, of a sheet that never comes as thick; plate does", () => {
    const lines = ["F,4,A1011 CS,16,40 x 60,90,300", "G,4,A36,16,80 x 80,90,300", "H,4,A1011 CS,3,40 x 60,90,300"];
    expect(asked(lines, MM)).toEqual(["D2 unit in doubt"]);
  });

  it("the unit said by the person is taken", () => {
    expect(asked([...INCHES, "P,4,A1008 CS,16 ga,20 x 20,90,40"], HEADING, { units: "in" })).toEqual([]);
  });
});

describe("300 ordinary lists of inches", () => {
  const random = randomFrom(30);
  const pick = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)]!;
  /** As people write it: whole, a fraction, or decimals to hundredths. */
  const inches = (from: number, to: number): string => {
    const value = from + random() * (to - from);
    const kind = random();
    if (kind < 0.4) return String(Math.round(value));
    if (kind < 0.8) return String(Math.round(value * 8) / 8);
    return value.toFixed(2);
  };
  const line = (i: number): string => {
    const sheet = pick(["A36,3/16", "A36,1/4", "A1011 CS,10 ga", "A1008 CS,16 ga", "304,0.12", "5052-H32,1/8"]);
    const kind = random();
    const leg = () => inches(1, pick([3, 4, 6, 8]));
    const width = inches(2, pick([12, 36, 118]));
    if (kind < 0.6) return `P${i},4,${sheet},${leg()} x ${leg()},90,${width}`;
    if (kind < 0.75) return `P${i},4,${sheet},${leg()} x ${inches(3, 24)} x ${leg()},90,${width}`;
    return `P${i},4,${sheet},${pick([leg(), inches(2, 24), pick(["24", "36", "48"])])},,${pick([width, "24", "48", "96"])}`;
  };
  const lists = Array.from({ length: 300 }, () =>
    Array.from({ length: 5 + Math.floor(random() * 30) }, (_, i) => line(i)),
  );

  it("fewer than one line in a hundred is asked about", () => {
    const lines = lists.reduce((sum, list) => sum + list.length, 0);
    const rows = lists.reduce((sum, list) => sum + new Set(asked(list).map((place) => /\d+/.exec(place)![0])).size, 0);
    if (process.env["SHOW"]) console.info(rows, lines);
    expect(rows / lines).toBeLessThan(0.01);
  });

  it("nine of ten metric brackets put into them are", () => {
    const found = lists.filter((list) => {
      const mm = () => 20 + 5 * Math.floor(random() * 20);
      return asked([...list, `M,4,A1008 CS,16 ga,${mm()} x ${mm()},90,${mm()}`]).some((place) =>
        place.startsWith(`E${list.length + 2} `),
      );
    });
    if (process.env["SHOW"]) console.info(found.length);
    expect(found.length).toBeGreaterThan(270);
  });
});
