/** The worked bracket holds before any of our functions is asked: in an ordinary spreadsheet, line by line. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../src/hosts/headless/calculate-one.ts";
import { WORKED_BRACKET } from "./worked-bracket.ts";

const numbered = WORKED_BRACKET.map((line, i) => [i + 1, line] as const);

describe("the worked bracket in ordinary formulas", () => {
  const named = (formula: string) => formula.replace(/\bB(\d+)\b/g, "line_$1");
  const bindings = WORKED_BRACKET.map(({ formula }, i) => `line_${i + 1},${named(formula)}`).join(",");

  it.each(numbered)("line %i, the headless engine", (n, { value }) => {
    const answer = evaluateFormula(`=LET(${bindings},line_${n})`, shopFunctions);
    expect(answer.value).toBeCloseTo(value, 8);
  });

  const office = spawnSync("soffice", ["--version"], { encoding: "utf8" });
  it.skipIf(office.status !== 0)(
    "all lines, LibreOffice",
    () => {
      const folder = mkdtempSync(join(tmpdir(), "worked-"));
      try {
        const rows = WORKED_BRACKET.map(({ formula }, i) => `${i + 1};"=${formula}"`);
        const text = rows.join("\n");
        writeFileSync(join(folder, "worked.csv"), `${text}\n`);
        execFileSync(
          "soffice",
          [
            `-env:UserInstallation=file://${folder}/profile`,
            "--headless",
            // field separator ";", text delimiter '"', UTF-8, from line 1, columns as they are, en-US, evaluate formulas
            "--infilter=CSV:59,34,76,1,,1033,false,true,false,false,false,-1,true",
            "--convert-to",
            "csv:Text - txt - csv (StarCalc):59,34,76,1,,1033,false,false",
            "--outdir",
            join(folder, "out"),
            join(folder, "worked.csv"),
          ],
          { stdio: "ignore" },
        );
        const computed = readFileSync(join(folder, "out", "worked.csv"), "utf8")
          .trim()
          .split("\n")
          .map((row) => Number(row.split(";")[1]));
        expect(computed).toHaveLength(WORKED_BRACKET.length);
        computed.forEach((value, i) => {
          expect(value, `line ${i + 1}`).toBeCloseTo(WORKED_BRACKET[i]!.value, 8);
        });
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
    120_000,
  );
});
