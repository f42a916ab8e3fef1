/**
 * Long functions run beside Excel's own work: one at a time in a worker, in the order they were asked. A cancelled call
 * gives way at once; the worker is ended with it and the next call gets a fresh one.
 */
import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
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

interface Job {
  readonly name: string;
  readonly given: Arguments;
  readonly finish: (value: Answered) => void;
}
export interface LongCall {
  readonly answer: Promise<Answered>;
  cancel(): void;
}

export class LongCalls {
  readonly #waiting: Job[] = [];
  #running: Job | undefined;
  #worker: WorkerLike | undefined;

  constructor(private readonly startWorker: () => WorkerLike) {}

  call(name: string, given: Arguments): LongCall {
    let job!: Job;
    const answer = new Promise<Answered>((finish) => {
      job = { name, given, finish };
    });
    this.#waiting.push(job);
    this.#next();
    return { answer, cancel: () => this.#cancel(job) };
  }

  #next(): void {
    if (this.#running || this.#waiting.length === 0) return;
    const job = this.#waiting.shift()!;
    this.#running = job;
    try {
      this.#worker ??= this.startWorker();
      this.#worker.onmessage = ({ data }) => this.#end(job, fromExcel(data));
      this.#worker.onerror = ({ message: text }) => this.#fail(job, text);
      this.#worker.postMessage({ name: job.name, given: job.given });
    } catch (problem) {
      this.#fail(job, problem instanceof Error ? problem.message : String(problem));
    }
  }

  #end(job: Job, value: Answered): void {
    job.finish(value);
    if (this.#running !== job) return;
    this.#running = undefined;
    this.#next();
  }

  #fail(job: Job, text: string): void {
    this.#dropWorker();
    this.#end(job, new CellError("#VALUE!", message(job.name, "able to run beside Excel", text || "a stopped worker")));
  }

  #cancel(job: Job): void {
    const place = this.#waiting.indexOf(job);
    if (place >= 0) this.#waiting.splice(place, 1);
    else if (this.#running === job) this.#dropWorker();
    else return;
    this.#end(job, new CellError("#N/A", message(job.name, "left to finish", "a cancelled calculation")));
  }

  #dropWorker(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
  }
}
