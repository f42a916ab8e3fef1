import type { Finding } from "../../calc/finding.ts";
import type { BillLine } from "../nouns/line.ts";
import { findStation, type Station } from "../nouns/station.ts";

/** What a station that coats is called; one with the build of its coat is told by that. */
const COATS =
  /coat|paint|powder|plat(?:e|ing)|anodi[sz]|galvani[sz]|lacquer|enamel|blacken|black oxide|passivat|finish/i;
/** The sheet as it comes from the mill, or as the shop leaves it anyway (common practice). */
const UNCOATED =
  /^(?:-+|n\/?a|none|no|raw|bare|plain|self|mill\b.*|as (?:is|cut|bent|welded|rolled|milled)|uncoated|unfinished|unpainted|2b|2d|ba|(?:no\.? ?|#)\d+.*|brushed.*|polished.*|deburr.*|by (?:others|customer))$/i;

const coats = ({ name, coat }: Station): boolean => coat !== undefined || COATS.test(name);

/** The vendor that can do the finish. */
export const coatingStation = (stations: readonly Station[]): Station | undefined =>
  stations.find((station) => station.priceEach !== undefined && coats(station));

/** The column Finish is only the color of a coat: what no operation does is not in the price. */
export function finishFinding(
  { finish, material, operations }: BillLine,
  stations: readonly Station[],
): Finding | undefined {
  const wanted = finish.trim();
  const isOfSheet = material.gaugeSeries === "galvanized" && /^galv/i.test(wanted);
  if (wanted === "" || isOfSheet || UNCOATED.test(wanted)) return undefined;
  const isDone = operations.some(({ station }) => {
    const found = findStation(station, stations);
    return found !== undefined && (coats(found) || wanted.toLowerCase().includes(found.name.toLowerCase()));
  });
  return isDone ? undefined : { about: "finish", status: "check", kind: "not priced", name: wanted };
}
