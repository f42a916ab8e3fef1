/**
 * Serial dates. The 1900 system counts 1900-01-01 as 1 and, for compatibility with older programs, has a day 60 called
 * 29 February 1900 that never was; the 1904 system counts 1904-01-01 as 0 (Microsoft, "Date systems in Excel").
 */
export interface CalendarDay {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const MS_PER_DAY = 86_400_000;
/** From the epoch of the 1900 system to that of the 1904 system. */
export const DAYS_1904 = 1462;
export const LAST_SERIAL = 2_958_465;

export const floorDay = (serial: number): number => Math.floor(serial);

/** Year, month (1 to 12) and day of a serial; undefined outside the calendar. */
export function dayOf(serial: number, date1904 = false): CalendarDay | undefined {
  const day = Math.floor(serial) + (date1904 ? DAYS_1904 : 0);
  if (day < 0 || day > LAST_SERIAL) return undefined;
  if (day === 0) return { year: 1900, month: 1, day: 0 };
  if (day === 60) return { year: 1900, month: 2, day: 29 };
  const date = new Date((day - 25_569 + (day < 60 ? 1 : 0)) * MS_PER_DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** Serial of a day; months and days may overflow. undefined before the calendar begins or after 9999. */
export function serialOf(year: number, month: number, day: number, date1904 = false): number | undefined {
  const time = Date.UTC(2000, month - 1, 1);
  const shifted = new Date(time);
  shifted.setUTCFullYear(year + (shifted.getUTCFullYear() - 2000), shifted.getUTCMonth(), 1);
  const first = shifted.getTime() / MS_PER_DAY + 25_569;
  // Counting from the first of the month in the file's own calendar keeps the phantom day of 1900.
  const start = first < 61 ? first - 1 : first;
  const serial = start + day - 1 - (date1904 ? DAYS_1904 : 0);
  return serial < 0 || serial > LAST_SERIAL ? undefined : serial;
}

export const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

export const monthLength = (year: number, month: number): number =>
  month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;

/** 0 Sunday to 6 Saturday. */
export const weekdayOf = (serial: number, date1904 = false): number =>
  (((Math.floor(serial) + (date1904 ? DAYS_1904 : 0) - 1) % 7) + 7) % 7;
