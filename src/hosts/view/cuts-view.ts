/** The sheets as they will be cut, one after another; the cut under the pointer or the focus is named and marked. */
import type { CutSheet } from "../../papers/cut-sheets.ts";
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
  const picture = element("figure");
  const named = element("p", { class: "named", role: "status" });
  const list = element("ol");
  const button = (words: string, by: number) => {
    const one = element("button", { type: "button" }, words);
    one.addEventListener("click", () => {
      at = (at + by + sheets.length) % sheets.length;
      draw();
    });
    return one;
  };
  const mark = (number: string | undefined) => {
    for (const one of made.querySelectorAll(".marked")) one.classList.remove("marked");
    const cut = sheets[at]!.cuts.find((each) => String(each.number) === number);
    named.textContent = cut ? `Cut ${cut.number}: ${cut.says}` : HINT;
    if (!cut) return;
    for (const one of made.querySelectorAll(`[data-cut="${cut.number}"]`)) one.classList.add("marked");
  };
  const draw = () => {
    const sheet = sheets[at]!;
    title.textContent = `Sheet ${at + 1} of ${sheets.length}: ${sheet.title}`;
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
  made.append(element("div", { class: "cuts-head" }, title, button("‹ Sheet before", -1), button("Next sheet ›", 1)));
  made.append(about, picture, named, list);
  draw();
  return made;
}

const HINT = "Point at a cut, in the drawing or in the list, to see which it is.";
