/**
 * `npm run record`: the explicit switch that writes down the names, and what the sample
 * workbooks answer, after a deliberate change.
 * Review its difference and add a line to CHANGELOG.md. With `-- --release` also the
 * editions of the materials and the samples as this version sends them out.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { RECORDS } from "../../cells/catalogue.ts";
import { PRODUCT_VERSION } from "../../cells/record/version.generated.ts";
import { EDITIONS } from "../../data/materials/editions.ts";
import { SAMPLES, sampleBytes } from "../sample/file.ts";
import { resultsOf, resultsText } from "../sample/recorded-results.ts";
import { EDITIONS_FILE, renewedEditions } from "./recorded-editions.ts";
import { NAMES_FILE, namesOf, namesText, renewedNames } from "./recorded-names.ts";
import { recordRelease } from "./recorded-release.ts";

const isRelease = process.argv.includes("--release");
const read = <T>(file: string, none: T): T => (existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as T) : none);

writeFileSync(NAMES_FILE, namesText(renewedNames(read(NAMES_FILE, []), namesOf(RECORDS))));
writeFileSync(
  EDITIONS_FILE,
  `${JSON.stringify(renewedEditions(read(EDITIONS_FILE, {}), EDITIONS, { isRelease }), null, 2)}\n`,
);
for (const sample of SAMPLES) {
  mkdirSync(dirname(sample.results), { recursive: true });
  writeFileSync(sample.results, resultsText(resultsOf(sampleBytes(sample), sample.sheets)));
}
if (isRelease) recordRelease(PRODUCT_VERSION);
