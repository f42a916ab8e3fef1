import { FACE_CLEARANCE } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import type { Degrees } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import type { AirTools } from "./air-bend.ts";

type Faces = Pick<AirTools, "dieAngle" | "punchAngle">;

/** Degrees of turn left between the loaded sheet and the nearer face of die or punch; undefined where neither is known. */
export function faceRoom(loadedAngle: Degrees, { dieAngle, punchAngle }: Faces): number | undefined {
  const angles = [dieAngle, punchAngle].filter((angle) => angle !== undefined);
  return angles.length === 0 ? undefined : 180 - Math.max(...angles) - loadedAngle;
}

/** The largest angle of die and punch whose faces the loaded sheet does not pass, in tenths. */
export const largestFace = (loadedAngle: Degrees): number => Math.floor((180 - loadedAngle) * 10) / 10; // tenths, chosen

/**
 * Refuses (#N/A) a bend whose loaded sheet would lie past the faces of die or punch: it bottoms there and never reaches
 * the angle. Wanted angle + springback should stay 1-2 degrees short of 180 less the tool's angle (common practice). A tool
 * whose angle is not given cannot be judged: the working says what it needs.
 */
export function refusePastFaces(loadedAngle: Degrees, faces: Faces, work?: Working): void {
  const needed = largestFace(loadedAngle);
  const room = faceRoom(loadedAngle, faces);
  if (room === undefined) {
    step(work, "faces", "die and punch angle not given; they need at most", needed, "deg", cite(FACE_CLEARANCE));
    return;
  }
  const words = room < FACE_CLEARANCE.value ? "short of the faces, too little" : "short of the faces of die and punch";
  step(work, "faces", `loaded sheet ${words}`, room, "deg", cite(FACE_CLEARANCE));
  if (room >= 0) return;
  const [tool, angle] =
    (faces.dieAngle ?? 0) >= (faces.punchAngle ?? 0) ? ["die", faces.dieAngle] : ["punch", faces.punchAngle];
  throw noAnswer(
    `${tool}_angle`,
    `at most ${needed} deg, since the sheet turns ${loadedAngle.toFixed(1)} deg under load`,
    String(angle),
    'the sheet would bottom; take a sharper tool, or ask AIR.TONNAGE for "bottoming"',
  );
}
