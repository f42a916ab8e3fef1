/** Something that takes Excel a while: said after half a second, ended between two steps where the person asks for it. */
import { element } from "../dom/element.ts";

export class Ended extends Error {
  constructor() {
    super("Stopped before it was finished; what was done so far stays.");
  }
}

export interface Task {
  /** Called between steps: says where it stands, throws Ended where the person has ended it. */
  step(words: string): void;
}

const AFTER_MS = 500;

export class TaskBar {
  readonly element = element("div", { class: "tasks" });
  readonly #said = element("p", { role: "status", id: "said" });
  readonly #cancel = element("button", { type: "button", hidden: "" }, "Cancel");
  #ended = false;
  #running = false;

  constructor() {
    this.element.append(this.#said, this.#cancel);
    this.#cancel.addEventListener("click", () => {
      this.#ended = true;
      this.#said.textContent = "Ending…";
    });
  }

  say(...words: (Node | string)[]): void {
    this.#said.replaceChildren(...words);
  }

  /** One at a time. What goes wrong is said in words; nothing is thrown. */
  async run(action: (task: Task) => Promise<string>): Promise<void> {
    if (this.#running) return;
    this.#running = true;
    this.#ended = false;
    let words = "Working…";
    const timer = setTimeout(() => {
      this.say(words);
      this.#cancel.hidden = false;
    }, AFTER_MS);
    try {
      this.say(
        await action({
          step: (now) => {
            if (this.#ended) throw new Ended();
            words = now;
            if (!this.#cancel.hidden) this.say(now);
          },
        }),
      );
    } catch (problem) {
      this.say(problem instanceof Error ? problem.message : String(problem));
    } finally {
      clearTimeout(timer);
      this.#cancel.hidden = true;
      this.#running = false;
    }
  }
}
