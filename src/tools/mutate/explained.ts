/** Why a change may go unnoticed by every test. A reason covers a file, or the lines of it that look like this. */
interface Explanation {
  readonly file: RegExp;
  readonly line?: RegExp;
  /** Only where a comparison takes equality or takes it no longer. */
  readonly equality?: true;
  readonly why: string;
}

const REMEMBERED = "What is remembered is only asked for again: the answer is the same, it takes longer.";
const EQUAL =
  "It differs only where two computed lengths, angles or forces are the same to the last digit; either answer is right.";
const SEARCHED =
  "It steers a search: every plan is cut again on paper by the tests, so that no change makes a wrong one; whether it uses more metal is for the benchmark to say.";
const PRUNED =
  "A search that looks at more, or in another order, finds the same: its answers are compared with every case tried and with a solver.";

const EXPLAINED: readonly Explanation[] = [
  { file: /air-estimate|force-cases/, line: /known|MOST_REMEMBERED|if \(work\)/, why: REMEMBERED },
  { file: /bend\/order\/(?:press|plain-press)/, line: /known|checked/, why: REMEMBERED },
  { file: /cutting\/solution/, line: /known/, why: REMEMBERED },
  {
    file: /bend\/(?:mechanics|order)\/|cutting\/replay|shear\/force|strip\/shop-correction/,
    equality: true,
    why: EQUAL,
  },
  {
    file: /bend\/(?:radius-acceptance|check\/opening)/,
    equality: true,
    why: "What is just at the limit was taken before: only what is off it comes here.",
  },
  {
    file: /bend\/(?:check\/radius|minimum-radius)/,
    line: /!== undefined && at|=== undefined \|\| !at/,
    why: "A figure that is not there is neither at least nor at most another.",
  },
  {
    file: /bend\/maximum-thickness/,
    line: /HALVINGS/,
    equality: true,
    why: "One halving more of what is below any rounding.",
  },
  {
    file: /schedule\/finish/,
    line: /FURTHEST_DAYS|span\.from >= to/,
    equality: true,
    why: "The days looked back over double from 14 and are never just the most; an interval of no length adds no work.",
  },
  {
    file: /time\/order-sets/,
    line: /count|best < 0/,
    equality: true,
    why: "Beyond the end of a table there is nothing, and the set numbered 0 is ordered before any other is sought.",
  },
  {
    file: /time\/fewest-sets/,
    line: /dislike < best\.dislike/,
    equality: true,
    why: "Two choices liked alike: either is right.",
  },
  {
    file: /route\/(?:labels|within)/,
    line: /: Machine\[\] = \[\]/,
    why: "Every entry is written before it is read.",
  },
  {
    file: /route\/multipliers/,
    line: /at <= 0/,
    equality: true,
    why: "Where the price is 0 both answers are 0.",
  },
  {
    file: /mechanics\/section/,
    line: /new Array/,
    why: "An array made at its length is only faster.",
  },
  {
    file: /bend\/(?:minimum-flange|springback-estimate)|strip\/bed-evenness/,
    line: /180 - bendAngle|Math\.PI - radians/,
    why: "A sine is the same on either side of the right angle.",
  },
  {
    file: /bend\/choose-tools/,
    line: /more: \(/,
    why: "Where no pair has what more is asked, all that are clear are answered: as if nothing had been asked.",
  },
  {
    file: /mechanics\/air-bend-band/,
    line: /by\.exponent/,
    why: "Every deviation is taken both up and down, so that its sign says nothing.",
  },
  {
    file: /mechanics\/air-bend-to-angle/,
    line: /low - step \* fLow/,
    why: "A wider bracket holds the same root.",
  },
  { file: /cutting\/(?:best-place|insertion|kept-sheets|plan-search|strip-table)/, why: SEARCHED },
  { file: /cutting\/floor-(?:order|try)/, line: /sort|counts|isOtherwise/, why: SEARCHED },
  {
    file: /bend\/order\/ways/,
    line: /lift > 0/,
    why: "Without a lift what lies below was met on the way in already: it lies behind as well.",
  },
  {
    file: /cutting\/(?:knapsack|guillotine-layout)/,
    line: /length/,
    why: "A store that grows sooner holds the same.",
  },
  {
    file: /(?:shear\/check|check\/remedy)/,
    line: /statusOf\(problems\) === "clear"|candidate !== shear/,
    why: "Where nothing stops no remedy is named, and a machine that stops is not its own remedy.",
  },
  {
    file: /units\/nearly/,
    line: /Math\.max/,
    why: "Two figures that differ by so little are as good as equal: the one scales the slack like the other.",
  },
  { file: /bend\/choose-tools/, line: /break;|continue;|ofDie/, why: PRUNED },
  {
    file: /time\/fewest-sets/,
    line: /apart|taken|count|of groups\) \{|branch|MOST_TRIES|tries|options\.length/,
    why: PRUNED,
  },
  { file: /time\/order-sets/, line: /Infinity|done & |EXACT_UP_TO|length <= 2/, why: PRUNED },
  {
    file: /calc\/route\//,
    line: /bound|slack|mayPay|best\.cost <= enough\)|relief|growth|MOST_LABELS|penalty|limit|stairs|free|complete|low|high|price|THIRDS/i,
    why: PRUNED,
  },
  { file: /route\/cheapest-within/, line: /labels|left\.|\[other\]|capacity\.|shear <= waterjet/, why: PRUNED },
  { file: /route\/labels/, line: /const kept/, why: PRUNED },
  { file: /route\/earliest-finish/, line: /b\.finish|shear!|bending|sum \+ brake|Math\.max\(most/, why: PRUNED },
  { file: /route\/within/, line: /opening|goal ===|left\.|assign\(lines|found\.cost/, why: PRUNED },
  {
    file: /check\/(?:force|room|overbend)/,
    line: /problem !== undefined|return \[/,
    why: "What is not there is left out again by the caller.",
  },
  { file: /check\/check/, line: /=== "stop"/, why: PRUNED },
];

/** Why no test needs to notice that `was` became `replacement` in this line of the file. */
export const whyUnnoticed = (file: string, line: string, was: string, replacement: string): string | undefined =>
  EXPLAINED.find(
    (reason) =>
      reason.file.test(file) &&
      (!reason.line || reason.line.test(line)) &&
      (!reason.equality || withoutEquality(was) === withoutEquality(replacement)),
  )?.why;

const withoutEquality = (code: string): string => code.replace(/([<>])=/g, "$1");
