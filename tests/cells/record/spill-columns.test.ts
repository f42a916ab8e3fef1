import { describe, expect, it } from "vitest";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import { readTable } from "../../../src/cells/parameters/read-table.ts";
import { headerRow, headers, SPILLS, type SpillName, spill } from "../../../src/cells/record/spill-columns.ts";
import { UNIT_SYSTEMS } from "../../../src/units/system.ts";

const names = Object.keys(SPILLS) as SpillName[];

describe("the columns of a spill", () => {
  it.each(names)("%s: every header once, in either unit system", (name) => {
    expect(new Set(headers(name)).size).toBe(SPILLS[name].length);
    for (const system of UNIT_SYSTEMS)
      for (const header of headerRow(name, system))
        expect(header).toMatch(/^[A-Z][A-Za-z -]*(?: \((?:in|mm|US ton|kN|lb|kg|h|min)\))?$/);
  });

  it("of every BILL and CUT function stand here, and those of the catalogue are these", () => {
    for (const { name, result } of RECORDS) {
      if (!/^(?:BILL|CUT)\./.test(name)) continue;
      expect(names, name).toContain(name);
      expect(result.kind === "table" && result.columns, name).toEqual(headers(name as SpillName));
    }
  });

  it("are read back as a table with the same figures, in either unit system", () => {
    for (const system of UNIT_SYSTEMS) {
      const block = spill("BILL.BLANKS", [{ Part: "A", Length: 254, Quantity: 3, "Weight each": 2 }], system);
      const columns = {
        part: { headers: ["Part"], kind: "text" },
        length: { headers: ["Length"], kind: "length" },
        weight: { headers: ["Weight each"], kind: "mass" },
      } as const;
      // Read as the other system, so that only the unit in the header can make it right.
      const [row] = readTable(block, columns, "blanks", system === "in" ? "mm" : "in");
      expect(row).toMatchObject({ part: "A", length: expect.closeTo(254, 9), weight: expect.closeTo(2, 12) });
    }
  });

  it("leave a cell empty where a row says nothing", () => {
    const [, row] = spill("BILL.ROUTE", [{ Part: "A", Cost: 0 }], "in");
    expect(row).toEqual(["A", "", "", "", "", "", 0, ""]);
  });
});
