/** Puts a view in its box: another one begins at its top; the same one drawn again keeps its place, and the focus its button. */
export function redraw(box: HTMLElement, view: Node, name: string): void {
  const held = box.contains(document.activeElement) ? document.activeElement?.textContent : undefined;
  box.replaceChildren(view);
  if (box.dataset["shown"] !== name) box.scrollTop = 0;
  box.dataset["shown"] = name;
  if (held === undefined) return;
  const buttons = [...box.querySelectorAll("button")];
  (buttons.find(({ textContent }) => textContent === held) ?? buttons[0] ?? box).focus({ preventScroll: true });
}
