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
  for (let p = 0; p < patches.count; p++) if (way[p] > length_mm) listed.push(p);
  const inCell = new Map<number, number[]>();
  for (const p of listed) {
    const others = inCell.get(cell[p]);
    if (others) others.push(p);
    else inCell.set(cell[p], [p]);
  }
  const leader = new Map(listed.map((p) => [p, p]));
  const lead = (p: number): number => {
    let at = p;
    for (let up = leader.get(at)!; up !== at; up = leader.get(at)!) {
      leader.set(at, leader.get(up)!);
      at = up;
    }
    return at;
  };
  const throatOf = (p: number): number => (centre[p] < 0 ? -1 : widest.throat[centre[p]]);
  const shareAir = (a: number, b: number): boolean => {
    if (throatOf(a) >= 0 && throatOf(a) === throatOf(b)) return true;
    const lift = off * lattice.pitch;
    const from = [0, 1, 2].map((k) => points[a * 3 + k] + lift * normals[a * 3 + k] + lattice.corner[k]);
    const to = [0, 1, 2].map((k) => points[b * 3 + k] + lift * normals[b * 3 + k] + lattice.corner[k]);
    const [x, y, z] = to.map((c, k) => c - from[k]);
    return !anyHit(space.tree, from[0], from[1], from[2], x, y, z, 1);
  };
  for (let n = 0; n < listed.length; n++) {
    if (n % 1024 === 0) step(control, 'reach', 0.96);
    const a = listed[n];
    around(lattice, cell[a], (c) => {
      for (const b of inCell.get(c) ?? []) {
        if (b <= a || (way[a] === Infinity) !== (way[b] === Infinity) || lead(a) === lead(b)) continue;
        let dot = 0;
        for (let k = 0; k < 3; k++) dot += normals[a * 3 + k] * normals[b * 3 + k];
        if (dot < opposed || !shareAir(a, b)) continue;
        const [low, high] = lead(a) < lead(b) ? [lead(a), lead(b)] : [lead(b), lead(a)];
        leader.set(high, low);
      }
    });
  }
  const groups = new Map<number, number[]>();
  for (const p of listed) {
    const members = groups.get(lead(p));
    if (members) members.push(p);
    else groups.set(lead(p), [p]);
  }
  return [...groups.values()];
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
