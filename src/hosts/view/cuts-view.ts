/** The sheets as they will be cut, one after another; the cut under the pointer or the focus is named and marked. */

import type { CutSheet } from "../../papers/cut-sheets.ts";
import { itemAt } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { asSvg } from "../pane/line/line-view.ts";

export function cutsView(sheets: readonly CutSheet[]): HTMLElement {
  const made = element("div", { class: "cuts" });
  if (sheets.length === 0) {
    made.append(
      element("p", { class: "hint" }, "No sheet is cut on a shear: no line is quoted for it, or Stock is missing."),
    );
    return made;
  }
  let at = 0;
  const title = element("h2");
  const about = element("p", { class: "hint" });
  const picture = element("figure", { tabindex: "0", "aria-label": "The sheet as it is cut" }); // it scrolls on a phone
  const named = element("p", { class: "named", role: "status" });
  const list = element("ol");
  const strip = element("div", { class: "cut-strip", role: "group", "aria-label": "Patterns" });
  strip.append(...sheets.map((sheet, i) => thumbnail(sheet, i, () => show(i))));
  strip.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    show(at + step).focus();
  });
  const button = (words: string, by: number) => {
    const one = element("button", { type: "button" }, words);
    one.addEventListener("click", () => show(at + by));
    return one;
  };
  const show = (index: number): HTMLElement => {
    at = (index + sheets.length) % sheets.length;
    draw();
    const small = strip.children[at] as HTMLElement;
    small.scrollIntoView({ block: "nearest", inline: "nearest" });
    return small;
  };
  const mark = (number: string | undefined) => {
    for (const one of made.querySelectorAll(".marked")) one.classList.remove("marked");
    const cut = itemAt(sheets, at).cuts.find((each) => String(each.number) === number);
    named.textContent = cut ? `Cut ${cut.number}: ${cut.says}` : HINT;
    if (!cut) return;
    for (const one of made.querySelectorAll(`[data-cut="${cut.number}"]`)) one.classList.add("marked");
  };
  const draw = () => {
    const sheet = itemAt(sheets, at);
    [...strip.children].forEach((small, i) => {
      small.setAttribute("aria-current", String(i === at));
      small.setAttribute("tabindex", i === at ? "0" : "-1");
    });
    title.textContent = `Pattern ${at + 1} of ${sheets.length}: ${sheet.title}`;
    about.textContent = sheet.about;
    const svg = asSvg(sheet.svg);
    // A line is thin: a wide one over it, not seen, is what the pointer meets.
    for (const line of svg.querySelectorAll("line[data-cut]")) {
      const wide = line.cloneNode() as Element;
      wide.classList.add("wide");
      line.after(wide); // below the letters
    }
    picture.replaceChildren(svg);
    list.replaceChildren(
      ...sheet.cuts.map(({ number, says }) => {
        const item = element("li", { "data-cut": String(number), tabindex: "0", value: String(number) }, says);
        item.addEventListener("focus", () => mark(String(number)));
        return item;
      }),
    );
    mark(undefined);
  };
  made.addEventListener("pointerover", (event) =>
    mark((event.target as Element).closest("[data-cut]")?.getAttribute("data-cut") ?? undefined),
  );
  made.append(
    element("div", { class: "cuts-head" }, title, button("‹ Pattern before", -1), button("Next pattern ›", 1)),
  );
  made.append(strip, about, picture, named, list);
  draw();
  return made;
}

/** The sheet in small, with what it is cut from and how often. */
function thumbnail({ title, about, repeats, svg }: CutSheet, i: number, show: () => void): HTMLElement {
  const small = asSvg(svg);
  small.setAttribute("aria-hidden", "true");
  const often = repeats > 1 ? [element("b", {}, ` × ${repeats}`)] : [];
  const button = element("button", { type: "button", title: about }, small, `${i + 1}: ${title}`, ...often);
  button.addEventListener("click", show);
  return button;
}

const HINT = "Point at a cut, in the drawing or in the list, to see which it is.";
