/** The page for people without Excel: the lines of a bill to work through, and behind them the workbook's tables. */
import { firstOf, missing } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { guide } from "../pane/guide/guide.ts";
import { agreement, lacksSays, lineView } from "../pane/line/line-view.ts";
import { BoardView } from "./board-view.ts";
import { cutsView } from "./cuts-view.ts";
import { takeDropped } from "./dropped.ts";
import { Ended, Engine } from "./engine.ts";
import { Files } from "./files.ts";
import { History } from "./history.ts";
import { inTurn } from "./in-turn.ts";
import { listenToKeys } from "./keys.ts";
import { painted } from "./painted.ts";
import { Places } from "./places.ts";
import { progressAfter } from "./progress.ts";
import type { Board, ChangedView, Edit, Edited, Opened, SheetPlace } from "./protocol.ts";
import { redraw } from "./redraw.ts";
import { attempt, offer, say } from "./said.ts";
import { StartView } from "./start-view.ts";
import { TablesView } from "./tables-view.ts";

const byId = <T extends HTMLElement = HTMLElement>(id: string): T => document.getElementById(id) as T;
const button = (id: string) => byId<HTMLButtonElement>(id);

const engine = new Engine(
  () => new Worker(new URL("engine.js", location.href), { type: "module" }),
  progressAfter(byId("progress-words"), button("cancel")),
);
const history = new History();
let files = new Files("");
let board: Board | undefined;
let isUnsaved = false;

const lines = new BoardView(byId("counters"), {
  selected: (row, isOpened) => {
    if (isOpened) {
      places.screen("line");
      say(""); // what was said was of another line
    }
    void attempt(() => showLine(row));
  },
  fix: (row) => void attempt(() => applyFix(row)),
  problem: (words, hasProblems) => {
    byId("problem").textContent = words;
    for (const id of ["previous", "next"]) button(id).disabled = !hasProblems;
  },
});
const tables = new TablesView(
  {
    view: async (sheet) => (await engine.ask({ ask: "sheet", sheet })).view,
    look: async (place) => {
      const { detail, line } = await engine.ask({ ask: "look", place });
      if (line !== undefined && line !== lines.selected) lines.select(line);
      return detail;
    },
    typed: (cells) => attempt(() => made(() => engine.edit(...cells))),
    row: (place, change) => void attempt(() => made(() => engine.row(place, change))),
    say,
  },
  (sheet) => places.openSheet(sheet),
);
const start = new StartView({
  understand: (asked) => engine.ask({ ask: "list", ...asked }),
  start: (asked) =>
    void attempt(async () => {
      const { bytes } = await engine.ask({ ask: "start", ...asked });
      const name = `${asked.name.replace(/\.[^.]*$/, "") || "New bill"}.xlsx`;
      await openBytes(new Files(name), bytes);
      isUnsaved = true;
      say(`${name} is begun: save it to keep it.`);
    }),
});
const places = new Places({
  lines: () => lines.element,
  table: (sheet) => {
    void attempt(() => tables.show(sheet));
    return tables.element;
  },
  cuts: async () => cutsView((await engine.ask({ ask: "cuts" })).sheets),
  start: () => start.element,
  guide: async () => element("div", { class: "guide-place" }, guide((await engine.ask({ ask: "guide" })).guide)),
});

async function openBytes(from: Files, bytes: Uint8Array): Promise<void> {
  const opened = await engine.open(bytes).catch((problem: Error) => {
    throw problem instanceof Ended ? problem : new Error(`${from.name}: ${problem.message}`);
  });
  files = from;
  history.clear();
  show(opened);
  say(opened.notes.join(" "));
  isUnsaved = false;
  button("save").disabled = false;
}

function show(opened: Opened): void {
  byId("file").textContent = files.name;
  document.title = `${files.name}: Bracket Bill`;
  tables.reset(opened.sheets);
  board = opened.board;
  if (board) lines.update(board);
  start.missing(board?.missing);
  places.reset(opened.sheets, board !== undefined);
  if (board) {
    lines.first();
    lines.focus();
  }
  showHistory();
  finishSoon();
}
let shownLine: number | undefined;
async function showLine(row: number): Promise<void> {
  shownLine = row;
  const { report, fix } = await engine.ask({ ask: "line", row });
  if (shownLine !== row || !report) return; // the person has moved on
  const inTable = offer("Show in the table", async () => {
    const { header } = board ?? missing();
    return goTo({ ...header, row: header.row + row - 1 });
  });
  const view = lineView(report, fix, () => void attempt(() => applyFix(row)));
  const drawings = element("button", { type: "button", class: "to-drawings" }, "Drawings, hit by hit");
  drawings.addEventListener("click", () => places.screen("drawing"));
  (view.querySelector(".figures") ?? missing()).before(element("p", { class: "line-actions" }, inTable, " ", drawings));
  view.querySelector("figure")?.addEventListener("click", () => places.screen("drawing"));
  redraw(byId("line"), view, String(row));
}

function goTo({ sheet, row, column }: SheetPlace): void {
  places.openSheet(sheet);
  void attempt(() => tables.show(sheet, { row, column }).then(() => tables.focus()));
}

/** Where the next line is typed. */
function addLine(): void {
  if (!board) {
    places.open("start");
    return;
  }
  goTo(board.next);
  say("Type the new line here, right below the table; it then belongs to the table.");
}

