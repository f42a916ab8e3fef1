/** What drawings have against them as a browser lays them out: texts that lie on one another or on a line, leave the picture, or are too small. */
import type { Page } from "playwright-core";

export interface Looked {
  readonly found: readonly string[];
  readonly width: number;
  readonly texts: number;
}

/**
 * Boxes of texts as they stand, turned with their groups; the picture's own units. A line that a ground of paper covers below
 * the text is not seen; one that is drawn later is.
 */
const FAULTS = `(svgs, least) => svgs.map((svg) => {
  document.body.innerHTML = svg;
  const picture = document.querySelector("svg");
  const { x, y, width, height } = picture.viewBox.baseVal;
  const slack = width / 600;
  const onScreen = picture.getScreenCTM().inverse();
  const onPicture = (shape) => {
    const m = onScreen.multiply(shape.getScreenCTM());
    return ([u, v]) => [m.a * u + m.c * v + m.e, m.b * u + m.d * v + m.f];
  };
  const cornersOf = ({ x, y, width, height }, inset = 0) =>
    [[x, y + inset], [x + width, y + inset], [x + width, y + height - inset], [x, y + height - inset]];
  const texts = [...picture.querySelectorAll("text")].map((element) => {
    const box = element.getBBox();
    return {
      element,
      words: element.textContent,
      size: Number(getComputedStyle(element).fontSize.replace("px", "")),
      corners: cornersOf(box, box.height * 0.15).map(onPicture(element)), // a font's box is higher than its letters
    };
  });
  const apart = (a, b) => [a, b].some((of) => of.some(([px, py], i) => {
    const [qx, qy] = of[(i + 1) % 4];
    const [nx, ny] = [qy - py, px - qx];
    const along = (corners) => corners.map(([u, v]) => u * nx + v * ny);
    const [p, q] = [along(a), along(b)];
    return Math.max(...p) <= Math.min(...q) || Math.max(...q) <= Math.min(...p);
  }));
  const span = (corners) => [Math.min(...corners.map(([u]) => u)), Math.max(...corners.map(([u]) => u)),
    Math.min(...corners.map(([, v]) => v)), Math.max(...corners.map(([, v]) => v))];
  const closed = (points) => points.map((point, i) => [point, points[(i + 1) % points.length]]);
  const pathSegments = (shape) => {
    const d = shape.getAttribute("d");
    if (/[^MLHV\\d\\s.,e-]/.test(d)) {
      const long = shape.getTotalLength();
      const points = Array.from({ length: 81 }, (_, i) => shape.getPointAtLength((long * i) / 80)).map(({ x, y }) => [x, y]);
      return points.slice(1).map((to, i) => [points[i], to]);
    }
    const made = [];
    let at = [0, 0];
    for (const [, kind, rest] of d.matchAll(/([MLHV])([^MLHV]*)/g)) {
      const given = rest.match(/-?[\\d.]+(?:e-?\\d+)?/g).map(Number);
      const to = kind === "H" ? [given[0], at[1]] : kind === "V" ? [at[0], given[0]] : given;
      if (kind !== "M") made.push([at, to]);
      at = to;
    }
    return made;
  };
  const segmentsOf = (shape) => {
    const end = (n) => [Number(shape.getAttribute("x" + n)), Number(shape.getAttribute("y" + n))];
    if (shape.tagName === "line") return [[end(1), end(2)]];
    if (shape.tagName === "rect") return closed(cornersOf(shape.getBBox()));
    if (shape.tagName === "polygon") return closed([...shape.points].map(({ x, y }) => [x, y]));
    return pathSegments(shape);
  };
  const shapes = [...picture.querySelectorAll("line, rect, polygon, path")];
  const grounds = shapes.filter((shape) => shape.classList.contains("paper"))
    .map((element) => ({ element, box: span(cornersOf(element.getBBox()).map(onPicture(element))) }));
  const strokes = shapes.filter((shape) => getComputedStyle(shape).stroke !== "none").map((element) => ({
    element,
    half: Number(getComputedStyle(element).strokeWidth.replace("px", "")) / 2,
    segments: segmentsOf(element).map((ends) => ends.map(onPicture(element))),
  }));
  const isBefore = (a, b) => (a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
  const covers = ([left, right, top, bottom], corners) => {
    const [l, r, t, b] = span(corners);
    const slack = (r - l + b - t) / 20;
    return left <= l + slack && right >= r - slack && top <= t + slack && bottom >= b - slack;
  };
  const liesOn = ({ element: text, corners }, { element, half, segments }) => {
    const [left, right, top, bottom] = span(corners);
    const near = segments.filter(([[a, b], [c, d]]) => Math.min(a, c) - half < right && Math.max(a, c) + half > left &&
      Math.min(b, d) - half < bottom && Math.max(b, d) + half > top);
    const isSeen = () => !grounds.some((ground) => isBefore(element, ground.element) && isBefore(ground.element, text) &&
      covers(ground.box, corners));
    return near.length > 0 && isSeen() && near.some(([[a, b], [c, d]]) => {
      const long = Math.hypot(c - a, d - b) || 1;
      const [nx, ny] = [((d - b) / long) * half, ((a - c) / long) * half];
      return !apart(corners, [[a + nx, b + ny], [c + nx, d + ny], [c - nx, d - ny], [a - nx, b - ny]]);
    });
  };
  const found = [];
  texts.forEach((text, i) => {
    if (text.corners.some(([u, v]) => u < x - slack || v < y - slack || u > x + width + slack || v > y + height + slack))
      found.push(text.words + " leaves the picture");
    if (text.size < least) found.push(text.words + " is too small");
    for (const other of texts.slice(i + 1))
      if (!apart(text.corners, other.corners)) found.push(text.words + " lies on " + other.words);
    for (const stroke of strokes)
      if (liesOn(text, stroke)) found.push(text.words + " lies on a " + stroke.element.tagName);
  });
  return { found, width, texts: texts.length };
})`;

/** @param least height of letters in the picture's own units. */
export const look = (page: Page, svgs: readonly string[], least: number): Promise<Looked[]> =>
  page.evaluate(`(${FAULTS})(${JSON.stringify(svgs)}, ${least})`) as Promise<Looked[]>;
