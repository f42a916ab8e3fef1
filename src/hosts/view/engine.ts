/** The page's end of the engine's thread: questions in turn, an answer each; a long one can be ended. */
import type { Answer, Edit, Place, Request } from "./protocol.ts";

type Said<K extends Answer["said"]> = Extract<Answer, { said: K }>;

/** The engine did not take what it was asked; the message is for the person. */
export class EngineRefusal extends Error {}
/** Ended by the person. */
export class Ended extends Error {}

export class Engine {
  #worker: Worker;
  #waiting: { resolve(answer: Answer): void; reject(problem: Error): void }[] = [];
  /** What has been accepted so far, to be done again after a calculation was ended. */
  readonly #edits: Edit[] = [];
  /** The workbook, once it has been opened. */
  #opened: Uint8Array | undefined;

  constructor(
    private readonly start: () => Worker,
    private readonly busy: (isBusy: boolean) => void,
  ) {
    this.#worker = this.#begin();
  }

  async open(bytes: Uint8Array): Promise<Said<"opened">> {
    const answer = await this.#ask({ ask: "open", bytes, edits: [] }, "opened");
    this.#opened = bytes;
    return answer;
  }

  async edit(...edits: readonly Edit[]): Promise<Said<"edited">> {
    const answer = await this.#ask({ ask: "edit", edits }, "edited");
    this.#edits.push(...edits);
    return answer;
  }

  /** Applies the fix of the line that stands there. */
  async fix(place: Place): Promise<Said<"edited">> {
    const answer = await this.#ask({ ask: "fix", place }, "edited");
    this.#edits.push(...(answer.done ?? []).map(({ after, before: _, ...at }) => ({ ...at, typed: after })));
    return answer;
  }

  /** Calculates what takes long. */
  finish(): Promise<Said<"edited">> {
    return this.#ask({ ask: "finish" }, "edited");
  }

  look(sheet: number, row: number, column: number): Promise<Said<"looked">> {
    return this.#ask({ ask: "look", place: { sheet, row, column } }, "looked");
  }

  save(): Promise<Said<"saved">> {
    return this.#ask({ ask: "save" }, "saved");
  }

  /** Ends whatever is being calculated; what was accepted before stands again afterwards. */
  async end(): Promise<Said<"opened"> | undefined> {
    this.#worker.terminate();
    const waiting = this.#waiting.splice(0);
    this.busy(false);
    for (const { reject } of waiting) reject(new Ended("ended"));
    this.#worker = this.#begin();
    if (!this.#opened) return undefined; // the opening itself was ended
    return this.#ask({ ask: "open", bytes: this.#opened, edits: this.#edits }, "opened");
  }

  #begin(): Worker {
    const worker = this.start();
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      const next = this.#waiting.shift();
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

  async #ask<K extends Answer["said"]>(request: Request, expected: K): Promise<Said<K>> {
    const answer = await new Promise<Answer>((resolve, reject) => {
      this.#waiting.push({ resolve, reject });
      this.busy(true);
      this.#worker.postMessage(request);
    });
    if (answer.said !== expected) throw new Error(`the engine said ${answer.said}; ${expected} was asked for`);
    return answer as Said<K>;
  }
}
