import { type Box3, Vector3 } from 'three';
import { axes, type Pose } from './rig.ts';

/** True when something stands between the point and infinity in that direction. */
export type Blocked = (from: Vector3, direction: Vector3) => boolean;

const elevations_deg = [30, 12, 55, -15, 85, -50];
const azimuths = 16;
/** Points are lifted off the surface that they lie on, mm. */
const lift_mm = 0.6;

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
  blocked: Blocked,
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
      for (const p of points) if (!blocked(p.clone().addScaledVector(toEye, lift_mm), toEye)) seen++;
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
