/** The part from its end as one thin line, to know it by in a list: no figures, no thickness, the longest flange level. */
import { lastOf } from "../../units/certain.ts";
import { at, boxOf, type Point } from "./svg.ts";

/** What the line is fitted into. */
export const SHAPE_BOX = { width: 44, height: 26 };

/** Outside flanges, one more than angles, in any one unit; angles in degrees, up is positive. SVG path data. */
export function shapePath(flanges: readonly number[], angles: readonly number[]): string {
  const longest = flanges.indexOf(Math.max(...flanges));
  const turns = angles.map((angle) => (-angle * Math.PI) / 180); // up is a turn to the left, and y grows downward
  let direction = -turns.slice(0, longest).reduce((sum, turn) => sum + turn, 0);
  const points: Point[] = [[0, 0]];
  flanges.forEach((flange, i) => {
    const [x, y] = lastOf(points);
    points.push([x + flange * Math.cos(direction), y + flange * Math.sin(direction)]);
    direction += turns[i] ?? 0;
  });
  const box = boxOf(points);
  const [width, height] = [box.right - box.left, box.bottom - box.top];
  const scale = Math.min(SHAPE_BOX.width / Math.max(width, 1e-9), SHAPE_BOX.height / Math.max(height, 1e-9));
  const [x0, y0] = [
    (SHAPE_BOX.width - width * scale) / 2 - box.left * scale,
    (SHAPE_BOX.height - height * scale) / 2 - box.top * scale,
  ];
  return `M${points.map(([x, y]) => `${at(x * scale + x0)} ${at(y * scale + y0)}`).join("L")}`;
}
