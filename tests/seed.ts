/** Loaded before every test file: bills and shops by chance are the same each time, unless SEED draws others. */
import fc from "fast-check";

const SEED = 20261130;

fc.configureGlobal({ seed: Number(process.env["SEED"] ?? SEED) });
