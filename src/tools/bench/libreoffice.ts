import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { noCustomFunctions } from "../../sheet/evaluate/custom-functions.ts";
import { recalculateBytes } from "../../sheet/recalculate/recalculate-bytes.ts";

/** LibreOffice's setting for workbooks of this format: 0 recalculates on load, 1 never does. */
const settings = (mode: 0 | 1): string =>
  `<?xml version="1.0" encoding="UTF-8"?><oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>${mode}</value></prop></item></oor:items>`;

interface LibreOfficeTimes {
  /** Seconds to start, load, recalculate everything and save; the same without recalculating. Medians of three. */
  readonly recalculated: number;
  readonly loaded: number;
}

/**
 * How long LibreOffice takes for a workbook with a hard recalculation and without one: its own start and its file
 * handling are in both, the difference is the recalculation. undefined when it is not installed or does not answer.
 */
export function libreOfficeTimes(workbook: Uint8Array): LibreOfficeTimes | undefined {
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
      const times = Array.from({ length: 3 }, () => {
        const started = performance.now();
        return once() ? (performance.now() - started) / 1000 : Number.NaN;
      });
      return times.sort((x, y) => x - y)[1];
    };
    const loaded = convert(1);
    const recalculated = convert(0);
    return loaded === undefined || recalculated === undefined ? undefined : { recalculated, loaded };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
