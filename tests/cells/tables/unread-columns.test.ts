/** Columns of a part list: what is misspelt must not vanish. */
import { describe, expect, it } from "vitest";
import { unreadColumns } from "../../../src/cells/tables/unread-columns.ts";

describe("columns that nothing reads", () => {
  it("are named, each with the nearest that is read; columns of the bill and empty headers are not", () => {
    expect(unreadColumns([["Part", "Tol", "Tolerance (in)", null, "Ops"]])).toEqual([
      expect.stringMatching(/^column "Tol" is not read; the nearest that is: "/),
      expect.stringMatching(/^column "Ops" is not read; the nearest that is: "/),
    ]);
  });
});
