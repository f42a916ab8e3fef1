/** The page for people without Excel: the workbook in a grid, the selected line and the functions beside it. */
import { cellName } from "../../sheet/formula/address.ts";
import { element } from "../pane/dom/element.ts";
import { guide } from "../pane/guide/guide.ts";
import { lineView } from "../pane/line/line-view.ts";
import { Ended, Engine } from "./engine.ts";
import { SheetGrid } from "./grid.ts";
import { History } from "./history.ts";
import { progressAfter } from "./progress.ts";
import type { ChangedView, Place, SheetView } from "./protocol.ts";

const byId = <T extends HTMLElement = HTMLElement>(id: string): T => document.getElementById(id) as T;
const message = byId("message");
const save = byId<HTMLButtonElement>("save");
const undo = byId<HTMLButtonElement>("undo");
const redo = byId<HTMLButtonElement>("redo");

const engine = new Engine(
  () => new Worker(new URL("engine.js", location.href), { type: "module" }),
  progressAfter(byId("progress"), byId("progress-words")),
);
let sheets: readonly SheetView[] = [];
let grids: (SheetGrid | undefined)[] = [];
let panels: HTMLElement[] = [];
let open = 0;
let place: { row: number; column: number } | undefined;
let unsaved = false;
const history = new History();

const say = (text: string) => {
  message.textContent = text;
};
/** Runs what a person asked for; what goes wrong is said, an end they asked for is no fault. */
async function attempt(action: () => Promise<void>): Promise<void> {
  try {
    await action();
  } catch (problem) {
    say(problem instanceof Ended ? "Ended; nothing was changed." : (problem as Error).message);
  }
}

async function start(): Promise<void> {
  const [name, bytes] = await Promise.all([
    fetch("name").then((response) => response.text()),
    fetch("workbook").then((response) => response.arrayBuffer()),
  ]);
  byId("file").textContent = name;
  document.title = `${name}: Bracket Bill`;
  const opened = await engine.open(new Uint8Array(bytes));
  byId("content").textContent =
    "Double-click or type to change a cell; Enter takes it, Escape leaves it. A line typed below a table belongs to it.";
  show(opened.sheets, opened.first);
  say(opened.notes.join(" "));
  byId("functions").append(guide(opened.guide));
  save.disabled = false;
  finishSoon(opened.waits);
}

function show(views: readonly SheetView[], first: number): void {
  sheets = views;
  grids = views.map(() => undefined);
  panels = views.map(() => element("div", { class: "panel", hidden: "" }));
  byId("grid").replaceChildren(...panels);
  byId("tabs").replaceChildren(...views.map(({ name }, index) => tab(name, index)));
  openSheet(first);
}

function tab(name: string, index: number): HTMLElement {
  const button = element("button", { type: "button", role: "tab", "aria-controls": "grid" }, name);
  button.addEventListener("click", () => openSheet(index));
  button.addEventListener("keydown", (event) => {
    const step = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    if (step === 0) return;
    openSheet((index + step + sheets.length) % sheets.length);
    (byId("tabs").children[open] as HTMLElement).focus();
  });
  return button;
}

function openSheet(index: number): void {
  open = index;
  place = undefined;
  [...byId("tabs").children].forEach((one, i) => {
    one.setAttribute("aria-selected", String(i === index));
    one.setAttribute("tabindex", i === index ? "0" : "-1");
  });
  panels.forEach((panel, i) => {
    panel.hidden = i !== index;
  });
  grids[index] ??= new SheetGrid(panels[index]!, sheets[index]!, {
    selected: (row, column) => void attempt(() => look(row, column)),
    begin: (row, column) => beginEdit(row, column),
    typed: (row, column, text) => void attempt(() => edit(row, column, text)),
  });
  grids[index]!.redraw();
}

async function look(row: number, column: number): Promise<void> {
  if (place?.row === row && place.column === column) return;
  place = { row, column };
  say(""); // what was said was about another cell
  await lookAgain();
}

async function lookAgain(): Promise<void> {
  if (!place) return;
  const [asked, sheet] = [place, open];
  const { detail, report, fix } = await engine.look(sheet, asked.row, asked.column);
  if (asked !== place) return; // the person has moved on
  byId("address").textContent = detail.address;
  byId("content").textContent = detail.content;
  if (detail.message) say(detail.message);
  if (report)
    byId("line").replaceChildren(lineView(report, fix, () => void attempt(() => applyFix({ sheet, ...asked }))));
}

