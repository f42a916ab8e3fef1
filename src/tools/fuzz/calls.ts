/**
 * npm run fuzz -- [--calls 20000] [--seed N] [--from 0] [--seconds S]
 * Calls every cell function with anything at all. A finding: an answer that is not finite, a sentence outside the grammar, an
 * exception, a call that takes longer than a minute.
 */
import { fuzz } from "./command.ts";

await fuzz("calls", 20_000, { seconds: 60, megabytes: 1024 });
