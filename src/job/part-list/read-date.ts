/** When a line is due, as people write a day: what can be only one day is read, 6/5/2026 is asked about. */
import type { CellValue } from "../../units/cell.ts";
import { itemAt, missing } from "../../units/certain.ts";
import { Doubt } from "./doubt.ts";

export const DATE_ORDERS = ["month-first", "day-first"] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const NAME =
  "(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?";
const TIME = "(?:,? +(\\d{1,2}:\\d{2})(?::\\d{2})?)?$";
const YEAR_FIRST = new RegExp(`^(\\d{4})[./](\\d{1,2})[./](\\d{1,2})${TIME}`);
const FIGURES = new RegExp(`^(\\d{1,2})([./-])(\\d{1,2})\\2(\\d{4}|\\d{2})${TIME}`);
const NAMED_FIRST = new RegExp(`^${NAME} *(\\d{1,2})(?:st|nd|rd|th)?(?:, *| +)(\\d{4})${TIME}`, "i");
const NAMED_SECOND = new RegExp(`^(\\d{1,2})(?:st|nd|rd|th|\\.)?[ -]*${NAME},?[ -]*(\\d{4})${TIME}`, "i");
/** A worksheet's count of days from 2000 to 2099. */
const [FIRST_COUNT, LAST_COUNT] = [36_526, 73_050];

/**
 * In ISO form; a count of days as a number; what is not a date is left as it stands, for the bill's own column to
 * refuse. Throws Doubt.
 */
export function dateOf(given: CellValue, order: DateOrder | undefined): CellValue {
  if (typeof given !== "string") return given;
  const text = given.replace(/\s+/g, " ").trim();
  if (/^\d{5}(?:\.\d+)?$/.test(text) && Number(text) >= FIRST_COUNT && Number(text) <= LAST_COUNT) return Number(text);
  const [, year, month, day, at] = YEAR_FIRST.exec(text) ?? [];
  if (year) return iso(year, month ?? missing(), day ?? missing(), at);
  const first = NAMED_FIRST.exec(text);
  if (first) return iso(itemAt(first, 3), monthOf(itemAt(first, 1)), itemAt(first, 2), first[4]);
  const second = NAMED_SECOND.exec(text);
  if (second) return iso(itemAt(second, 3), monthOf(itemAt(second, 2)), itemAt(second, 1), second[4]);
  const figures = FIGURES.exec(text);
  return figures ? ofFigures(figures, order) : text;
}

function ofFigures(figures: RegExpExecArray, order: DateOrder | undefined): string {
  const [, a = "", sign, b = "", shown = "", at] = figures;
  const isShort = shown.length === 2;
  const year = isShort ? `20${shown}` : shown;
  const [monthFirst, dayFirst] = [iso(year, a, b, at), iso(year, b, a, at)];
  const ask = (one: string, other: string) =>
    new Doubt(
      "figure in doubt",
      `${one} or ${other}? Write it so, or say --dates ${DATE_ORDERS[0]} or --dates ${DATE_ORDERS[1]}`,
    );
  if (Number(b) > 12) return monthFirst;
  if (Number(a) > 12 && isShort && order === undefined) throw ask(dayFirst, iso(`20${a}`, b, shown, at));
  if (Number(a) > 12 || (a === b && !isShort)) return dayFirst;
  // Between points the day stands first (common practice: German and Swiss lists).
  const said = order ?? (sign === "." && !isShort ? "day-first" : undefined);
  if (said === undefined) throw ask(monthFirst, dayFirst);
  return said === "day-first" ? dayFirst : monthFirst;
}

const iso = (year: string, month: string, day: string, at: string | undefined): string =>
  `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}${at ? ` ${at.padStart(5, "0")}` : ""}`;
const monthOf = (name: string): string => String(MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1);
