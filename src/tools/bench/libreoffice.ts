import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { noCustomFunctions } from "../../hosts/headless/custom-functions.ts";
import { recalculateBytes } from "../../hosts/headless/recalculate/recalculate-bytes.ts";

/** LibreOffice's setting for workbooks of this format: 0 recalculates on load, 1 never does. */
const settings = (mode: 0 | 1): string =>
  `<?xml version="1.0" encoding="UTF-8"?><oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>${mode}</value></prop></item></oor:items>`;

/**
 * Seconds LibreOffice spends on a hard recalculation: loading and saving with it, less the same without. undefined when
 * it is not installed or does not answer.
 */
export function libreOfficeSeconds(workbook: Uint8Array): number | undefined {
  if (spawnSync("soffice", ["--version"]).status !== 0) return undefined;
  const folder = mkdtempSync(join(tmpdir(), "recalc-bench-"));
  try {
    // Give it cached values to trust, else it calculates either way.
    const { output } = recalculateBytes(workbook, {
      functions: noCustomFunctions,
      now: undefined,
      verify: false,
      in: "bench",
      out: "bench",
    });
    const input = join(folder, "bench.xlsx");
    writeFileSync(input, output ?? workbook);
    const convert = (mode: 0 | 1): number | undefined => {
      const profile = join(folder, `profile-${mode}`);
      mkdirSync(join(profile, "user"), { recursive: true });
      writeFileSync(join(profile, "user", "registrymodifications.xcu"), settings(mode));
      const args = [
        `-env:UserInstallation=${pathToFileURL(profile)}`,
        "--headless",
        "--convert-to",
        "xlsx",
        "--outdir",
        join(folder, "out"),
        input,
      ];
      const once = (): boolean => spawnSync("soffice", args, { timeout: 300_000 }).status === 0;
      if (!once()) return undefined; // the first start sets up the profile
      const started = performance.now();
      return once() ? (performance.now() - started) / 1000 : undefined;
    };
    const without = convert(1);
    const withRecalculation = convert(0);
    return without === undefined || withRecalculation === undefined
      ? undefined
      : Math.max(0, withRecalculation - without);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
