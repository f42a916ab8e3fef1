/** The week's page: open jobs on the shop's board, what is late beside it, and what a moved bar does. */

import { dayOfWeek, timeOfDay } from "../../../bill/day.ts";
import type { MovedBar } from "../../../bill/week/move-bar.ts";
import { missing } from "../../../units/certain.ts";
import { element } from "../../pane/dom/element.ts";
import { takeDropped } from "../dropped.ts";
import { painted } from "../painted.ts";
import { progressAfter } from "../progress.ts";
import { WeekBoardView } from "./board.ts";
import type { BoardJob, WeekAnswer, WeekBoard, WeekFile, WeekRequest } from "./protocol.ts";
import { changedJobs, type ServedJobs, servedJobs } from "./week-files.ts";

const byId = (id: string) => document.getElementById(id) ?? missing();
const undo = byId("undo") as HTMLButtonElement;
const say = (...words: (Node | string)[]) => byId("message").replaceChildren(...words);
const busy = progressAfter(byId("progress-words"), byId("cancel"));

let served: ServedJobs;
/** Dropped on the page. */
let dropped: readonly WeekFile[] = [];
let moves: readonly MovedBar[] = [];

let worker: Worker | undefined;
const waiting: { resolve(answer: WeekAnswer): void; reject(problem: Error): void }[] = [];

function ask(request: WeekRequest): Promise<WeekAnswer> {
  worker ??= begun();
  return new Promise((resolve, reject) => {
    waiting.push({ resolve, reject });
    busy(true);
    (worker ?? missing()).postMessage(request);
  });
}

function begun(): Worker {
  const made = new Worker(new URL("week-engine.js", location.href), { type: "module" });
  made.addEventListener("message", ({ data }: MessageEvent<WeekAnswer>) => {
    const next = waiting.shift();
    busy(waiting.length > 0);
    if (data.said === "refused") next?.reject(new Error(data.message));
    else next?.resolve(data);
  });
  made.addEventListener("error", ({ message }) => end(`the engine stopped: ${message}`));
  return made;
}

/** Ends what is being worked out; the next question begins anew. */
function end(why: string): void {
  worker?.terminate();
  worker = undefined;
  busy(false);
  for (const { reject } of waiting.splice(0)) reject(new Error(why));
}

async function attempt(action: () => Promise<unknown>): Promise<void> {
  try {
    await action();
  } catch (problem) {
    say((problem as Error).message);
  }
}

const board = new WeekBoardView({
  move: (moved) => void attempt(() => changed({ ask: "move", moved }, [...moves, moved])),
  tell: (words) => {
    byId("told").textContent = words;
  },
  bill: (job) => {
    const at = served.names.indexOf(job);
    return at < 0 ? undefined : `${at}/`;
  },
});
byId("week").append(board.element);
byId("beside").tabIndex = 0; // it scrolls

async function changed(request: WeekRequest, made: readonly MovedBar[]): Promise<void> {
  const found = await shown(request);
  moves = made;
  undo.disabled = moves.length === 0;
  if (request.ask === "undo") return say("Undone.");
  const pinned = (week: WeekBoard | undefined) =>
    `${week?.missed.length ? `Not kept as pinned: ${week.missed.join("; ")}.` : "Pinned;"} ${barsMoved(week)} bars have moved. The jobs that move are named at the side.`;
  say(`${pinned(found)} Searching for a better plan.`);
  say(pinned(await shown({ ask: "search" })));
}

const barsMoved = (week: WeekBoard | undefined): number =>
  (week?.jobs ?? []).flatMap((job) => job.bars).filter(({ was }) => was).length;

async function shown(request: WeekRequest): Promise<WeekBoard | undefined> {
  const answer = await ask(request);
  if (answer.said !== "week") return undefined;
  draw(answer.board);
  return answer.board;
}

function draw(week: WeekBoard): void {
  byId("file").textContent = `The week from ${dayOfWeek(week.now)} ${timeOfDay(week.now)}`;
  byId("figures").replaceChildren(
    ...week.figures.map(([name, value]) => element("div", {}, element("dt", {}, name), element("dd", {}, value))),
  );
  board.draw(week);
  const late = week.jobs.filter((job) => job.late > 0);
  byId("beside").replaceChildren(
    element("h2", {}, late.length === 0 ? "Late: none" : "Late"),
    ...late.map(lateView),
    ...listed("Moved by the last pin", week.moves),
    ...(week.pins.length === 0
      ? []
      : [
          element("h2", {}, "Pinned here"),
          element("p", { class: "hint" }, 'To keep one, type it into the column "Pinned" of its line in the workbook.'),
          element(
            "ul",
            {},
            ...week.pins.map(({ job, line, mark }) =>
              element("li", {}, `${job}, ${line}: `, element("code", {}, mark)),
            ),
          ),
        ]),
    ...listed("To correct in the workbooks", week.faults),
  );
}

const listed = (title: string, sentences: readonly string[]): HTMLElement[] =>
  sentences.length === 0
    ? []
    : [element("h2", {}, title), element("ul", {}, ...sentences.map((sentence) => element("li", {}, sentence)))];

function lateView({ name, verdict, says, decides }: BoardJob): HTMLElement {
  const made = element("article", { class: "late-job stop" });
  const button = element("button", { type: "button" }, "What would save it?");
  button.addEventListener(
    "click",
    () =>
      void attempt(async () => {
        const answer = await ask({ ask: "rescues", job: name });
        if (answer.said !== "rescues") return;
        const ways = answer.ways.length > 0 ? answer.ways : ["Nothing that was tried saves it."];
        button.replaceWith(element("ul", {}, ...ways.map((way) => element("li", {}, way))));
      }),
  );
  made.append(
    element("h3", {}, element("span", { class: "mark", "aria-hidden": "true" }, "■ "), `${name}: ${verdict}`),
    element("p", {}, `${(says[0] ?? missing()).toUpperCase()}${says.slice(1)}. Decided by ${decides}.`),
    button,
  );
  return made;
}

/** The first plan at once, then a search for a better one. */
async function open(isSearched = true): Promise<void> {
  const { files, shop, now } = served;
  await shown({ ask: "open", files: [...files, ...dropped], shop, now: now ?? undefined, moves });
  undo.disabled = moves.length === 0;
  if (!isSearched) return;
  say("A first plan; searching for a better one.");
  await shown({ ask: "search" });
  say("");
}

async function read(): Promise<void> {
  served = await servedJobs();
  await open();
}

/** What somebody else did to a file is said as soon as the person comes back to the page. */
async function watch(): Promise<void> {
  const other = await changedJobs(served);
  if (other.length === 0) return;
  const again = element("button", { type: "button" }, "Read them again");
  again.addEventListener("click", () => void attempt(read));
  say(`Changed on disk since they were read: ${other.join(", ")}. `, again);
}

const back = () => attempt(() => changed({ ask: "undo" }, moves.slice(0, -1)));
undo.addEventListener("click", () => void back());
addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z" || moves.length === 0) return;
  event.preventDefault();
  void back();
});
byId("cancel").addEventListener("click", () => {
  end("Stopped; the plan found so far stays.");
  void attempt(() => open(false));
});
takeDropped(async (name, bytes, isWorkbook) => {
  if (!isWorkbook) return say("A job's workbook can be dropped here; a parts list on the page of a bill.");
  dropped = [...dropped, { name: name.replace(/\.xls[xm]$/i, ""), bytes }];
  await attempt(() => open());
});
addEventListener("focus", () => void attempt(watch));
addEventListener("beforeunload", (event) => {
  if (moves.length > 0) event.preventDefault();
});

void attempt(() => painted().then(read));
