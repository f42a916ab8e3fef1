/** A list that is too large is refused where it becomes so: of what stands behind nothing is read. */
import { expect, it } from "vitest";
import { rowsOfFile } from "../../../src/job/part-list/list-file.ts";

const HEADING = "Part,Material,Thickness,Quantity,Width,Flanges\n";
const read = (text: string) => rowsOfFile(new TextEncoder().encode(text));

it.each([
  [
    "a long field",
    `${HEADING}${"x".repeat(32_768)}\n`,
    "part list line 2, a field, must be at most 32767 letters; got 32768",
  ],
  [
    "a long field in quotes",
    `${HEADING}"${"x\n".repeat(16_384)}"\n`,
    "part list line 2, a field, must be at most 32767 letters; got 32768",
  ],
  ["a long line", `${HEADING}\n${",".repeat(16_384)}`, "part list line 3 must be at most 16384 fields; got more"],
  ["many lines", HEADING + "\n".repeat(100_000), "part list must be at most 100000 lines; got more"],
  [
    "many fields",
    HEADING + `${",".repeat(9_999)}\n`.repeat(501),
    "part list must be at most 5000000 fields in all; got more",
  ],
  [
    "a quote that ends nowhere",
    `${HEADING}"${"x".repeat(1_000_000)}`,
    `row 2 of the file must be a record whose quotes are closed; got "${"x".repeat(60)}"`,
  ],
])("%s is refused", (_, text, message) => {
  expect(() => read(text)).toThrow(expect.objectContaining({ message }));
});

it("a large file is refused before it is read as text", () => {
  expect(() => rowsOfFile(new Uint8Array(67_108_865))).toThrow(
    expect.objectContaining({ message: "part list must be at most 67108864 bytes; got 67108865" }),
  );
});

it("what just fits is read: under another sign the whole line would be too long a field", () => {
  const { rows, from } = read(`${HEADING}${"x".repeat(32_767)}${",12345678".repeat(16_383)}\n`);
  expect([rows.length, rows[1]!.length, from]).toEqual([2, 16_384, "commas"]);
});
