/** Ways to save a late job, in words. */
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { Refusal } from "../../units/refusal.ts";
import { showNumber } from "../../units/show.ts";
import type { Rescue } from "./rescue.ts";

const DIGITS = 3;
const hours = (seconds: number): string => `${showNumber(seconds / SECONDS_PER_HOUR, DIGITS)} h`;
const CENTS = 2;

/** What is done: "4 lines from the waterjet to the shear". */
export function rescueSays({ kind, station, lines }: Rescue): string {
  const of = `${lines} ${lines === 1 ? "line" : "lines"}`;
  switch (kind) {
    case "route":
      return station === "Shear" ? `${of} from the waterjet to the shear` : `${of} from the shear to the waterjet`;
    case "overtime":
      return station === "" ? "Overtime at every station" : `Overtime at ${station}`;
    case "second shift":
      return station === "" ? "A second shift at every station" : `A second shift at ${station}`;
    case "further":
      return `A second person at ${station}`;
    case "outside":
      return `Send out ${station} of ${of}`;
    case "order":
      return "Put it before the others";
  }
}

/** What that does: "saves 5 h, then in time; others 2 h later; 3.2 h of people; costs 152.00 more". */
export function effectSays({ late, saves, others, hours: people, money }: Rescue): string {
  return [
    `saves ${hours(saves)}, then ${late > 0 ? `late by ${hours(late)}` : "in time"}`,
    others > 0 ? `others ${hours(others)} more late` : others < 0 ? `others ${hours(-others)} less late` : "",
    people === undefined || people <= 0 ? "" : `${showNumber(people, DIGITS)} h of people`,
    moneySays(money),
  ]
    .filter((words) => words !== "")
    .join("; ");
}

function moneySays(money: Rescue["money"]): string {
  if (money instanceof Refusal) return `cost not known: ${money.message}`;
  if (money === 0) return "";
  return money > 0 ? `costs ${money.toFixed(CENTS)} more` : `costs ${(-money).toFixed(CENTS)} less`;
}
