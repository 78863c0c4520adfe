import type { SurveySettings } from '../result.ts';
import type { Limb } from './limb.ts';
import type { Reach } from './reach.ts';

const mm = (x: number) => Number(x.toPrecision(3));

/** What the measure assumed, and what it cannot see. */
export function notesOn(
  { site, space }: Reach,
  { kind, size_mm, touch_mm, length_mm }: Limb,
  { reachSpacing_mm, leastUnreached_cm2 }: SurveySettings,
  small: number,
  small_cm2: number,
): string[] {
  const { pitch } = space.lattice;
  const ahead = kind === 'hand' ? 'fingers' : 'bristles';
  const notes = [
    `Reach: a ball of ${mm(size_mm)} mm stands for the ${kind}, with ${ahead} ${mm(touch_mm)} mm ahead of it and ${mm(length_mm)} mm of way. A flat hand passes where a ball does not, and an arm with its elbow, a stiff handle or a body that leans in may not follow a way that the ball takes: try the places that matter on the machine.`,
  ];
  if (!site?.access.length) {
    notes.push('Reach: no access side is given, so hand and tool come from all sides and from above.');
  }
  if (site?.doors.length) {
    notes.push(
      `Reach: the parts of ${site.doors.length} doors are taken away, as if open; their own faces are not judged.`,
    );
  }
  if (pitch > 1.01 * reachSpacing_mm) {
    notes.push(
      `Reach: cells of ${mm(pitch)} mm instead of ${reachSpacing_mm} mm, to keep within memory; where the air is narrower than a cell, what is reached is uncertain.`,
    );
  }
  if (size_mm < 1.75 * pitch) {
    notes.push(
      `Reach: the ${kind} of ${mm(size_mm)} mm is small against cells of ${mm(pitch)} mm; ways through narrow air may be missed.`,
    );
  }
  if (small > 0) {
    notes.push(
      `Reach: ${small} patches that the ${kind} does not get to, smaller than ${leastUnreached_cm2} cm2 each and ${mm(small_cm2)} cm2 together, are counted but not listed.`,
    );
  }
  return notes;
}
