/** The name of a cell function, with or without the namespace. */

import { isBlank } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { wrong } from "../../units/refusal.ts";
import type { AnyRecord, CellParameter } from "../record/record.ts";
import { findRecord, recordNames } from "../record/registry.ts";

const NAMESPACE = /^=?\s*SHOP\./i;

/** Gives the record behind a call, since the catalogue is complete only after every record has been made. */
export const recordNamed = (): CellParameter<() => AnyRecord> => ({
  shape: "cell",
  type: "function",
  description: 'Name of a function, such as "BEND.TONNAGE"',
  optional: false,
  default: null,
  read: (given, name) => {
    if (isBlank(given)) throw wrong(name, "given", given);
    const wanted = typeof given === "string" ? given.trim().replace(NAMESPACE, "") : "";
    const record = findRecord(wanted);
    if (!record)
      throw wrong(
        name,
        "the name of a function",
        given,
        `nearest is ${nearest(wanted, recordNames())}; FUNCTIONS lists all`,
      );
    return () => record;
  },
});
