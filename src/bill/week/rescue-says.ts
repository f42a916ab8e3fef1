/** Ways to save a late job, in words. */
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { Refusal } from "../../units/refusal.ts";
import { showNumber } from "../../units/show.ts";
import type { Rescue } from "./rescue.ts";

const DIGITS = 3;
const hours = (seconds: number): string => `${showNumber(seconds / SECONDS_PER_HOUR, DIGITS)} h`;
const CENTS = 2;
const MINUTE = 60; // seconds, by definition

const MOST_NAMED = 4;
const named = (parts: readonly string[]): string =>
  parts.length <= MOST_NAMED
    ? parts.join(", ")
    : `${parts.slice(0, MOST_NAMED).join(", ")} and ${parts.length - MOST_NAMED} more`;

/** What is done: "PR-01, PR-02 from the waterjet to the shear", "Overtime at Weld, 1 h a day on 3 days". */
export function rescueSays({ kind, station, parts, perDay, days, before, hours: added }: Rescue): string {
  const place = station === "" ? "every station" : station;
  const longer = `${showNumber(perDay, DIGITS)} h a day on ${days} ${days === 1 ? "day" : "days"}`;
  switch (kind) {
    case "route":
      return `${named(parts)} ${station === "Shear" ? "from the waterjet to the shear" : "from the shear to the waterjet"}`;
    case "overtime":
      return `Overtime at ${place}, ${longer}`;
    case "second shift":
      return `A second shift at ${place}, ${longer}`;
    case "further":
      return station === ""
        ? "One more person in every shift until it is done"
        : `A second person at ${station}${added === 0 ? ", of those who are there" : ""}`;
    case "outside":
      return `Send out ${station} of ${named(parts)}`;
    case "order":
      return before === "" ? "Put it before the others" : `Put it before ${before}`;
  }
}

/** What that does: "saves 5 h, then in time; Pier railing 2 h more late; 3.2 h of people; costs 152.00 more". */
export function effectSays({ late, saves, others, harmed, hours: people, money }: Rescue): string {
  const gained = others - harmed.reduce((sum, each) => sum + each.late, 0);
  return [
    `saves ${hours(saves)}, then ${late > 0 ? `late by ${hours(late)}` : "in time"}`,
    ...harmed.map((each) => `${each.job} ${hours(each.late)} more late`),
    gained <= -MINUTE ? `others ${hours(-gained)} less late` : "",
    people === undefined ? "" : peopleSay(people),
    moneySays(money),
  ]
    .filter((words) => words !== "")
    .join("; ");
}

/** "24 h of people", "6 h of people less"; "" below what is written. */
function peopleSay(people: number): string {
  if (Math.abs(people) < LEAST_HOURS) return "";
  return `${showNumber(Math.abs(people), DIGITS)} h of people${people < 0 ? " less" : ""}`;
}
const LEAST_HOURS = 0.005; // chosen: less is printed as 0

function moneySays(money: Rescue["money"]): string {
  if (money instanceof Refusal) return `cost not known: ${money.message}`;
  if (money === 0) return "";
  return money > 0 ? `costs ${money.toFixed(CENTS)} more` : `costs ${(-money).toFixed(CENTS)} less`;
}
