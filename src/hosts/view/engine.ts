/** The page's end of the engine's thread: questions in turn, an answer each; a long one can be ended. */
import type { Edit, Edited, EngineAnswer, Opened, Request, SheetPlace } from "./protocol.ts";

type Said<K extends EngineAnswer["said"]> = Extract<EngineAnswer, { said: K }>;
const ANSWERS = {
  sheet: "sheet",
  look: "looked",
  line: "line",
  cuts: "cuts",
  guide: "guide",
  list: "list",
  start: "bytes",
  save: "bytes",
} as const;
type Answers = typeof ANSWERS;

/** The engine did not take what it was asked; the message is for the person. */
export class EngineRefusal extends Error {}
/** Ended by the person. */
export class Ended extends Error {}

/** A browser tells no processor time; the sample takes a few seconds, and the person can end it sooner. */
const LONGEST_MS = 300_000;

export class Engine {
  /** Begun when something is asked: the page is painted first. */
  #worker: Worker | undefined;
  #waiting: { resolve(answer: EngineAnswer): void; reject(problem: Error): void }[] = [];
  /** What has been accepted so far, to be done again after a calculation was ended. */
  #edits: (readonly Edit[])[] = [];
  #timer: ReturnType<typeof setTimeout> | undefined;
  /** The workbook, once it has been opened. */
  #opened: Uint8Array | undefined;

  constructor(
    private readonly start: () => Worker,
    private readonly busy: (isBusy: boolean) => void,
  ) {}

  async open(bytes: Uint8Array): Promise<Opened> {
    const answer = await this.#ask({ ask: "open", bytes, edits: [] }, "opened");
    this.#opened = bytes;
    this.#edits = [];
    return answer;
  }

  edit(...edits: readonly Edit[]): Promise<Edited> {
    return this.#edited({ ask: "edit", edits }, edits);
  }

  /** Applies the fix of a line of the bill. */
  fix(row: number): Promise<Edited> {
    return this.#edited({ ask: "fix", row });
  }

  row(place: SheetPlace, change: "insert" | "remove"): Promise<Edited> {
    return this.#edited({ ask: "row", place, change });
  }

  async #edited(request: Request, edits?: readonly Edit[]): Promise<Edited> {
    const answer = await this.#ask(request, "edited");
    this.#edits.push(edits ?? (answer.done ?? []).map(({ after, before: _, ...at }) => ({ ...at, typed: after })));
    return answer;
  }

  /** Calculates what takes long. */
  finish(): Promise<Said<"finished">> {
    return this.#ask({ ask: "finish" }, "finished");
  }

  /** What only asks. */
  ask<K extends keyof Answers>(request: { readonly ask: K } & Request): Promise<Said<Answers[K]>> {
    return this.#ask<Answers[K]>(request, ANSWERS[request.ask]);
  }

  /** Ends whatever is being calculated; what was accepted before stands again afterwards. */
  async end(why: Error = new Ended("ended")): Promise<Opened | undefined> {
    this.#worker?.terminate();
    this.#worker = undefined;
    const waiting = this.#waiting.splice(0);
    this.#watch();
    this.busy(false);
    for (const { reject } of waiting) reject(why);
    if (!this.#opened) return undefined; // the opening itself was ended
    return this.#ask({ ask: "open", bytes: this.#opened, edits: this.#edits }, "opened");
  }

  /** Begins the time of the next answer, where one is waited for. */
  #watch(): void {
    clearTimeout(this.#timer);
    if (this.#waiting.length === 0) return;
    this.#timer = setTimeout(() => {
      const why = `calculation must be done within ${LONGEST_MS / 1000} s; got no answer by then; nothing was changed`;
      void this.end(new EngineRefusal(why));
    }, LONGEST_MS);
  }

  #begin(): Worker {
    const worker = this.start();
    worker.addEventListener("message", ({ data }: MessageEvent<EngineAnswer>) => {
      const next = this.#waiting.shift();
      this.#watch();
      if (this.#waiting.length === 0) this.busy(false);
      if (data.said === "refused") next?.reject(new EngineRefusal(data.message));
      else next?.resolve(data);
    });
    worker.addEventListener("error", ({ message }) => {
      for (const { reject } of this.#waiting.splice(0)) reject(new EngineRefusal(`the engine stopped: ${message}`));
      this.busy(false);
    });
    return worker;
  }

  async #ask<K extends EngineAnswer["said"]>(request: Request, expected: K): Promise<Said<K>> {
    const answer = await new Promise<EngineAnswer>((resolve, reject) => {
      this.#waiting.push({ resolve, reject });
      if (this.#waiting.length === 1) this.#watch();
      this.busy(true);
      this.#worker ??= this.#begin();
      this.#worker.postMessage(request);
    });
    if (answer.said !== expected) throw new Error(`the engine said ${answer.said}; ${expected} was asked for`);
    return answer as Said<K>;
  }
}
