import { type Box3, Vector3 } from 'three';
import type { Sight } from '../pick/sight.ts';
import { axes, type Pose } from './rig.ts';

const elevations_deg = [30, 12, 55, -15, 85, -50];
const azimuths = 16;

export interface ChosenPose {
  readonly pose: Pose;
  /** Part of the points that can be seen from there, 0 to 1. */
  readonly seen: number;
}

/**
 * The pose from which most of a place can be seen. Among equals the one that turns the least from where the
 * camera is, and looks down at about 30°.
 */
export function choosePose(
  points: readonly Vector3[],
  box: Box3,
  distance: number,
  now: Pose,
  sight: Sight,
): ChosenPose {
  const target = box.getCenter(new Vector3());
  let best: ChosenPose | null = null;
  let bestScore = -Infinity;
  for (const elevation_deg of elevations_deg) {
    for (let k = 0; k < azimuths; k++) {
      const azimuth = now.azimuth + (k * 2 * Math.PI) / azimuths;
      const elevation = (elevation_deg * Math.PI) / 180;
      const toEye = axes({ azimuth, elevation }).z;
      let seen = 0;
      for (const p of points) if (sight.isFree(p, toEye)) seen++;
      const part = points.length > 0 ? seen / points.length : 1;
      const turn = Math.cos(azimuth - now.azimuth);
      const score = part * 4 + turn * 0.5 - Math.abs(elevation_deg - 30) / 90;
      if (score > bestScore) {
        bestScore = score;
        best = { pose: { target, azimuth, elevation, distance }, seen: part };
      }
    }
  }
  return best!;
}
