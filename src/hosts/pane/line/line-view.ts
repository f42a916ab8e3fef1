/** One line of the bill: the picture of what is wrong, the sentence, the fix as a button; then figures and every bend. */
import type { FixOffer } from "../../../job/fix-cells.ts";
import type { LineReport } from "../../../papers/line-report.ts";
import { element } from "../dom/element.ts";

/** The status shows as letters and as the shape of its mark, never by color alone. */
export const MARKS: Readonly<Record<LineReport["status"], string>> = { clear: "○", check: "△", stop: "■" };

/** "■ STOP" in the color of its status. */
export const badge = (status: LineReport["status"]): HTMLElement =>
  element(
    "span",
    { class: `badge ${status}` },
    element("span", { class: "mark", "aria-hidden": "true" }, MARKS[status]),
    ` ${status.toUpperCase()}`,
  );

/** @param apply types the fix into the bill. */
export function lineView(
  { part, about, status, sentences, mend, notes, figures, drawings, plan }: LineReport,
  fix?: FixOffer,
  apply: () => void = () => {},
): HTMLElement {
  const [first, ...others] = drawings.map(figure);
  const [worst, ...more] = sentences.map((sentence) => element("p", { class: "sentence" }, sentence));
  return element(
    "article",
    { class: `line ${status}` },
    element("h2", {}, part, " ", element("span", { class: "about" }, about), " ", badge(status)),
    ...(first ? [first] : []),
    ...(worst ? [worst] : []),
    ...(fix ? fixView(fix, apply) : mend === "" ? [] : [element("p", { class: "note" }, mend)]),
    ...more,
    ...notes.map((note) => element("p", { class: "note" }, note)),
    element(
      "dl",
      { class: "figures" },
      ...figures.map(([name, value]) => element("div", {}, element("dt", {}, name), element("dd", {}, value))),
    ),
    element("div", { class: "drawings" }, ...others),
    element(
      "p",
      { class: "caution" },
      "The machine's plate decides. Keep hands clear of die and blade; what a bracket carries is not checked.",
    ),
    element("p", { class: "plan-number" }, `Plan ${plan}`),
  );
}

function figure({ name, svg, words, fails }: LineReport["drawings"][number]): HTMLElement {
  const drawing = asSvg(svg) as SVGElement;
  // Letters are drawn for arm's length on paper; a small part enlarged to the pane would make them huge.
  drawing.style.maxWidth = `calc(${drawing.getAttribute("width")} * ${LARGEST})`;
  return element(
    "figure",
    fails ? { class: "fails" } : {},
    drawing,
    element("figcaption", {}, element("b", {}, name), words.length > 0 ? `: ${words.join("; ")}` : ""),
  );
}
const LARGEST = 1.3; // times its size on paper (chosen)

export const lacksSays = ({ says, lacks }: FixOffer): string =>
  `${says}: to apply it here, add ${lacks.map((heading) => `a column "${heading}"`).join(" and ")} to the bill.`;

/** What only the customer can agree to is asked, in these words and by this button, before it is applied; undefined for the rest. */
export function agreement(fix: FixOffer, apply: () => void): [string, HTMLElement] | undefined {
  if (!fix.isAsked) return undefined;
  const agreed = element("button", { type: "button" }, "The customer agrees: change it");
  agreed.addEventListener("click", apply, { once: true });
  return [`${fix.says}? `, agreed];
}

function fixView(fix: FixOffer, apply: () => void): HTMLElement[] {
  if (fix.lacks.length > 0) return [element("p", { class: "note" }, lacksSays(fix))];
  const button = element("button", { type: "button", class: "apply" }, `${fix.says}, then ${fix.reaches}`);
  button.addEventListener("click", apply);
  return [button];
}

/** Parsed as XML, so nothing in it can run; inserted as a picture. */
export function asSvg(svg: string): Element {
  return document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
}
