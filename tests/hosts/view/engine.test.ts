/** The page's end of the engine: order of answers, ending a calculation, and when progress is shown. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { Ended, Engine, EngineRefusal } from "../../../src/hosts/view/engine.ts";
import { progressAfter } from "../../../src/hosts/view/progress.ts";
import type { EngineAnswer, Request } from "../../../src/hosts/view/protocol.ts";

/** A thread that answers when it is told to. */
class FakeWorker extends EventTarget {
  readonly asked: Request[] = [];
  ended = false;
  postMessage(request: Request): void {
    this.asked.push(request);
  }
  terminate(): void {
    this.ended = true;
  }
  answer(data: EngineAnswer): void {
    this.dispatchEvent(Object.assign(new Event("message"), { data }));
  }
}
const opened: EngineAnswer = { said: "opened", sheets: [], board: undefined, notes: [] };
const edit = (typed: string) => ({ sheet: 0, row: 0, column: 0, typed });

function started() {
  const workers: FakeWorker[] = [];
  const busy: boolean[] = [];
  const engine = new Engine(
    () => {
      const worker = new FakeWorker();
      workers.push(worker);
      return worker as unknown as Worker;
    },
    (isBusy) => busy.push(isBusy),
  );
  return { engine, workers, busy };
}

describe("the engine's thread", () => {
  it("answers in turn; a refusal is the sentence, and the next question is answered as before", async () => {
    const { engine, workers, busy } = started();
    const [first, second] = [engine.edit(edit("=1")), engine.ask({ ask: "save" })];
    workers[0]!.answer({ said: "refused", message: "cell must be a number or text; got =1" });
    workers[0]!.answer({ said: "bytes", bytes: new Uint8Array([7]) });
    await expect(first).rejects.toThrow(EngineRefusal);
    expect((await second).bytes[0]).toBe(7);
    expect(busy.at(-1)).toBe(false);
  });

  it("a calculation that is ended leaves what was accepted before, and nothing of its own", async () => {
    const { engine, workers } = started();
    const opening = engine.open(new Uint8Array([1]));
    workers[0]!.answer(opened);
    await opening;
    const good = engine.edit(edit("1"));
    workers[0]!.answer({ said: "edited", changes: [], board: undefined });
    await good;
    const slow = engine.edit(edit("2"));
    const ending = engine.end();
    await expect(slow).rejects.toThrow(Ended);
    expect(workers[0]!.ended).toBe(true);
    expect(workers[1]!.asked).toEqual([{ ask: "open", bytes: new Uint8Array([1]), edits: [[edit("1")]] }]);
    workers[1]!.answer(opened);
    expect(await ending).toEqual(opened);
  });

  it("a calculation without an end is ended after five minutes, and the workbook stands as before", async () => {
    vi.useFakeTimers();
    const { engine, workers } = started();
    const opening = engine.open(new Uint8Array([1]));
    workers[0]!.answer(opened);
    await opening;
    const slow = expect(engine.edit(edit("2"))).rejects.toThrow(
      "calculation must be done within 300 s; got no answer by then; nothing was changed",
    );
    await vi.advanceTimersByTimeAsync(299_000);
    expect(workers).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(2_000);
    await slow;
    expect(workers[0]!.ended).toBe(true);
    expect(workers[1]!.asked).toEqual([{ ask: "open", bytes: new Uint8Array([1]), edits: [] }]);
    vi.useRealTimers();
  });

  it("the first edit can be ended too, and the opening: a workbook never opened is not opened again", async () => {
    const { engine, workers } = started();
    const opening = engine.open(new Uint8Array([1]));
    const ending = engine.end();
    await expect(opening).rejects.toThrow(Ended);
    expect(await ending).toBeUndefined();
    const again = engine.open(new Uint8Array([2]));
    workers[1]!.answer(opened);
    await again;
    const slow = engine.edit(edit("1"));
    void engine.end();
    await expect(slow).rejects.toThrow(Ended);
    expect(workers[2]!.asked).toEqual([{ ask: "open", bytes: new Uint8Array([2]), edits: [] }]);
  });

  it("a thread that breaks is said, not waited for", async () => {
    const { engine, workers } = started();
    const saving = engine.ask({ ask: "save" });
    workers[0]!.dispatchEvent(Object.assign(new Event("error"), { message: "boom" }));
    await expect(saving).rejects.toThrow(/the engine stopped: boom/);
  });
});

describe("progress", () => {
  afterEach(() => vi.useRealTimers());
  const parts = () => [{ textContent: "" }, { hidden: true }] as unknown as [HTMLElement, HTMLElement];

  it("is not shown for what takes less than half a second", () => {
    vi.useFakeTimers();
    const [words, stop] = parts();
    const busy = progressAfter(words, stop);
    busy(true);
    vi.advanceTimersByTime(450);
    busy(false);
    vi.advanceTimersByTime(5000);
    expect([words.textContent, stop.hidden]).toEqual(["", true]);
  });

  it("is shown with its seconds for what takes longer, and goes when it is done", () => {
    vi.useFakeTimers();
    const [words, stop] = parts();
    const busy = progressAfter(words, stop);
    busy(true);
    vi.advanceTimersByTime(3000);
    expect([words.textContent, stop.hidden]).toEqual(["Recalculating, 3 s", false]);
    busy(false);
    expect([words.textContent, stop.hidden]).toEqual(["", true]);
  });
});
