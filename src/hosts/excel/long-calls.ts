/**
 * Long functions run beside Excel's own work: one at a time in a worker, in the order they were asked. Calls that ask the
 * same share one run. A cancelled call gives way at once; where nobody else waits for its run, the worker is ended with
 * it and the next run gets a fresh one.
 */
import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { missing } from "../../units/certain.ts";
import { contentId } from "../../units/content.ts";
import { message } from "../../units/refusal.ts";
import { fromExcel } from "./excel-value.ts";

export type Answered = CellValue | CellMatrix;
export type Arguments = readonly Answered[];

/** The part of a Worker that is used here. */
export interface WorkerLike {
  onmessage: ((event: MessageEvent) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(data: unknown): void;
  terminate(): void;
}

/** One calculation and everyone who waits for it. */
interface Run {
  readonly name: string;
  readonly given: Arguments;
  readonly content: number;
  readonly waiting: Set<(value: Answered) => void>;
}
interface LongCall {
  readonly answer: Promise<Answered>;
  cancel(): void;
}

export class LongCalls {
  #queue: Run[] = [];
  #running: Run | undefined;
  #worker: WorkerLike | undefined;

  constructor(private readonly startWorker: () => WorkerLike) {}

  call(name: string, given: Arguments): LongCall {
    const run = this.#runOf(name, given);
    let finish!: (value: Answered) => void;
    const answer = new Promise<Answered>((resolve) => {
      finish = resolve;
    });
    run.waiting.add(finish);
    this.#next();
    return { answer, cancel: () => this.#cancel(run, finish) };
  }

  /** Excel asks again for what it has not got yet, and a copied formula asks what another one does. */
  #runOf(name: string, given: Arguments): Run {
    const content = contentId([name, given]);
    const known = [this.#running, ...this.#queue].find((run) => run?.content === content);
    if (known) return known;
    const run = { name, given, content, waiting: new Set<(value: Answered) => void>() };
    this.#queue.push(run);
    return run;
  }

  #next(): void {
    if (this.#running || this.#queue.length === 0) return;
    const run = this.#queue.shift() ?? missing();
    this.#running = run;
    try {
      this.#worker ??= this.startWorker();
      this.#worker.onmessage = ({ data }) => this.#end(run, fromExcel(data));
      this.#worker.onerror = ({ message: text }) => this.#fail(run, text);
      this.#worker.postMessage({ name: run.name, given: run.given });
    } catch (problem) {
      this.#fail(run, problem instanceof Error ? problem.message : String(problem));
    }
  }

  #end(run: Run, value: Answered): void {
    for (const finish of run.waiting) finish(value);
    run.waiting.clear();
    if (this.#running !== run) return;
    this.#running = undefined;
    this.#next();
  }

  #fail(run: Run, text: string): void {
    this.#dropWorker();
    this.#end(run, new CellError("#VALUE!", message(run.name, "able to run beside Excel", text || "a stopped worker")));
  }

  #cancel(run: Run, finish: (value: Answered) => void): void {
    if (!run.waiting.delete(finish)) return;
    finish(new CellError("#N/A", message(run.name, "left to finish", "a cancelled calculation")));
    if (run.waiting.size > 0) return;
    if (this.#running === run) {
      this.#dropWorker();
      this.#running = undefined;
      this.#next();
    } else this.#queue = this.#queue.filter((other) => other !== run);
  }

  #dropWorker(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }
}
