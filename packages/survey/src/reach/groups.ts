import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { anyHit } from '../tree/ray.ts';
import type { Judged } from './judge.ts';
import { around } from './lattice.ts';
import type { Patches } from './patches.ts';
import type { ReachSpace } from './space.ts';
import type { Widest } from './widest.ts';

/** Neighbours that face away from each other more than this are two sides of a sheet. */
const opposed = -0.5;
/** Neighbours look at each other from this far off the surface, as a part of a cell. */
const off = 0.25;

/**
 * Unreached patches (way above the limit) gathered into connected ones, each in growing order. Neighbours belong
 * together when they are unreached for the same reason and share their air: nothing stands between them, or the widest
 * way to both leads through the same narrowest place.
 */
export function unreachedGroups(
  space: ReachSpace,
  patches: Patches,
  widest: Widest,
  { way, centre }: Judged,
  length_mm: number,
  control: Control,
): number[][] {
  const { lattice } = space;
  const { points, normals, cell } = patches;
  const listed: number[] = [];
  // Per cell its newest listed patch, per patch the one before it in its cell, and another one that it belongs to.
  const newest = new Int32Array(lattice.cells).fill(-1);
  const before = new Int32Array(patches.count);
  const leader = new Int32Array(patches.count);
  for (let p = 0; p < patches.count; p++) {
    if (!(way[p] > length_mm)) continue;
    listed.push(p);
    before[p] = newest[cell[p]];
    newest[cell[p]] = p;
    leader[p] = p;
  }
  const lead = (p: number): number => {
    let at = p;
    while (leader[at] !== at) {
      leader[at] = leader[leader[at]];
      at = leader[at];
    }
    return at;
  };
  const throatOf = (p: number): number => (centre[p] < 0 ? -1 : widest.throat[centre[p]]);
  const lift = off * lattice.pitch;
  const [cx, cy, cz] = lattice.corner;
  const shareAir = (a: number, b: number): boolean => {
    const throat = throatOf(a);
    if (throat >= 0 && throat === throatOf(b)) return true;
    const i = a * 3;
    const j = b * 3;
    const x = points[i] + lift * normals[i];
    const y = points[i + 1] + lift * normals[i + 1];
    const z = points[i + 2] + lift * normals[i + 2];
    const dx = points[j] + lift * normals[j] - x;
    const dy = points[j + 1] + lift * normals[j + 1] - y;
    const dz = points[j + 2] + lift * normals[j + 2] - z;
    return !anyHit(space.tree, x + cx, y + cy, z + cz, dx, dy, dz, 1);
  };
  let a = 0;
  const joinIn = (c: number): void => {
    for (let b = newest[c]; b > a; b = before[b]) {
      if ((way[a] === Infinity) !== (way[b] === Infinity)) continue;
      const one = lead(a);
      const other = lead(b);
      if (one === other) continue;
      let dot = 0;
      for (let k = 0; k < 3; k++) dot += normals[a * 3 + k] * normals[b * 3 + k];
      if (dot < opposed || !shareAir(a, b)) continue;
      leader[Math.max(one, other)] = Math.min(one, other);
    }
  };
  for (let n = 0; n < listed.length; n++) {
    if (n % 1024 === 0) step(control, 'reach', 0.96);
    a = listed[n];
    around(lattice, cell[a], joinIn);
  }
  step(control, 'reach', 0.965);
  const groups = new Map<number, number[]>();
  for (const p of listed) {
    const members = groups.get(lead(p));
    if (members) members.push(p);
    else groups.set(lead(p), [p]);
  }
  return [...groups.values()];
}

/** A region of more parts than these is told part by part. */
const mostParts = 4;

/**
 * A region of many parts in pieces that a reader can find: each part with at least `least_mm2` of it by itself, the
 * other parts together; where those are too little to be told, they stay with the part that has most.
 */
export function byPart(
  { part, area_mm2 }: Patches,
  region: readonly number[],
  least_mm2: number,
): number[][] {
  const ofPart = new Map<number, { members: number[]; area: number }>();
  for (const p of region) {
    const known = ofPart.get(part[p]);
    if (known) {
      known.members.push(p);
      known.area += area_mm2[p];
    } else ofPart.set(part[p], { members: [p], area: area_mm2[p] });
  }
  if (ofPart.size <= mostParts) return [[...region]];
  const all = [...ofPart.values()].sort((a, b) => b.area - a.area || a.members[0] - b.members[0]);
  const large = all.filter(({ area }) => area >= least_mm2);
  const rest = all.slice(large.length);
  const restArea = rest.reduce((sum, { area }) => sum + area, 0);
  const told = large.map(({ members }) => members);
  const small = rest.flatMap(({ members }) => members);
  if (small.length === 0) return told;
  if (told.length > 0 && restArea < least_mm2) told[0] = [...told[0], ...small];
  else told.push(small);
  return told.map((members) => members.sort((a, b) => a - b));
}

/** Unreached patches that are one place. */
export interface Group {
  readonly members: readonly number[];
  readonly area_mm2: number;
  /** The ball gets there, but its way is too long. */
  readonly far: boolean;
  /** The patch that stands for all: the farthest one, or the one whose largest ball gets to a tenth of the area. */
  readonly best: number;
}

export function groupOf(
  { area_mm2 }: Patches,
  { way, largest_mm }: Judged,
  members: readonly number[],
): Group {
  const far = way[members[0]] < Infinity;
  const area = members.reduce((sum, p) => sum + area_mm2[p], 0);
  const rank = far ? way : largest_mm;
  const ordered = [...members].sort((a, b) => rank[b] - rank[a] || a - b);
  let before = 0;
  const tenth = ordered.findIndex((p) => {
    before += area_mm2[p];
    return before >= area / 10;
  });
  return { members, area_mm2: area, far, best: ordered[far ? 0 : tenth] };
}
