/** The call with number `index` of the series `seed`: always the same one, so that every finding can be replayed alone. */
import { RECORDS } from "../../cells/catalogue.ts";
import type { AnyRecord } from "../../cells/record/record.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { pick, randomFrom } from "../random/random.ts";
import { exampleArguments } from "./example-arguments.ts";
import { anything, cell, KEYS, type Random, upTo } from "./values.ts";

interface RandomCall {
  readonly record: AnyRecord;
  readonly given: readonly unknown[];
}

const SPREAD = 0x9e3779b1; // odd, so that neighboring numbers begin far apart (Knuth's multiplicative hashing; memory)

export function randomCall(seed: number, index: number): RandomCall {
  const random = randomFrom(Math.imul(seed ^ (index + 1), SPREAD) ^ Math.floor(index / 2 ** 20));
  const record = pick(random, RECORDS);
  const count = Object.keys(record.parameters).length;
  if (random() < 0.35)
    return { record, given: Array.from({ length: upTo(random, count + 1) }, () => anything(random)) };
  const given: unknown[] = exampleArguments(record);
  while (given.length < count && random() < 0.5) given.push(undefined);
  for (let changes = 1 + upTo(random, 2); changes > 0 && given.length > 0; changes--) {
    const place = upTo(random, given.length - 1);
    given[place] = changedArgument(random, given[place]);
  }
  return { record, given };
}

/** A table stays a table with one thing wrong; anything else becomes anything. */
function changedArgument(random: Random, argument: unknown): unknown {
  if (!isTable(argument) || random() < 0.15) return anything(random);
  const rows = argument.map((row) => [...row]);
  const place = upTo(random, rows.length - 1);
  const row = itemAt(rows, place);
  const column = upTo(random, row.length - 1);
  const kind = random();
  if (kind < 0.5) row[column] = cell(random);
  else if (kind < 0.65) firstOf(rows)[column] = pick(random, KEYS);
  else if (kind < 0.75) rows.splice(place, 1);
  else if (kind < 0.85) rows.push([...row]);
  else for (const each of rows) each.splice(column, 1);
  return rows;
}

const isTable = (value: unknown): value is unknown[][] =>
  Array.isArray(value) && value.length > 0 && value.every((row) => Array.isArray(row) && row.length > 0);
