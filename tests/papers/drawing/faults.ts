/** What drawings have against them as a browser lays them out: texts that lie on one another, leave the picture, or are too small. */
import type { Page } from "playwright-core";

export interface Looked {
  readonly found: readonly string[];
  readonly width: number;
  readonly texts: number;
}

/** Boxes of texts as they stand, turned with their groups; the picture's own units. */
const FAULTS = `(svgs, least) => svgs.map((svg) => {
  document.body.innerHTML = svg;
  const picture = document.querySelector("svg");
  const { x, y, width, height } = picture.viewBox.baseVal;
  const slack = width / 600;
  const texts = [...picture.querySelectorAll("text")].map((text) => {
    const box = text.getBBox();
    const m = picture.getScreenCTM().inverse().multiply(text.getScreenCTM());
    const inset = box.height * 0.15; // a font's box is higher than its letters
    const corner = (u, v) => [m.a * u + m.c * v + m.e, m.b * u + m.d * v + m.f];
    return {
      words: text.textContent,
      size: Number(getComputedStyle(text).fontSize.replace("px", "")),
      corners: [corner(box.x, box.y + inset), corner(box.x + box.width, box.y + inset),
        corner(box.x + box.width, box.y + box.height - inset), corner(box.x, box.y + box.height - inset)],
    };
  });
  const apart = (a, b) => [a, b].some((of) => of.some(([px, py], i) => {
    const [qx, qy] = of[(i + 1) % 4];
    const [nx, ny] = [qy - py, px - qx];
    const along = (corners) => corners.map(([u, v]) => u * nx + v * ny);
    const [p, q] = [along(a), along(b)];
    return Math.max(...p) <= Math.min(...q) || Math.max(...q) <= Math.min(...p);
  }));
  const found = [];
  texts.forEach((text, i) => {
    if (text.corners.some(([u, v]) => u < x - slack || v < y - slack || u > x + width + slack || v > y + height + slack))
      found.push(text.words + " leaves the picture");
    if (text.size < least) found.push(text.words + " is too small");
    for (const other of texts.slice(i + 1))
      if (!apart(text.corners, other.corners)) found.push(text.words + " lies on " + other.words);
  });
  return { found, width, texts: texts.length };
})`;

/** @param least height of letters in the picture's own units. */
export const look = (page: Page, svgs: readonly string[], least: number): Promise<Looked[]> =>
  page.evaluate(`(${FAULTS})(${JSON.stringify(svgs)}, ${least})`) as Promise<Looked[]>;