async function beginEdit(row: number, column: number): Promise<string | undefined> {
  const { detail } = await engine.look(open, row, column);
  if (detail.locked) say(`This cell is not typed over: ${detail.locked}.`);
  return detail.locked ? undefined : detail.content;
}

async function edit(row: number, column: number, typed: string): Promise<void> {
  await made(() => engine.edit({ sheet: open, row, column, typed }));
}

async function applyFix(at: Place): Promise<void> {
  const { says = "" } = await made(() => engine.fix(at));
  say(says);
}

type Edited = Awaited<ReturnType<Engine["edit"]>>;

/** Something that a person changed and may take back. */
async function made(action: () => Promise<Edited>): Promise<Edited> {
  const answer = await send(action);
  if (answer.done) history.made(answer.done);
  showHistory();
  return answer;
}

async function send(action: () => Promise<Edited>): Promise<Edited> {
  clearTimeout(finishing);
  const answer = await action();
  const { changes, waits } = answer;
  performance.mark("edit answered");
  unsaved = true;
  say("");
  await showChanges(changes);
  // Asked for now, called right before the next picture.
  requestAnimationFrame(() => performance.mark("edit painted"));
  finishSoon(waits);
  await lookAgain();
  return answer;
}

const step = (which: "undo" | "redo") =>
  attempt(async () => {
    await history.step(which, async (edits) => {
      const edit = edits[0]!;
      if (edit.sheet !== open) openSheet(edit.sheet);
      place = { row: edit.row, column: edit.column };
      await send(() => engine.edit(...edits));
      await grids[open]!.select(edit.row, edit.column);
      say(
        `${which === "undo" ? "Undone" : "Done again"}: ${edits.map((each) => cellName(each.row, each.column)).join(", ")}.`,
      );
    });
    showHistory();
  });

function showHistory(): void {
  undo.disabled = !history.canUndo;
  redo.disabled = !history.canRedo;
}

/** Long calls (a cut plan) begin when nobody has typed for a moment; until they are done their answers are old. */
const PAUSE_MS = 800;
let finishing: ReturnType<typeof setTimeout> | undefined;
function finishSoon(waits: boolean): void {
  clearTimeout(finishing);
  byId("old").hidden = !waits;
  if (waits) finishing = setTimeout(() => void attempt(finish), PAUSE_MS);
}

async function finish(): Promise<void> {
  const { changes, waits } = await engine.finish();
  byId("old").hidden = !waits;
  await showChanges(changes);
  await lookAgain();
}

const showChanges = (changes: readonly ChangedView[]) =>
  Promise.all(bySheet(changes).map(([sheet, some]) => shownLater(sheet, some)));

function bySheet(changes: readonly ChangedView[]): [number, ChangedView[]][] {
  const found = new Map<number, ChangedView[]>();
  for (const change of changes) found.set(change.sheet, [...(found.get(change.sheet) ?? []), change]);
  return [...found];
}

/** A sheet that was never opened is drawn from its view, which must know too. */
async function shownLater(sheet: number, changes: readonly ChangedView[]): Promise<void> {
  const rows = sheets[sheet]!.cells as ChangedView["cell"][][];
  for (const { row, column, cell } of changes) {
    rows[row] ??= [];
    rows[row][column] = cell;
  }
  await grids[sheet]?.update(changes);
}

save.addEventListener("click", () =>
  attempt(async () => {
    const { bytes } = await engine.save();
    const response = await fetch("save", { method: "POST", body: bytes as Uint8Array<ArrayBuffer> });
    say(await response.text());
    if (response.ok) unsaved = false;
  }),
);
undo.addEventListener("click", () => void step("undo"));
redo.addEventListener("click", () => void step("redo"));
addEventListener("keydown", (event) => {
  // In a field the keys mean the field's own text.
  if (!(event.ctrlKey || event.metaKey) || event.altKey || event.target instanceof HTMLInputElement) return;
  const key = event.key.toLowerCase();
  const which = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : undefined;
  if (!which) return;
  event.preventDefault();
  void step(which);
});
byId("cancel").addEventListener("click", () =>
  attempt(async () => {
    clearTimeout(finishing);
    const again = await engine.end();
    if (!again) return;
    show(again.sheets, open);
    byId("old").hidden = !again.waits;
  }),
);
byId("finish").addEventListener("click", () => attempt(finish));
addEventListener("beforeunload", (event) => {
  if (unsaved) event.preventDefault();
});

void attempt(start);
