/**
 * The least change that betters a line, proved by planning with it. What is changed are cells of the bill, so that
 * whoever types it finds the status that was promised.
 */
import { type Finding, STATUSES, type Status, statusOf } from "../../calc/finding.ts";
import { remember } from "../../units/remember.ts";
import type { BillLine } from "../nouns/line.ts";
import { type Change, canMend, changes, withChange } from "./changes.ts";
import { cuttingOf } from "./cutting.ts";
import type { LinePlan, LineShop } from "./plan-line.ts";
import { planAlone, planOnEach } from "./plan-lines.ts";
import type { Tools } from "./tools.ts";

export interface Fix {
  /** One, or as few as will do together. */
  readonly changes: readonly Change[];
  /** The line's status with it. */
  readonly reaches: Status;
}

const isBetter = (status: Status, than: Status): boolean => STATUSES.indexOf(status) < STATUSES.indexOf(than);

/**
 * undefined: none of the shop's tools can do it, nor any change of the part that is tried here.
 * @param row the line as the bill has it; `plan` is what has come of it, `now` its status.
 * @param inBill status of the line in the whole bill with another row in its place: asked where the line alone does not
 * tell, because sheets are counted, two machines may cut it, or its tools are chosen with those of other lines; undefined
 * where that takes too long: what only the bill can tell is not offered then.
 */
export function fixOf(
  row: BillLine,
  plan: LinePlan,
  now: Status,
  shop: LineShop,
  inBill: ((changed: BillLine) => Status) | undefined,
): Fix | undefined {
  if (now === "clear") return undefined;
  const { fix, isAsked } = fixAlone({ ...row, ...BESIDE_FINDINGS }, plan.tools, now, shop);
  return isAsked && inBill ? search(row, plan.tools, now, shop, inBill) : fix;
}

/** The fields of a line that no finding depends on, blank. */
const BESIDE_FINDINGS = {
  row: 0,
  part: "",
  description: "",
  quantity: 1,
  spares: 0,
  area: "",
  due: undefined,
  wantsCertificate: false,
  accepted: "",
} as const satisfies Partial<BillLine>;

/** After an edit of one line the fixes of the others are known, where the rest of the bill has no say in them. */
const fixAlone = remember(
  8192,
  (
    bare: BillLine,
    tools: Tools | undefined,
    now: Status,
    shop: LineShop,
  ): { readonly fix: Fix | undefined; readonly isAsked: boolean } => {
    let isAsked = false;
    const fix = search(bare, tools, now, shop, () => {
      isAsked = true;
      return now;
    });
    return { fix, isAsked };
  },
);

function search(
  row: BillLine,
  tools: Tools | undefined,
  now: Status,
  shop: LineShop,
  inBill: (changed: BillLine) => Status,
): Fix | undefined {
  let [line, on, made]: [BillLine, Tools | undefined, readonly Change[]] = [row, tools, []];
  while (made.length < MOST_CHANGES) {
    const open = worstAlone(line, shop);
    if (open.findings.some((finding) => !canMend(finding))) return undefined;
    let step: { readonly change: Change; readonly line: BillLine } | undefined;
    for (const change of changes(line, on, shop)) {
      if (!open.findings.some((finding) => canMend(finding, change))) continue;
      // Two of one kind contradict each other on paper: the second would undo the first.
      if (made.some(({ kind }) => kind === change.kind)) continue;
      const next = withChange(line, change);
      const left = worstAlone(next, shop);
      if (isBetter(left.status, now)) {
        // Where the plan's choice of the other tools decides, they are named as well.
        for (const each of change.kind === "tools" ? [change, allTools(next, shop)] : [change]) {
          const reaches = statusOnEach(withChange(line, each), shop);
          if (reaches && isBetter(reaches, now)) return { changes: [...made, each], reaches };
        }
        const reaches = inBill(next);
        if (isBetter(reaches, now)) return { changes: [...made, change], reaches };
      } else if (left.status === open.status && left.findings.length < open.findings.length)
        step ??= { change, line: next };
    }
    // No change raises the status by itself: one that removes a problem is kept, and the rest is fixed from there.
    const planned = step && planAlone(step.line, shop);
    if (!step || !planned || !("blank" in planned)) return undefined;
    [line, on, made] = [step.line, planned.tools, [...made, step.change]];
  }
  return undefined;
}
const MOST_CHANGES = 3; // chosen: whoever has to change more draws another part

/** The set that the line would be bent with alone. */
function allTools(line: BillLine, shop: LineShop): Change {
  const planned = planAlone(line, shop);
  const { brake, die, punch } = ("blank" in planned && planned.tools) || {};
  return {
    kind: "tools",
    ...(die ? { die: die.name } : {}),
    ...(punch ? { punch: punch.name } : {}),
    ...(brake ? { brake: brake.name } : {}),
  };
}

/** The worst status, and what is found at it; nothing is where the line cannot be planned at all. */
function worstAlone(
  line: BillLine,
  shop: LineShop,
): { readonly status: Status; readonly findings: readonly Finding[] } {
  const planned = planAlone(line, shop);
  const findings = "blank" in planned ? findingsOf(planned) : planned.findings;
  const status = statusOf(findings);
  return { status, findings: findings.filter((finding) => finding.status === status) };
}

/** Of the line alone on the shop's tables, the findings of the machine that would cut it among them. */
export const statusAlone = (line: BillLine, shop: LineShop): Status => worstAlone(line, shop).status;

const findingsOf = ({ findings, cutting }: LinePlan): Finding[] => [
  ...findings,
  ...(cutting.shear ? cutting.onShear : []),
];

/** The same status whatever the rest of the bill is; undefined where the rest may decide. */
function statusOnEach(line: BillLine, shop: LineShop): Status | undefined {
  const statuses = new Set<Status>();
  for (const plan of planOnEach(line, shop)) {
    if (!("blank" in plan) || mayRunOut(plan, shop)) return undefined;
    statuses.add(statusOf(findingsOf(plan)));
    // Where the waterjet can cut it too the route decides whether what is found on the shear counts.
    if (plan.cutting.waterjet) statuses.add(statusOf(plan.findings));
  }
  return statuses.size === 1 ? [...statuses][0] : undefined;
}

/** Whether it needs a sheet of which there are only so many. */
function mayRunOut({ line, blank, sheets, cutting }: LinePlan, shop: LineShop): boolean {
  const free = sheets?.filter(({ count }) => count === undefined);
  if (!free || free.length === sheets?.length) return false;
  if (free.length === 0) return true;
  const without = cuttingOf(line, blank, free, shop);
  return without.shear !== cutting.shear || without.waterjet !== cutting.waterjet;
}
