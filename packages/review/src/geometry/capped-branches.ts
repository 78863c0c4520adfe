/**
 * Branches off a line that end at a cap, from the bores of CAD faces: where two bores of one part cross, one runs on to
 * both sides and is the main; from the crossing one looks along the other until something bars the way.
 */
import type { Model, Vec3 } from '@coveline/model';
import { firstHit, newHit, type Tree, treeOf } from '@coveline/survey';
import { type Cylinder, cylindersOf } from './cylinders.ts';
import { cross, dot, length, minus, plus } from './vector.ts';

export interface CappedBranch {
  /** Index of the part in which the bores cross, and of the one that ends the branch. */
  readonly tee: number;
  readonly cap: number;
  /** From the axis of the main to the cap, mm. */
  readonly fromAxis_mm: number;
  readonly mainBore_mm: number;
  readonly branchBore_mm: number;
  /** Middle of the cap's inner face, mm. */
  readonly end_mm: Vec3;
}

/** What is longer is a line of its own. */
const longest = 10;
/** A cap faces the branch: cosine between its normal and the axis. The wall of an elbow stands askew. */
const facing = 0.95;
/** Axes closer than this cross, mm. */
const crossing_mm = 0.5;
/** One looks beside the axis, for meshes have a vertex at the middle of a cap: share of the radius. */
const offAxis = 0.03;

export function cappedBranches(model: Model, isLine: (part: number) => boolean): readonly CappedBranch[] {
  const out: CappedBranch[] = [];
  for (let tee = 0; tee < model.parts.length; tee++) {
    if (!isLine(tee)) continue;
    const bores = cylindersOf(model, tee).filter((c) => c.hollow);
    for (const main of bores) {
      for (const branch of bores) {
        const crossing = main === branch ? null : branchingPoint(main, branch);
        const found = crossing && capOf(treeOf(model), tee, main, branch, crossing);
        if (found) out.push(found);
      }
    }
  }
  return out;
}

interface Crossing {
  readonly at: Vec3;
  /** Direction from the main into the branch. */
  readonly into: Vec3;
}

/** Where the axes cross, if the main runs on to both sides and the branch to one. */
function branchingPoint(main: Cylinder, branch: Cylinder): Crossing | null {
  const normal = cross(main.direction, branch.direction);
  const sine = length(normal);
  if (sine < 0.2) return null;
  const apart = minus(branch.origin, main.origin);
  if (Math.abs(dot(apart, normal)) / sine > crossing_mm) return null;
  const onMain = dot(cross(apart, branch.direction), normal) / sine ** 2;
  const onBranch = dot(cross(apart, main.direction), normal) / sine ** 2;
  const runsOn = main.from < onMain - branch.radius / 2 && onMain + branch.radius / 2 < main.to;
  if (!runsOn) return null;
  const ahead = branch.to - onBranch;
  const behind = onBranch - branch.from;
  // A bore that crosses to both sides is another main.
  if (Math.min(ahead, behind) > main.radius + branch.radius / 2) return null;
  const into = ahead > behind ? branch.direction : minus([0, 0, 0], branch.direction);
  return { at: plus(main.origin, main.direction, onMain), into };
}

function capOf(
  tree: Tree,
  tee: number,
  main: Cylinder,
  branch: Cylinder,
  { at, into }: Crossing,
): CappedBranch | null {
  const start = plus(at, main.direction, offAxis * branch.radius);
  const hit = newHit();
  if (!firstHit(tree, ...start, ...into, 2 * longest * branch.radius, hit)) return null;
  if (Math.abs(dot(normalOf(tree, hit.slot), into)) < facing) return null;
  return {
    tee,
    cap: hit.part,
    fromAxis_mm: hit.t,
    mainBore_mm: 2 * main.radius,
    branchBore_mm: 2 * branch.radius,
    end_mm: plus(at, into, hit.t),
  };
}

function normalOf(tree: Tree, slot: number): Vec3 {
  const c = tree.corners.subarray(slot * 9, slot * 9 + 9);
  const n = cross([c[3] - c[0], c[4] - c[1], c[5] - c[2]], [c[6] - c[0], c[7] - c[1], c[8] - c[2]]);
  const l = length(n) || 1;
  return [n[0] / l, n[1] / l, n[2] / l];
}
