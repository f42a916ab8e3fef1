import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { Command } from "./command.ts";
import { bytesOf } from "./read-file.ts";

/** Exit 0 where the file is a workbook that can be read; what is wrong with it is named. */
export const open: Command = async ([file = ""]) => {
  const bytes = bytesOf(file);
  try {
    readWorkbook(bytes);
  } catch (problem) {
    throw problem instanceof FileRefusal ? new FileRefusal(problem.reason, `${file}: ${problem.message}`) : problem;
  }
  return 0;
};
