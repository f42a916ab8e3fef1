/** One function of the guide: its name and question, and behind them, once opened, the arguments and an example. */
import { element } from "../dom/element.ts";
import type { GuideArgument, GuideEntry } from "./entry.ts";

export function card(entry: GuideEntry, insert?: (formula: string) => void): HTMLDetailsElement {
  const summary = element(
    "summary",
    {},
    element("span", { class: "name" }, ...breakable(entry.name)),
    element("span", { class: "question" }, entry.question),
  );
  const made = element("details", { class: "card", id: entry.name }, summary);
  // Filled when first opened: the list itself must be there at once.
  made.addEventListener("toggle", () => made.append(help(entry, insert)), { once: true });
  return made;
}

function help(entry: GuideEntry, insert?: (formula: string) => void): HTMLElement {
  const { example } = entry;
  const button = element("button", { type: "button" }, "Insert here");
  button.addEventListener("click", () => insert?.(example.formula));
  return element(
    "div",
    { class: "help" },
    element("p", {}, element("code", {}, ...breakable(entry.syntax))),
    element("h3", {}, "Example"),
    element("p", {}, element("code", {}, ...breakable(example.formula)), ` gives ${example.answer}`),
    ...(insert ? [element("p", {}, button)] : []),
    ...(entry.arguments.length > 0 ? [element("h3", {}, "Arguments"), argumentList(entry.arguments)] : []),
    element("h3", {}, "Answers"),
    element("p", {}, entry.answers),
    element("h3", {}, "Where it comes from"),
    element("p", { class: "source" }, entry.source),
  );
}

const argumentList = (list: readonly GuideArgument[]): HTMLElement =>
  element(
    "dl",
    {},
    ...list.flatMap((one) => [
      element(
        "dt",
        {},
        element("code", {}, ...breakable(one.name)),
        ...(one.optional ? [element("span", { class: "optional" }, "optional")] : []),
      ),
      element(
        "dd",
        {},
        element("span", {}, one.description),
        element("span", { class: "takes" }, one.takes),
        ...(one.blank === undefined ? [] : [element("span", { class: "takes" }, `blank means ${one.blank}`)]),
      ),
    ]),
  );

/** Long names and formulas break after a dot, comma, bracket or underscore instead of running out of a narrow pane. */
const breakable = (text: string): (Node | string)[] =>
  text.split(/(?<=[.,(_;])/).flatMap((part, i) => (i === 0 ? [part] : [element("wbr"), part]));
