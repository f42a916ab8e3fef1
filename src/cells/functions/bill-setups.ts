import { lineName } from "../../bill/line-name.ts";
import { hitsOf } from "../../bill/lines/bent-strip.ts";
import { isQuoted } from "../../bill/plan.ts";
import { noQuoteSays, problemsSay } from "../../bill/says.ts";
import { type BentLine, planSetUps } from "../../bill/setups/plan-setups.ts";
import { showNumber } from "../../units/show.ts";
import { fromInternal, type UnitSystem } from "../../units/system.ts";
import { step } from "../../units/working.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billSetups = defineBillFunction({
  name: "BILL.SETUPS",
  question:
    "In which order is the brake set up, with which die and punch, how deep below the die's top, and which stops?",
  example: { formula: `=INDEX(SHOP.BILL.SETUPS(${EXAMPLE_CUTTERS}),2,5)`, answer: "V 2" },
  source:
    "order and stops as BEND.ORDER on the outlines given, else on plain tools after the tables (derived); fewest sets proved by branching (derived); depth by air-bend mechanics or geometry (derived), a first setting only",
  answer: (plan, { work }) => {
    const { system } = plan.shop;
    const setUps = planSetUps(plan.quoted);
    const fewest = plan.areSetsProved ? "fewest there can be (proved)" : "fewest found";
    step(work, "changes", "sets of die and punch", setUps.length, "count", `${fewest}, each set once (derived)`);
    const bent = setUps.flatMap(({ lines }, i) =>
      lines.map((line): Row => ({ "Set-up": i + 1, ...setUpRow(line, system) })),
    );
    const flat = plan.quoted
      .filter(({ plan: { tools } }) => tools === undefined)
      .map(({ part }): Row => ({ Part: part, Caution: "Flat: not for the brake." }));
    const left = plan.lines
      .filter((line) => !isQuoted(line))
      .map((line): Row => ({ Part: lineName(line), Message: noQuoteSays(line.findings, system) }));
    const rows = [...bent, ...flat].map((row, i) => ({ Run: i + 1, ...row }));
    return spill("BILL.SETUPS", [...rows, ...left], system);
  },
});

type Row = SpillRow<"BILL.SETUPS">;

function setUpRow(answer: BentLine, system: UnitSystem): Row {
  const { tools, strips, force, line } = answer.plan;
  const hits = strips.map(hitsOf);
  const number = (value: number) => showNumber(fromInternal(value, "length", system), 4);
  const angles = [...new Set([...line.main.angles, ...(line.cross?.angles ?? [])].map(Math.abs))];
  return {
    Part: line.part,
    Brake: tools.brake.name,
    Die: tools.die.name,
    Punch: tools.punch?.name,
    "Punch below die": Math.max(...strips.flatMap(({ depths }) => depths)),
    Stops: hits.map((list) => list.map(({ stop }) => number(stop)).join("; ")).join(" | "),
    Order: hits.map((list) => list.map(({ bend }) => bend).join("; ")).join(" | "),
    "Order from": strips
      .map(({ order, isPlain }) => (order.feasible ? (isPlain ? "plain tools" : "outlines") : "usual"))
      .join(" | "),
    Force: force.expected,
    Caution: [
      ...problemsSay(answer.findings, system),
      angles.length > 1 ? `Angles differ (${angles.join(", ")} degrees): the depth is for the sharpest.` : "",
      line.cross ? "Bent both ways: the first direction's flanges must clear the tools." : "",
    ]
      .filter((text) => text !== "")
      .join(" "),
  };
}
