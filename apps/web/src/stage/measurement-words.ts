import type { Measurement } from '@coveline/viewer';
import { m } from '../messages/index.ts';
import { show } from '../numbers/show.ts';

/** The distance in words, with how exact it is. */
export function measurementWords(result: Measurement): string {
  const distance = show(result.distance_mm, 'mm', 5);
  const along = ['x', 'y', 'z'].map((axis, k) => `${axis} ${show(result.along_mm[k], 'mm', 4)}`).join(', ');
  const curved = [result.from, result.to].some((p) => !p.snapped && !p.plane);
  if (!curved) return m.view.measuredExact(distance, along);
  return result.uncertainty_mm > 0
    ? m.view.measuredWithin(distance, along, show(result.uncertainty_mm, 'mm', 2))
    : m.view.measuredUnknown(distance, along);
}
