/**
 * Tightening by angle: what a turn is worth along the thread. Angles in degrees, lengths in m.
 * The advance of the nut is geometry; how much of it becomes bolt stretch depends on the joint and is not
 * worked out here (the joint takes a share: mechanics, from memory).
 */

import type { Band, FasteningProblem } from './problem.ts';
import { problem } from './problem.ts';

/** Advance of the nut, P angle/360, in m (definition of pitch, single-start thread). */
export function nutAdvance(pitch: number, angleDegrees: number): number {
  return (pitch * angleDegrees) / 360;
}

/** Angle in degrees for an advance in m; the inverse of `nutAdvance`. */
export function angleForAdvance(pitch: number, advance: number): number {
  return (advance * 360) / pitch;
}

/** Turns to degrees. */
export function angleOfTurns(turns: number): number {
  return turns * 360;
}

/** Degrees to turns. */
export function turnsOfAngle(angleDegrees: number): number {
  return angleDegrees / 360;
}

/** Flats of a hexagon, 60 degrees each, the way an angle without a gauge is counted (common practice, no source). */
export function hexagonFlats(angleDegrees: number): number {
  return angleDegrees / 60;
}

/**
 * Turn of the nut from snug for structural bolts with flat faces: a third of a turn up to a length of 4 d, a
 * half up to 8 d, two thirds up to 12 d, with 30 degrees either way (45 at two thirds). RCSC, the table by
 * lengths seen, ratios and tolerance from memory. Degrees; undefined beyond 12 d.
 */
export function structuralTurn(
  boltLength: number,
  nominalDiameter: number,
): { angle: number; allowed: Band } | undefined {
  const ratio = boltLength / nominalDiameter;
  if (!(ratio > 0) || ratio > 12) return undefined;
  const angle = ratio <= 4 ? 120 : ratio <= 8 ? 180 : 240;
  const either = angle === 240 ? 45 : 30;
  return { angle, allowed: { low: angle - either, high: angle + either } };
}

/**
 * A single angle stage is usually 30 to 180 degrees; below 10 and above 360 something is probably wrong.
 * Judgement, no source. Undefined when nothing is suspicious.
 */
export function suspiciousAngle(angleDegrees: number): FasteningProblem | undefined {
  if (!(angleDegrees > 0)) return problem('angle-not-positive', 'The angle of a stage is not above zero.');
  if (angleDegrees < 10) {
    return problem(
      'angle-small',
      `An angle stage of ${angleDegrees}° is too small to be worked by hand; single stages are usually 30° to 180°.`,
    );
  }
  if (angleDegrees > 360) {
    return problem(
      'angle-large',
      `An angle stage of ${angleDegrees}° is more than one turn; single stages are usually 30° to 180°.`,
    );
  }
  return undefined;
}
