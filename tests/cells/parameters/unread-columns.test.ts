/** Columns of a part list: what is misspelled must not vanish. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { unreadColumns } from "../../../src/cells/parameters/unread-columns.ts";
import { BILL_COLUMNS } from "../../../src/cells/tables/bill-columns.ts";
import { corrections } from "../../../src/cells/tables/corrections.ts";

import { CellError, type CellMatrix } from "../../../src/units/cell.ts";

describe("columns that nothing reads", () => {
  it("are named, each with the nearest that is read; columns of the bill and empty headers are not", () => {
    const header = ["Part", "Tol", "Tolerance (in)", null, "Ops", new CellError("#REF!")];
    expect(unreadColumns([header], BILL_COLUMNS)).toEqual([
      expect.stringMatching(/^column "Tol" is not read; nearest is "/),
      'column "Ops" is not read',
      'column "#REF!" is not read',
    ]);
  });

  const STRIP = ["A36", 0.25, 4.53, 2, 3, 90, 2, 3];
  const HEADER = ["Material", "Thickness", "Blank", "Flange 1", "Flange 2", "Bend angle", "Opening"];

  it("are named in what STRIP.TABLE answers, which stands", () => {
    const { value } = shopFunctions.call("STRIP.TABLE", [[[...HEADER, "Springback"], STRIP]]);
    expect((value as CellMatrix)[1]!.at(-1)).toMatch(/^column "Springback" is not read; /);
    const { value: bare } = shopFunctions.call("STRIP.TABLE", [[HEADER, STRIP.slice(0, -1)]]);
    expect((value as CellMatrix)[1]!.slice(0, -1)).toEqual((bare as CellMatrix)[1]!.slice(0, -1));
  });

  it("are refused in the corrections that an answer goes by", () => {
    const read = (header: string) =>
      corrections().read(
        [
          ["Material", "Contact", "K offset", header, "Message"],
          ["A36", "point", 0.01, 1.2, ""],
        ],
        "c",
        {
          system: "in",
          materials: currentMaterials(),
          material: undefined,
        },
      );
    expect(read("Springback factor")[0]!.springback).toBe(1.2);
    expect(() => read("Springback")).toThrow(
      /^c must be a table of columns that STRIP.TABLE answers; got column "Springback" .*"Springback factor"$/,
    );
  });

  it("a peak force without the strip's width is asked about", () => {
    const { value } = shopFunctions.call("STRIP.TABLE", [[[...HEADER, "Peak force (US ton)"], STRIP]]);
    expect((value as CellError).message).toContain('row 2 column "Strip width" must be given where there is a peak');
  });
});
