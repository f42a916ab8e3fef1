/** A cell of type "d" holds an ISO 8601 date; as a value it is its serial number (1900 date system). */
export function isoSerial(text: string): number | string {
  const time = Date.parse(
    /[zZ]|[+-]\d\d:\d\d$/.test(text) ? text : `${text}${text.includes("T") ? "Z" : "T00:00:00Z"}`,
  );
  return Number.isNaN(time) ? text : time / 86_400_000 + 25_569;
}
