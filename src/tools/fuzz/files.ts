/**
 * npm run fuzz:files -- [--files 500] [--seed N] [--from 0] [--seconds S]
 * Reads, recalculates and writes damaged and hostile workbooks, and reads bills from CSV. A finding: a fault of our own, an
 * exception, an output that cannot be read again. A file that takes too long or too much memory is stopped, as the command
 * line stops it.
 */
import { fuzz } from "./command.ts";

await fuzz("files", 500, { seconds: 10, megabytes: 512 });
