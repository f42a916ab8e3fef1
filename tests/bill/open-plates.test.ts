/** Which rows of machines and tools stand open because nobody has read them from the plate. */
import { expect, it } from "vitest";
import { openPlates, rowsOfLine } from "../../src/bill/open-plates.ts";
import { answerOf, bracket, planned } from "./shop.ts";

const row = (name: string, plate = "") => ({ name, plate });

it("a row stands open while its plate is blank, each name once and in order", () => {
  expect(openPlates([row("V 2"), row("Brake"), undefined, row("V 2"), row("Shear", "read 3/2")])).toEqual([
    "Brake",
    "V 2",
  ]);
  expect(openPlates([])).toEqual([]);
});

it("a flat plate stands on the row of what cuts it alone, a bent one on its tools as well, an unread line on none", () => {
  const flat = planned([bracket({ Part: "FLAT", Flanges: "8", Angles: "" })]);
  const answer = answerOf(flat, "FLAT");
  expect(answer.plan?.tools).toBeUndefined();
  expect(rowsOfLine(answer).map((each) => each?.name)).toEqual([
    undefined,
    undefined,
    undefined,
    answer.plan?.cutting[answer.cutter!]?.name,
  ]);
  const bent = answerOf(planned([bracket({ Part: "BENT" })]), "BENT");
  const { brake, die, punch } = bent.plan!.tools!;
  expect(rowsOfLine(bent).slice(0, 3)).toEqual([brake, die, punch]);
  expect(rowsOfLine({ plan: undefined, cutter: undefined })).toEqual([undefined, undefined, undefined, undefined]);
});
