/** An angle is never a fraction: two of them written with a stroke are refused, in a list and alone. */
import { describe, expect, it } from "vitest";
import { bendAngle } from "../../../src/cells/parameters/angle.ts";
import { bendAngles, signedBendAngles } from "../../../src/cells/parameters/list.ts";
import { readCell } from "../../../src/cells/parameters/read-cell.ts";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { BILL_COLUMNS } from "../../../src/cells/tables/bill-columns.ts";
import { Refusal } from "../../../src/units/refusal.ts";

const context = { system: "in", materials: currentMaterials(), material: undefined } as const;
const answerOf = (read: () => unknown): unknown => {
  try {
    return read();
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    return problem.message;
  }
};

describe("angles of several bends in one cell", () => {
  it.each([["90/90"], ["45 / 90"], ["90°/90°"], ["90x2"], ["2 x 90"], ["22 1/2"]])("%s is refused", (given) => {
    const refused = /must be a.*; got .*; an angle is no fraction: write "90; 90"/;
    expect(answerOf(() => bendAngle().read(given, "bend_angle", context))).toMatch(refused);
    expect(answerOf(() => bendAngles("").read([given], "bend_angles", context))).toMatch(refused);
    expect(answerOf(() => signedBendAngles("").read([90, given], "bend_angles", context))).toMatch(refused);
    const place = { column: BILL_COLUMNS.bendAngles, size: undefined, label: "line 1", system: "in" } as const;
    expect(answerOf(() => readCell(given, place))).toMatch(refused);
  });

  it("with semicolons, degree signs and a decimal they are read", () => {
    expect(bendAngles("").read(["90°; 22.5; 45 deg"], "bend_angles", context)).toEqual([90, 22.5, 45]);
    expect(signedBendAngles("").read(["-90; 90"], "bend_angles", context)).toEqual([-90, 90]);
  });
});