async function applyFix(row: number, isAgreed = false): Promise<void> {
  const { fix } = await engine.ask({ ask: "line", row });
  if (!fix) return say("No change that was tried improves this line.");
  if (fix.lacks.length > 0) return say(lacksSays(fix));
  const asked = isAgreed ? undefined : agreement(fix, () => void attempt(() => applyFix(row, true)));
  if (asked) {
    say(...asked);
    return asked[1].focus();
  }
  const { says = "" } = await made(() => engine.fix(row));
  say(
    `${says} `,
    offer("Undo", () => step("undo")),
  );
}

/** Something that a person changed and may take back. */
const made = (action: () => Promise<Edited>): Promise<Edited> =>
  inTurn(async () => {
    const answer = await send(action);
    if (answer.done) history.made(answer.done);
    showHistory();
    return answer;
  });

async function send(action: () => Promise<Edited>): Promise<Edited> {
  clearTimeout(finishing);
  const answer = await action();
  performance.mark("edit answered");
  isUnsaved = true;
  say("");
  showChanges(answer.changes, answer.board);
  // Asked for now, called right before the next picture.
  requestAnimationFrame(() => performance.mark("edit painted"));
  finishSoon();
  void attempt(lookAgain);
  return answer;
}

function showChanges(changes: readonly ChangedView[], now: Board | undefined): void {
  board = now;
  if (board) lines.update(board);
  tables.update(changes, board);
}

async function lookAgain(): Promise<void> {
  if (places.isTable) await tables.look();
  if (shownLine !== undefined) await showLine(shownLine);
}

const step = (which: "undo" | "redo"): Promise<void> =>
  inTurn(async () => {
    say("");
    await history.step(which, async (edits: readonly Edit[]) => {
      const { sheet, row, column } = firstOf(edits);
      const wasTable = places.isTable;
      await send(() => engine.edit(...edits));
      if (wasTable !== places.isTable) return; // the person has moved on
      if (wasTable) {
        places.openSheet(sheet);
        await tables.show(sheet, { row, column });
      } else if (sheet === board?.header.sheet) lines.select(row - board.header.row + 1);
      say(which === "undo" ? "Undone." : "Done again.");
    });
    showHistory();
  });

function showHistory(): void {
  button("undo").disabled = !history.canUndo;
  button("redo").disabled = !history.canRedo;
}

/** Long calls (a cut plan) begin when nobody has typed for a moment; until they are done their answers are old. */
let finishing: ReturnType<typeof setTimeout> | undefined;
function finishSoon(): void {
  clearTimeout(finishing);
  document.body.classList.add("old");
  finishing = setTimeout(() => void attempt(finish), 800);
}

async function finish(): Promise<void> {
  const { changes, board: now, job } = await engine.finish();
  document.body.classList.remove("old");
  showChanges(changes, now);
  byId("figures").replaceChildren(
    ...(job?.figures ?? []).map(({ name, value, beside }) =>
      element("div", {}, element("dt", {}, name, beside && ` (${beside})`), element("dd", {}, value)),
    ),
  );
  if (job) lines.figures(job);
  await lookAgain();
}

async function save(as?: string): Promise<void> {
  const { bytes } = await engine.ask({ ask: "save" });
  const hasChanged = await files.hasChanged();
  const { words, offer: free } = await files.save(bytes, as);
  if (free === undefined) {
    if (words.startsWith("Saved")) isUnsaved = false;
    say(words, hasChanged ? ` ${files.name} itself was changed by somebody else since it was opened here.` : "");
  } else
    say(
      `${words} `,
      offer(`Save as ${free}`, () => save(free)),
    );
}

/** What somebody else did to the file is said as soon as the person comes back to the page. */
async function watch(): Promise<void> {
  if (!(await files.hasChanged())) return;
  const again = async () => {
    const { files: now, bytes } = await Files.served();
    await openBytes(now, bytes);
  };
  const lost = isUnsaved ? "; what is typed here is lost then" : "";
  say(`${files.name} was changed on disk since it was opened here. `, offer(`Open it again${lost}`, again));
}

button("save").addEventListener("click", () => void attempt(save));
for (const which of ["undo", "redo"] as const)
  button(which).addEventListener("click", () => void attempt(() => step(which)));
button("previous").addEventListener("click", () => lines.step(-1));
button("next").addEventListener("click", () => lines.step(1));
button("cancel").addEventListener("click", () =>
  attempt(async () => {
    clearTimeout(finishing);
    const again = await engine.end();
    if (again) show(again);
    clearTimeout(finishing); // if it began again by itself, it could never be stopped
    say("Stopped; nothing was changed. Price, dates and sheets are not worked out. ", offer("Work them out", finish));
  }),
);
listenToKeys({
  step: (which) => void attempt(() => step(which)),
  save: () => void attempt(save),
  letter: (letter) => places.isLines && lines.letter(letter),
  add: addLine,
});
takeDropped(async (name, bytes, isWorkbook) => {
  if (isWorkbook && (!isUnsaved || confirm(`Open ${name}? What was typed here since the last save is lost.`)))
    await attempt(() => openBytes(new Files(name), bytes));
  if (isWorkbook) return;
  say("");
  places.open("start");
  await attempt(() => start.take(name, bytes));
});
addEventListener("focus", () => void attempt(watch));
addEventListener("beforeunload", (event) => {
  if (isUnsaved) event.preventDefault();
});

void attempt(async () => {
  const [served] = await Promise.all([Files.served(), painted()]);
  await openBytes(served.files, served.bytes);
});
