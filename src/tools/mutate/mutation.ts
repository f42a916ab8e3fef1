/**
 * npm run mutate -- [TOPIC ...]
 * Mutation testing of the arithmetic and of the plan of a bill, a topic at a time, each against its own tests; of the largest topics a share of the lines.
 * Unfinished business is remembered in .build, so that a second run only tries what has changed. Writes the scores to
 * tests/recorded/mutation.json and what survived to tests/recorded/survivors.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { explanationsOf } from "./explained.ts";
import { linesToMutate } from "./sampled-lines.ts";
import { inAll, judged, scoreText } from "./scores.ts";
import { survivorsPage } from "./survivors-page.ts";

/** Where the tests of a topic stand, from tests; "reference" are the published answers, RECORDED whole bills. */
const RECORDED = "cells/bill/{recorded,answers}.test.ts";
/** A topic is a folder of src, without what has a topic of its own in it, or one file of src. */
const TOPICS: Readonly<Record<string, readonly string[]>> = {
  units: ["units"],
  "calc/material": ["calc/material", "reference/reference.test.ts", RECORDED],
  "calc/flat": ["calc/flat", "reference/reference.test.ts", RECORDED],
  "calc/shear": ["calc/shear", "reference/reference.test.ts", "cells/ordinary-brackets.test.ts", RECORDED],
  "calc/jet": ["calc/jet", "reference/reference.test.ts"],
  "calc/handling": ["calc/handling", "reference/reference.test.ts", RECORDED],
  "calc/tolerance": ["calc/tolerance", "reference/reference.test.ts", RECORDED],
  "calc/cost": ["calc/cost", RECORDED],
  "calc/time": ["calc/time", RECORDED],
  "calc/schedule": ["calc/schedule", RECORDED],
  "calc/strip": ["calc/strip"],
  "calc/bend": ["calc/bend/*.test.ts", "reference/reference.test.ts", RECORDED],
  "calc/bend/check": [
    "calc/bend/limits.test.ts",
    "calc/bend/checks.test.ts",
    "cells/ordinary-brackets.test.ts",
    RECORDED,
  ],
  "calc/route": ["calc/route", RECORDED],
  "calc/bend/mechanics": [
    "calc/bend/mechanics/{root,answers,finite-elements,oracles,band,properties}.test.ts",
    RECORDED,
  ],
  "calc/bend/order": [
    "calc/bend/order/{distance,plain-press,shortage,stops,watch,half,order,families,pose}.test.ts",
    RECORDED,
  ],
  "calc/cutting": [
    "calc/cutting/{build-problem,cut-list,gauge-rule,gauges,findings,knapsack,replay,remnants,plan-cuts}.test.ts",
  ],
  "calc/cutting/replay": ["calc/cutting/replay.test.ts"],
  "calc/cutting/knapsack": ["calc/cutting/knapsack.test.ts"],
  "calc/cutting/strip-table": ["calc/cutting/strip-{patterns,table}.test.ts"],
  "calc/cutting/strip-patterns": ["calc/cutting/strip-patterns.test.ts"],
  "calc/cutting/guillotine-layout": ["calc/cutting/guillotine-layout.test.ts"],
  "calc/cutting/best-place": ["calc/cutting/best-place.test.ts"],
  bill: [
    "bill/{causes,day,fix-says,late-says,line-answer,on-paper,plan,release,says}.test.ts",
    "bill/{changes,dates,load,money,route,week}/*.test.ts",
  ],
  "bill/breaks": ["bill/breaks", "cells/bill/breaks.test.ts"],
  "bill/changes": ["bill/changes"],
  "bill/cut": ["bill/cut"],
  "bill/dates": ["bill/dates"],
  "bill/lines": ["bill/lines", "bill/one-bend.test.ts"],
  "bill/load": ["bill/load"],
  "bill/money": ["bill/money/{plan-money,six-lines}.test.ts"],
  "bill/needs": ["bill/needs"],
  "bill/nouns": ["bill/nouns", "cells/tables"],
  "bill/route": ["bill/route"],
  "bill/setups": ["bill/setups"],
  "bill/time": ["bill/time/{bending-work,finished,shear-set-up,works}.test.ts"],
  "bill/week": ["bill/week"],
};
/** Of the largest only some lines: all of them would take hours. */
const SHARES: Readonly<Record<string, number>> = {
  "calc/route": 0.5,
  "calc/bend/mechanics": 0.15,
  "calc/bend/order": 0.08,
  "calc/cutting": 0.06,
  "calc/cutting/guillotine-layout": 0.5,
  "calc/cutting/replay": 0.5,
  "calc/cutting/strip-patterns": 0.4,
  "calc/cutting/strip-table": 0.5,
  bill: 0.2,
  "bill/cut": 0.3,
  "bill/lines": 0.12,
  "bill/nouns": 0.4,
  "bill/week": 0.1,
};
const SCORES = "tests/recorded/mutation.json";
const REPORT = ".build/mutation.json";
const SURVIVORS = "tests/recorded/survivors";

const wanted = process.argv.slice(2);
const unknown = wanted.filter((topic) => !Object.hasOwn(TOPICS, topic));
if (unknown.length > 0) {
  console.error(`TOPIC must be one of ${Object.keys(TOPICS).join(", ")}; got ${unknown.join(", ")}`);
  process.exit(64);
}
mkdirSync(".build", { recursive: true });
mkdirSync(SURVIVORS, { recursive: true });
for (const topic of wanted.length > 0 ? wanted : Object.keys(TOPICS)) {
  console.log(`== ${topic}`);
  const share = SHARES[topic] ?? 1;
  const { status } = spawnSync(
    process.execPath,
    [
      "node_modules/@stryker-mutator/core/bin/stryker.js",
      "run",
      "src/tools/mutate/stryker.config.mjs",
      "--mutate",
      linesToMutate({ topic, share, topics: Object.keys(TOPICS) }).join(","),
    ],
    { stdio: "inherit", env: { ...process.env, MUTATED: (TOPICS[topic] ?? []).join(" ") } },
  );
  if (status !== 0) {
    process.exitCode = 1;
    continue;
  }
  const known = JSON.parse(readFileSync(SCORES, "utf8"));
  const report = JSON.parse(readFileSync(REPORT, "utf8"));
  const page = `${SURVIVORS}/${topic.replaceAll("/", "-")}.md`;
  const why = explanationsOf(existsSync(page) ? readFileSync(page, "utf8") : "");
  // The report remembers other topics from earlier runs; only this one was judged by its own tests.
  const { score, survivors } = judged({ topic, share, topics: Object.keys(TOPICS) }, report, why);
  writeFileSync(SCORES, scoreText({ ...known, [topic]: score }));
  writeFileSync(page, survivorsPage(topic, survivors));
}
console.log(inAll(JSON.parse(readFileSync(SCORES, "utf8"))));
