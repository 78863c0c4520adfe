import type { Placement, Vec3 } from '@coveline/model';
import { across } from '../corners/round.ts';
import type { Material } from '../tree/inside.ts';
import { newHit, newRay, someAlong } from '../tree/ray.ts';
import { newWhereabouts, partNear, type Whereabouts } from '../tree/whereabouts.ts';
import type { LocalThread } from './local.ts';

/** How much of a thread stands free in the air. */
export interface Exposure {
  readonly exposed_mm: number;
  /** Stretches of which at least half of the round is free, in the frame of the shape, mm along the axis. */
  readonly stretches: readonly (readonly [number, number])[];
}

const directions = 16;
/** Stations along a thread: its length is told to half of one of them. */
const mostStations = 2000;
const finest_mm = 0.05;
/**
 * A wall this near makes a hole and not a side: clearance holes are wider than their bolt by a tenth (medium series) up
 * to a fifth (coarse series) of it (ISO 273; from memory), half of that on each side.
 */
const wallOfHole = 0.12;
const leastWall_mm = 0.8;
/** The look starts this far off the thread, so that its own unevenness is not taken for a cover; share of its radius. */
const liftShare = 0.025;
const leastLift_mm = 0.05;

export function newLook(material: Material): Whereabouts {
  return newWhereabouts(material);
}

/**
 * Length of a thread that nothing covers: per station along it, the share of directions in which no material and no
 * wall of a hole stands on its flanks. An inner thread is covered where something fills its hole. Between two covers
 * less than `gapBelow_mm` apart a thread does not stand free: that is a narrow gap, and told as one.
 */
export function exposureOf(
  look: Whereabouts,
  placement: Placement,
  thread: LocalThread,
  gapBelow_mm: number,
): Exposure {
  const { from, to, inside } = thread;
  const n = Math.max(1, Math.min(mostStations, Math.ceil((to - from) / finest_mm)));
  const step = (to - from) / n;
  const free = Float64Array.from({ length: n }, (_, i) => {
    const z = from + (i + 0.5) * step;
    return inside ? (isFilled(look, placement, thread, z) ? 0 : 1) : freeShare(look, placement, thread, z);
  });
  let exposed_mm = 0;
  const stretches: [number, number][] = [];
  for (let i = 0; i < n; ) {
    let j = i;
    let sum = 0;
    while (j < n && free[j] > 0) sum += free[j++];
    const isGap = i > 0 && j < n && (j - i) * step < gapBelow_mm;
    if (j > i && !isGap) {
      exposed_mm += sum * step;
      stretches.push(
        ...mostlyFree(free, i, j).map(([a, b]) => [from + a * step, from + b * step] as [number, number]),
      );
    }
    i = Math.max(j, i + 1);
  }
  return { exposed_mm, stretches };
}

/** Stretches of stations [a, b) within [i, j) of which at least half of the round is free. */
function mostlyFree(free: Float64Array, i: number, j: number): [number, number][] {
  const found: [number, number][] = [];
  for (let k = i; k < j; k++) {
    if (free[k] < 0.5) continue;
    const last = found[found.length - 1];
    if (last?.[1] === k) last[1] = k + 1;
    else found.push([k, k + 1]);
  }
  return found;
}

const hit = newHit();
const ray = newRay();

function freeShare(
  look: Whereabouts,
  placement: Placement,
  { origin, direction, radius_mm }: LocalThread,
  z: number,
): number {
  const { u, v } = across(direction);
  const lift = Math.max(leastLift_mm, liftShare * radius_mm);
  const reach = radius_mm + lift;
  ray.tMin = 0;
  ray.tMax = Math.max(leastWall_mm, wallOfHole * 2 * radius_mm) - lift;
  let free = 0;
  for (let k = 0; k < directions; k++) {
    const angle = (2 * Math.PI * (k + 0.31)) / directions;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const out: Vec3 = [c * u[0] + s * v[0], c * u[1] + s * v[1], c * u[2] + s * v[2]];
    const [x, y, w] = place(
      placement,
      origin[0] + z * direction[0] + reach * out[0],
      origin[1] + z * direction[1] + reach * out[1],
      origin[2] + z * direction[2] + reach * out[2],
    );
    if (partNear(look, x, y, w) >= 0) continue;
    ray.ox = x;
    ray.oy = y;
    ray.oz = w;
    ray.dx = placement[0] * out[0] + placement[4] * out[1] + placement[8] * out[2];
    ray.dy = placement[1] * out[0] + placement[5] * out[1] + placement[9] * out[2];
    ray.dz = placement[2] * out[0] + placement[6] * out[1] + placement[10] * out[2];
    if (!someAlong(look.material.tree, ray, hit)) free++;
  }
  return free / directions;
}

function isFilled(
  look: Whereabouts,
  placement: Placement,
  { origin, direction }: LocalThread,
  z: number,
): boolean {
  const at = place(
    placement,
    origin[0] + z * direction[0],
    origin[1] + z * direction[1],
    origin[2] + z * direction[2],
  );
  return partNear(look, at[0], at[1], at[2]) >= 0;
}

function place(m: Placement, x: number, y: number, z: number): Vec3 {
  return [
    m[0] * x + m[4] * y + m[8] * z + m[12],
    m[1] * x + m[5] * y + m[9] * z + m[13],
    m[2] * x + m[6] * y + m[10] * z + m[14],
  ];
}
