const MS_PER_DAY = 86_400_000;
/** Serial of 1970-01-01 in the 1900 date system. */
const UNIX_EPOCH = 25_569;

/** Local wall-clock time as a serial of the 1900 date system. */
export function serialNow(moment: Date): number {
  const local = Date.UTC(
    moment.getFullYear(),
    moment.getMonth(),
    moment.getDate(),
    moment.getHours(),
    moment.getMinutes(),
    moment.getSeconds(),
  );
  return local / MS_PER_DAY + UNIX_EPOCH;
}

/** "2026-03-14" or "2026-03-14T09:30[:00]" as written on the wall, whatever zone follows; undefined for anything else. */
export function serialOfIso(text: string): number | undefined {
  const match = /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d\d):(\d\d)(?::(\d\d)(?:\.\d+)?)?(?:Z|[+-]\d\d:?\d\d)?)?$/.exec(text);
  if (!match) return undefined;
  const [year = 0, month = 0, day, hour = 0, minute = 0, second = 0] = match.slice(1).map((part) => Number(part ?? 0));
  const time = Date.UTC(year, month - 1, day, hour, minute, second);
  const date = new Date(time);
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day || hour > 23 || minute > 59 || second > 59)
    return undefined;
  return time / MS_PER_DAY + UNIX_EPOCH;
}
