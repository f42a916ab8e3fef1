/** Whether a program that breaks the calls of an add-in was the last to save a workbook. */
import type { Package } from "../package/package.ts";
import type { FormulaCell } from "../workbook/formula-cell.ts";

/** What LibreOffice writes about itself: <Application>LibreOffice/7.4.7.2$Linux...</Application> (seen in its files). */
const APPLICATION = /<Application>\s*(LibreOffice)\/([\d.]+)/;

/** A sentence, or undefined where there is nothing to say. Seen with LibreOffice 7.4 on a sample of ours. */
export function brokenBySaving(opened: Package, formulas: Iterable<Pick<FormulaCell, "text">>): string | undefined {
  const [, program, version] = APPLICATION.exec(opened.text("docProps/app.xml") ?? "") ?? [];
  if (!program || ![...formulas].some(({ text }) => /\b_xldudf_/i.test(text))) return undefined;
  return `saved by ${program} ${version}, which stores #NAME? for every call of an add-in and drops what lets it spill; go on from the last copy that Excel saved`;
}
