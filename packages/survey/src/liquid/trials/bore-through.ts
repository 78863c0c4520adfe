import type { Model, Vec3 } from '@coveline/model';
import { across } from '../../hollows/across.ts';
import { partAt } from '../../tree/inside.ts';
import { materialOf } from '../../tree/material.ts';
import { firstAlong, newHit, newRay } from '../../tree/ray.ts';

/** A straight hole from a surface through whatever lies behind it into the next air. */
export interface Drilled {
  /** Where its axis comes out. */
  readonly exit_mm: Vec3;
  /** From surface to surface along the axis. */
  readonly length_mm: number;
  /** Height of the lowest point of its mouth, and of its outlet. */
  readonly lowest_mm: number;
  readonly outlet_mm: number;
  /** Indices of the parts that it goes through, in the order in which it leaves them. */
  readonly parts: readonly number[];
}

/** Farther than this nobody drills a drain, mm. */
const longest_mm = 300;
/** The tool starts this far before the surface; its rim may meet it that much earlier or later, mm. */
const before_mm = 5;
/** Air narrower than this between two parts is passed through, mm. */
const passed_mm = 0.05;
/** Points of the rim whose height is taken. */
const rimPoints = 16;

/**
 * `at_mm`: a point on the surface; `direction`: unit, into the material. Undefined where no air is found behind it within
 * 300 mm, or where there is no material.
 */
export function drilled(
  model: Model,
  at_mm: Vec3,
  direction: Vec3,
  diameter_mm: number,
): Drilled | undefined {
  const material = materialOf(model);
  const hit = newHit();
  const ray = newRay();
  [ray.dx, ray.dy, ray.dz] = direction;
  const aim = (from: Vec3): void => {
    [ray.ox, ray.oy, ray.oz] = from;
  };
  aim(along(at_mm, direction, -passed_mm));
  ray.crossing = 1;
  ray.tMax = longest_mm;
  const parts: number[] = [];
  let t = 0;
  for (;;) {
    ray.tMin = t;
    if (!firstAlong(material.tree, ray, hit)) return undefined;
    t = hit.t;
    if (!parts.includes(hit.part)) parts.push(hit.part);
    if (partAt(material, ...along(at_mm, direction, t)) < 0) break;
  }
  const length_mm = t - passed_mm;
  if (length_mm <= passed_mm) return undefined;

  ray.crossing = -1;
  ray.tMin = 0;
  ray.tMax = 2 * before_mm;
  const [e1, e2] = across(direction);
  let lowest_mm = at_mm[2];
  for (let k = 0; k < rimPoints; k++) {
    const a = (2 * Math.PI * k) / rimPoints;
    const beside = at_mm.map(
      (c, i) => c + (diameter_mm / 2) * (Math.cos(a) * e1[i] + Math.sin(a) * e2[i]),
    ) as unknown as Vec3;
    const start = along(beside, direction, -before_mm);
    aim(start);
    // Where the rim meets nothing, it stands over an edge: then that point of it is as low as the tool is there.
    const z = firstAlong(material.tree, ray, hit) ? start[2] + hit.t * direction[2] : beside[2];
    lowest_mm = Math.min(lowest_mm, z);
  }
  const exit_mm = along(at_mm, direction, length_mm);
  const dip = (diameter_mm / 2) * Math.hypot(direction[0], direction[1]);
  return { exit_mm, length_mm, lowest_mm, outlet_mm: exit_mm[2] - dip, parts };
}

export function along(from: Vec3, direction: Vec3, by: number): Vec3 {
  return [from[0] + by * direction[0], from[1] + by * direction[1], from[2] + by * direction[2]];
}
