/** What LibreOffice makes of a workbook's first sheet: an ordinary spreadsheet as a witness. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

export const HAS_LIBREOFFICE = spawnSync("soffice", ["--version"], { encoding: "utf8" }).status === 0;

/** Its cells, row by row, values unformatted. */
export function cellsInLibreOffice(workbook: Uint8Array): string[][] {
  const folder = mkdtempSync(join(tmpdir(), "worked-"));
  try {
    writeFileSync(join(folder, "worked.xlsx"), workbook);
    execFileSync(
      "soffice",
      [
        `-env:UserInstallation=${pathToFileURL(join(folder, "profile"))}`,
        "--headless",
        // field separator tab, text delimiter '"', UTF-8, from line 1, columns as they are, en-US, values unformatted
        "--convert-to",
        "csv:Text - txt - csv (StarCalc):9,34,76,1,,1033,false,false",
        "--outdir",
        join(folder, "out"),
        join(folder, "worked.xlsx"),
      ],
      { stdio: "ignore" },
    );
    const text = readFileSync(join(folder, "out", "worked.csv"), "utf8").trimEnd();
    return text.split("\n").map((row) => row.split("\t").map((cell) => cell.replaceAll('"', "")));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
