import { type Money, money } from "../../units/quantity.ts";
import { SECONDS_PER_HOUR, type Seconds } from "../time/seconds.ts";

/** Time at a station's hourly rate, and a second person's where the piece is too heavy for one. By definition. */
export const laborCost = (time: Seconds, rate: Money, people: number, secondPerson: Money): Money =>
  money((time / SECONDS_PER_HOUR) * (rate + (people - 1) * secondPerson));
