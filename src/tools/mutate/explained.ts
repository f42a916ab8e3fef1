/** Why a change may stand without any test noticing it. A reason covers a file, or the lines of it that look like this. */
export interface Explanation {
  readonly file: RegExp;
  readonly line?: RegExp;
  readonly why: string;
}

const REMEMBERED = "What is remembered is only asked for again: the answer is the same, it takes longer.";
const PRUNED =
  "A search that looks at more, or in another order, finds the same: its answers are compared with every case tried and with a solver.";

export const EXPLAINED: readonly Explanation[] = [
  { file: /air-estimate|force-cases/, line: /known|MOST_REMEMBERED/, why: REMEMBERED },
  { file: /bend\/order\/(?:press|plain-press)/, line: /known|checked/, why: REMEMBERED },
  { file: /bend\/choose-tools/, line: /break;|continue;/, why: PRUNED },
  { file: /time\/fewest-sets/, line: /apart|taken|count|branch|MOST_TRIES|tries/, why: PRUNED },
  { file: /time\/order-sets/, line: /Infinity|done & |EXACT_UP_TO|length <= 2/, why: PRUNED },
  {
    file: /calc\/route\//,
    line: /bound|slack|mayPay|isEnough|relief|growth|MOST_LABELS|penalty|limit|stairs|free|complete|low|high|price|THIRDS/i,
    why: PRUNED,
  },
  {
    file: /check\/(?:force|room|overbend)/,
    line: /problem !== undefined|return \[/,
    why: "What is not there is left out again by the caller.",
  },
  { file: /check\/check/, line: /=== "stop"/, why: PRUNED },
];
