/** Local wall-clock time as a serial of the 1900 date system: days since 1899-12-30. */
export function serialNow(moment: Date): number {
  const local = Date.UTC(
    moment.getFullYear(),
    moment.getMonth(),
    moment.getDate(),
    moment.getHours(),
    moment.getMinutes(),
    moment.getSeconds(),
  );
  return local / 86_400_000 + 25_569;
}
