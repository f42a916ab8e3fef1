/** The function guide: a search field and the functions under it, grouped by topic, usable by keyboard alone. */
import { entryOf, missing } from "../../../units/certain.ts";
import { element } from "../dom/element.ts";
import { card } from "./card.ts";
import type { GuideEntry } from "./entry.ts";
import { search } from "./search.ts";

/** `insert` puts a function's example where the person works; without it the cards offer none. */
export function guide(entries: readonly GuideEntry[], insert?: (formula: string) => void): HTMLElement {
  const cards = new Map(entries.map((entry) => [entry, card(entry, insert)]));
  const field = element("input", { type: "search", id: "search", autocomplete: "off", spellcheck: "false" });
  const count = element("p", { role: "status", class: "count" });
  const list = element("div", { class: "list" });

  const show = () => {
    const found = search(entries, field.value);
    const typed = field.value.trim() !== "";
    count.textContent =
      found.length === 0 ? "No function matches that" : `${found.length} of ${entries.length} functions`;
    // What was looked for stands in the order of closeness; the whole catalogue by topic.
    list.replaceChildren(
      ...(typed ? [group("Found", found)] : byTopic(found).map(([topic, some]) => group(topic, some))),
    );
  };
  const group = (title: string, some: readonly GuideEntry[]) =>
    element("section", {}, element("h2", {}, title), ...some.map((entry) => entryOf(cards, entry)));

  field.addEventListener("input", show);
  const made = element(
    "div",
    { class: "guide" },
    element("div", { class: "search" }, element("label", { for: "search" }, "What do you want to know?"), field, count),
    list,
  );
  made.addEventListener("keydown", (event) => moveFocus(event, field, list));
  show();
  return made;
}

/** Opens the function that the address names: Excel's own help link leads here. */
export function openNamed(fragment: string): void {
  const name = decodeURIComponent(fragment.replace(/^#/, ""));
  const found = [...document.querySelectorAll<HTMLDetailsElement>("details.card")].find(
    ({ id }) => name !== "" && (id === name || id.endsWith(`.${name}`)),
  );
  if (!found) return;
  found.open = true;
  found.scrollIntoView();
  (found.querySelector("summary") ?? missing()).focus();
}

function byTopic(entries: readonly GuideEntry[]): [string, GuideEntry[]][] {
  const topics = new Map<string, GuideEntry[]>();
  for (const entry of entries) topics.set(entry.topic, [...(topics.get(entry.topic) ?? []), entry]);
  return [...topics];
}

/** Arrow keys walk from the field through the names and back; Escape clears the search. Tab works as everywhere. */
function moveFocus(event: KeyboardEvent, field: HTMLInputElement, list: HTMLElement): void {
  if (event.key === "Escape" && field.value !== "") {
    field.value = "";
    field.dispatchEvent(new Event("input"));
    field.focus();
  }
  const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
  const stops = [field, ...list.querySelectorAll("summary")];
  const here = stops.indexOf(document.activeElement as HTMLElement);
  const next = stops[here + step];
  if (step === 0 || here < 0 || !next) return;
  event.preventDefault();
  next.focus();
}
