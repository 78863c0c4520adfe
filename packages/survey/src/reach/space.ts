import { bounds, type Model, type Vec3 } from '@coveline/model';
import type { Control } from '../result.ts';
import type { Site } from '../site.ts';
import { step } from '../stopped.ts';
import { closestPoint, newNearest } from '../tree/closest.ts';
import { type Tree, treeOf } from '../tree/tree.ts';
import { type Access, accessOf } from './access.ts';
import { type Clearance, clearanceOf } from './clearance.ts';
import { type Facets, facetsOf } from './facets.ts';
import { type Lattice, latticeBetween } from './lattice.ts';
import type { ClearanceAt } from './narrowest.ts';
import { type Planes, planesAt, planesOf } from './planes.ts';

/** The air around and in a machine with its doors open, in cells: what hand and tool share before any size counts. */
export interface ReachSpace {
  readonly lattice: Lattice;
  /** The model without the parts that swing away. */
  readonly obstacles: Model;
  readonly tree: Tree;
  readonly facets: Facets;
  readonly planes: Planes;
  readonly clearance: Clearance;
  readonly access: Access;
  /** Balls of a larger radius are not told apart. */
  readonly cap_mm: number;
}

/** Throws `SurveyStopped` when the signal is aborted. `largest_mm`: radius of the largest ball that will be asked for. */
export function reachSpaceOf(
  model: Model,
  site: Site | undefined,
  largest_mm: number,
  spacing_mm: number,
  control: Control,
): ReachSpace {
  step(control, 'reach', 0);
  const absent = new Set(site?.doors.flatMap((door) => door.parts));
  const obstacles =
    absent.size > 0 ? { ...model, parts: model.parts.filter((part) => !absent.has(part.id)) } : model;
  const [low, high] = bounds(model);
  const floor = site?.floor_mm ?? low[2];
  // The centre of the largest ball goes round the machine in a layer two cells thick; a cell is no wider than its radius.
  const asked_mm = Math.min(spacing_mm, largest_mm);
  const margin = largest_mm + 2 * asked_mm;
  const lattice = latticeBetween(
    [low[0] - margin, low[1] - margin, Math.max(low[2] - margin, Math.min(floor, low[2]) - asked_mm)],
    [high[0] + margin, high[1] + margin, high[2] + margin],
    asked_mm,
  );
  const cap_mm = largest_mm * 1.25 + lattice.pitch;
  const facets = facetsOf(model, absent, lattice, control);
  const planes = planesOf(site, floor, lattice.corner);
  return {
    lattice,
    obstacles,
    tree: treeOf(obstacles),
    facets,
    planes,
    clearance: clearanceOf(lattice, facets, planes, cap_mm, control),
    access: accessOf(site, facets),
    cap_mm,
  };
}

/** What stood nearest when `exactClearance` looked last and found something within its bound. */
export const nearest = newNearest();

/** Exact distance from a point, mm from the lattice's corner, to what stands around it; no more than `most_mm`. */
export function exactClearance(
  space: ReachSpace,
  x: number,
  y: number,
  z: number,
  most_mm = space.cap_mm,
): number {
  const { corner } = space.lattice;
  const planes = planesAt(space.planes, x, y, z);
  const reach = Math.min(most_mm, planes);
  if (!(reach > 0)) return planes;
  return closestPoint(space.tree, x + corner[0], y + corner[1], z + corner[2], reach, nearest)
    ? nearest.distance
    : reach;
}

/** `exactClearance` of a space. */
export function exactlyIn(space: ReachSpace): ClearanceAt {
  return (x, y, z, most_mm) => exactClearance(space, x, y, z, most_mm);
}

/** A point of the lattice's frame in the frame of the model. */
export function inModel({ corner }: Lattice, x: number, y: number, z: number): Vec3 {
  return [x + corner[0], y + corner[1], z + corner[2]];
}
