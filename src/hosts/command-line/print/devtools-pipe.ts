/** The Chrome DevTools protocol over a pipe (file descriptors 3 and 4): no port is opened and no package is needed. */
import type { ChildProcess } from "node:child_process";
import type { Readable, Writable } from "node:stream";

type Message = {
  readonly id?: number;
  readonly method?: string;
  readonly result?: Record<string, unknown>;
  readonly error?: { readonly message: string };
};

export class DevToolsPipe {
  #last = 0;
  #rest = "";
  readonly #waiting = new Map<
    number,
    { resolve(result: Record<string, unknown>): void; reject(problem: Error): void }
  >();
  readonly #listeners = new Map<string, () => void>();
  readonly #out: Writable;

  constructor(browser: ChildProcess) {
    this.#out = browser.stdio[3] as Writable;
    const input = browser.stdio[4] as Readable;
    input.setEncoding("utf8");
    input.on("data", (piece: string) => this.#read(piece));
    const gone = () => {
      for (const { reject } of this.#waiting.values()) reject(new Error("the browser ended"));
      this.#waiting.clear();
    };
    input.on("close", gone);
    browser.on("error", gone);
    this.#out.on("error", gone);
  }

  ask(method: string, params: object = {}, sessionId?: string): Promise<Record<string, unknown>> {
    const id = ++this.#last;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      this.#out.write(`${JSON.stringify({ id, method, params, ...(sessionId ? { sessionId } : {}) })}\0`);
    });
  }

  once(method: string): Promise<void> {
    return new Promise((resolve) => this.#listeners.set(method, resolve));
  }

  #read(piece: string): void {
    const messages = (this.#rest + piece).split("\0");
    this.#rest = messages.pop() ?? "";
    for (const text of messages) {
      const { id, method, result, error } = JSON.parse(text) as Message;
      if (method !== undefined) {
        this.#listeners.get(method)?.();
        this.#listeners.delete(method);
      }
      if (id === undefined) continue;
      const waiting = this.#waiting.get(id);
      this.#waiting.delete(id);
      if (error) waiting?.reject(new Error(error.message));
      else waiting?.resolve(result ?? {});
    }
  }
}
