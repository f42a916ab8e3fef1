import type { BendSetup } from "./bend-setup.ts";
import { type FreeArm, freeArm } from "./free-arm.ts";
import { rootBetween } from "./root.ts";
import type { SectionPath } from "./section.ts";

/** The sheet under load at one half angle, as beam mechanics give it, before the fitted corrections of punchTip. */
export interface LoadedPose {
  readonly regime: "point" | "wrapped";
  /** Slope of the flange under load, radians; half the bend angle. */
  readonly halfAngle: number;
  /** Part of it that lies around the punch nose. */
  readonly wrapAngle: number;
  /** Section path from the die contact to the punch. */
  readonly path: SectionPath;
  readonly arm: FreeArm;
  /** Depth of the middle line's lowest point below where it was at first contact. */
  readonly depth: number;
  /** Ram force on both shoulders, per unit length of bend. */
  readonly force: number;
  /** Half of the angle that springs back, radians. */
  readonly springback: number;
  /** Length of the middle line from the center to the die contact. */
  readonly halfLength: number;
}

/**
 * Pose at a loaded half angle a (radians, above 0 and below setup.largestHalfAngle). The reaction meets the middle line
 * at x = xc - rho sin a + (mu t/2) cos a, y = -rd + rho cos a + (mu t/2) sin a, rho the shoulder radius to the middle
 * line: friction acts on the sheet's face, half a thickness from the middle line, and shifts the line of action by
 * mu t/2 along the flange (derived). Closure: arm + nose = x. While the center would bend less than the nose, the punch
 * touches at a point and the center's curvature is the unknown; else the sheet wraps the nose and the wrap angle is.
 * `guess` is a curvature to start from, `tolerance` that of the unknown (of ln curvature or of radians).
 */
export function loadedPose(
  setup: BendSetup,
  halfAngle: number,
  guess = 1 / setup.noseRadius,
  tolerance = 1e-12,
): LoadedPose {
  const { section, nosePath, noseRadius, shoulderRadius, friction, frictionAngle } = setup;
  const sin = Math.sin(halfAngle);
  const cos = Math.cos(halfAngle);
  const shift = (friction * section.thickness) / 2;
  const contactX = setup.shoulderCenter - shoulderRadius * sin + shift * cos;
  const contactY = -setup.dieShoulder + shoulderRadius * cos + shift * sin;
  const reach = (arm: FreeArm) => arm.alongFlange * cos + arm.sag * sin;

  const finish = (regime: LoadedPose["regime"], path: SectionPath, arm: FreeArm, wrapAngle: number): LoadedPose => {
    const wrapLength = wrapAngle * noseRadius;
    const rise = arm.alongFlange * sin - arm.sag * cos + noseRadius * (1 - Math.cos(wrapAngle));
    const normal = arm.reaction * Math.cos(frictionAngle);
    return {
      regime,
      halfAngle,
      wrapAngle,
      path,
      arm,
      depth: section.thickness / 2 - (contactY - rise),
      force: 2 * normal * (cos + friction * sin),
      springback: (arm.momentLength + wrapLength * path.end.moment) / section.stiffness,
      halfLength: arm.length + wrapLength,
    };
  };

  const atNose = freeArm(nosePath, halfAngle, frictionAngle);
  const excess = reach(atNose) - contactX;
  if (excess > 0) {
    const closure = (wrap: number) =>
      reach(freeArm(nosePath, halfAngle - wrap, frictionAngle)) + noseRadius * Math.sin(wrap) - contactX;
    const wrap = rootBetween(closure, [0, excess], [halfAngle, noseRadius * sin - contactX], tolerance);
    return finish("wrapped", nosePath, freeArm(nosePath, halfAngle - wrap, frictionAngle), wrap);
  }

  // The reach falls nearly as the inverse of the end curvature: the error of ln reach is about the step ln k still needs.
  let path = nosePath;
  const shortfall = (lnCurvature: number) => {
    path = section.pathTo(Math.exp(lnCurvature));
    return Math.log(reach(freeArm(path, halfAngle, frictionAngle)) / contactX);
  };
  const most = -Math.log(noseRadius);
  let here = Math.min(Math.log(guess), most);
  let fHere = here === most ? Math.log(1 + excess / contactX) : shortfall(here);
  let there = here;
  let fThere = fHere;
  while (fHere > 0 === fThere > 0 && fHere !== 0) {
    [here, fHere] = [there, fThere];
    const next = here + 1.1 * fHere + (fHere > 0 ? 1e-6 : -1e-6);
    there = Math.min(next, most);
    fThere = there === most ? Math.log(1 + excess / contactX) : shortfall(there);
  }
  // The path of the last evaluation is the root's.
  if (fHere !== 0) rootBetween(shortfall, [here, fHere], [there, fThere], tolerance);
  return finish("point", path, freeArm(path, halfAngle, frictionAngle), 0);
}
