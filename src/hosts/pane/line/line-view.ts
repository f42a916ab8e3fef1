/** The line of the bill that is selected: status, sentences, figures, drawings. */
import type { FixOffer } from "../../../job/fix-cells.ts";
import type { LineReport } from "../../../papers/line-report.ts";
import { element } from "../dom/element.ts";

/** The status is said in letters and by the shape of its mark, never by color alone. */
const MARKS: Readonly<Record<LineReport["status"], string>> = { clear: "○", check: "△", stop: "■" };

/** @param apply types the fix into the bill. */
export function lineView(
  { part, status, sentences, notes, figures, drawings, plan }: LineReport,
  fix?: FixOffer,
  apply: () => void = () => {},
): HTMLElement {
  return element(
    "article",
    { class: `line ${status}` },
    element("h2", {}, part),
    element(
      "p",
      { class: "status" },
      element("span", { "aria-hidden": "true" }, MARKS[status]),
      ` ${status.toUpperCase()}`,
    ),
    ...sentences.map((sentence) => element("p", { class: "sentence" }, sentence)),
    ...(fix ? [fixView(fix, apply)] : []),
    ...notes.map((note) => element("p", { class: "note" }, note)),
    element("dl", {}, ...figures.flatMap(([name, value]) => [element("dt", {}, name), element("dd", {}, value)])),
    ...drawings.map(({ name, svg }) => element("figure", {}, asSvg(svg), element("figcaption", {}, name))),
    element(
      "p",
      { class: "caution" },
      "The machine's plate decides. Keep hands clear of die and blade; what a bracket carries is not checked.",
    ),
    element("p", { class: "plan-number" }, `Plan ${plan}`),
  );
}

function fixView(fix: FixOffer, apply: () => void): HTMLElement {
  if ("lacks" in fix)
    return element("p", { class: "note" }, `To apply it here, add a column "${fix.lacks}" to the bill.`);
  const button = element("button", { type: "button", class: "apply" }, `Apply: ${fix.says}`);
  button.addEventListener("click", apply);
  return button;
}

/** Parsed as XML, so nothing in it can run; inserted as a picture. */
function asSvg(svg: string): Element {
  return document.importNode(new DOMParser().parseFromString(svg, "image/svg+xml").documentElement, true);
}
