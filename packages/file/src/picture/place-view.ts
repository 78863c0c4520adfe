/**
 * Chooses a camera that sees a place: many directions are tried, the one with the least in its way is taken. Where
 * even that one does not see enough of it, what stands in front is cut away.
 */
import type { Vec3 } from '@coveline/model';
import { anyHit, type Tree } from '@coveline/survey';
import { axesOf, type Camera, cameraOnBox } from './camera.ts';
import { along, dot, subtract, unit } from './vector.ts';

export interface PlaceToSee {
  readonly bounds_mm: readonly [Vec3, Vec3];
  /** Points on the place, mm; its middle when there are none. */
  readonly points: readonly Vec3[];
  /** Share of the points that has to be in sight: of a body, half the surface always faces away. */
  readonly enough: number;
}

/** Degrees about the vertical, 0 from the front; people look from the front first. */
const azimuths = [-35, 35, 0, -70, 70, -120, 120, 180];
const elevations = [35, 60, 12, 82, -30, -65];

export function viewOfPlace(tree: Tree, place: PlaceToSee, size: readonly [number, number]): Camera {
  const [low, high] = place.bounds_mm;
  const points = place.points.length > 0 ? place.points : [along(low, subtract(high, low), 0.5)];
  let best = { score: -Infinity, seen: 0, direction: [0, 1, 0] as Vec3 };
  elevations.forEach((elevation, e) => {
    azimuths.forEach((azimuth, a) => {
      const direction = directionOf(azimuth, elevation);
      const seen = shareInSight(tree, points, direction);
      const score = seen - 0.02 * a - 0.05 * e + 0.15 * spread(points, direction);
      if (score > best.score + 1e-9) best = { score, seen, direction };
    });
  });
  const camera = cameraOnBox(low, high, best.direction, size, 1.5);
  const span_mm = Math.max(camera.span_mm, leastSpan_mm);
  if (best.seen >= place.enough) return { ...camera, span_mm };
  return { ...camera, span_mm, cutBefore_mm: cutBefore(points, camera) };
}

/** A place of a millimetre means nothing without what surrounds it. */
const leastSpan_mm = 110;

/** Direction of sight for an eye at an azimuth from the front (-y) and an elevation above the horizon. */
export function directionOf(azimuth_deg: number, elevation_deg: number): Vec3 {
  const a = (azimuth_deg * Math.PI) / 180;
  const e = (elevation_deg * Math.PI) / 180;
  return [-Math.sin(a) * Math.cos(e), Math.cos(a) * Math.cos(e), -Math.sin(e)];
}

function shareInSight(tree: Tree, points: readonly Vec3[], direction: Vec3): number {
  let free = 0;
  for (const p of points) {
    const start = along(p, direction, -0.2);
    if (!anyHit(tree, start[0], start[1], start[2], -direction[0], -direction[1], -direction[2], 1e6)) free++;
  }
  return free / points.length;
}

/** How large the place looks from there, as a share of its longest extent: 0 when it is seen edge on. */
function spread(points: readonly Vec3[], direction: Vec3): number {
  const { right, up } = axesOf({ target: [0, 0, 0], direction, span_mm: 1 });
  let [left, most, bottom, top, longest] = [Infinity, -Infinity, Infinity, -Infinity, 1e-9];
  for (const p of points) {
    const [x, y] = [dot(p, right), dot(p, up)];
    left = Math.min(left, x);
    most = Math.max(most, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
    const d = subtract(p, points[0]);
    longest = Math.max(longest, Math.hypot(d[0], d[1], d[2]));
  }
  return Math.min(1, ((most - left) * (top - bottom)) / (longest * longest));
}

/** Just before the nearest point of the place. */
function cutBefore(points: readonly Vec3[], camera: Camera): number {
  const forward = unit(camera.direction);
  const nearest = Math.min(...points.map((p) => dot(subtract(p, camera.target), forward)));
  return -nearest + 1;
}
