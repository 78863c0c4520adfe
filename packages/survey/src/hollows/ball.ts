/** A ball in the air: how large it can be at a place, and how it is made as large as it can be there. */
import type { Vec3 } from '@coveline/model';
import { closestPoint, newNearest } from '../tree/closest.ts';
import { across } from './across.ts';
import { isSolid, type Looks } from './looks.ts';
import { along } from './vector.ts';

export interface Ball {
  readonly at: Vec3;
  /** Largest radius without touching, at most what was asked for, mm. */
  readonly radius: number;
}

const nearest = newNearest();

/** The largest ball around a point, `most` mm at most; undefined where the point lies in material. */
export function ballAt(looks: Looks, at: Vec3, most: number): Ball | undefined {
  return isSolid(looks, at) ? undefined : { at, radius: clearance(looks, at, most) };
}

function clearance({ material }: Looks, at: Vec3, most: number): number {
  return closestPoint(material.tree, ...at, most, nearest) ? nearest.distance : most;
}

const directions = 8;
/** The search ends when its steps are this small, share of the first radius. */
const finest = 0.001;

/** Moves a ball square to a direction until it is as large as it gets. Its steps are shorter than its radius, so it passes no wall. */
export function widened(looks: Looks, ball: Ball, direction: Vec3, most: number): Ball {
  const [e1, e2] = across(direction);
  let best = ball;
  let step = ball.radius / 2;
  while (step > finest * ball.radius) {
    let moved = false;
    for (let k = 0; k < directions; k++) {
      const angle = (2 * Math.PI * k) / directions;
      const at = along(along(best.at, e1, step * Math.cos(angle)), e2, step * Math.sin(angle));
      const radius = clearance(looks, at, most);
      if (radius <= best.radius) continue;
      best = { at, radius };
      moved = true;
    }
    if (!moved) step /= 2;
  }
  return best;
}
