import type { Model } from '@coveline/model';
import type { Drawing, Joint } from '../result.ts';
import type { Sealed } from '../sealed.ts';
import { partNear } from '../tree/whereabouts.ts';
import { chainPieces } from '../weld/chain.ts';
import { membersOf, newGroups, unite } from '../weld/groups.ts';
import { boundsOf, middleOf } from '../weld/polyline.ts';
import { lengthOf } from './depth.ts';
import type { Eye } from './look.ts';
import type { Region, Segment } from './region.ts';
import { addSpot, newSpots, visitSpots } from './spots.ts';

export interface FoundJoint {
  readonly place: Omit<Joint, 'id'>;
  readonly drawing: Drawing;
}

/** Shorter joint lines than this are noise of the triangles. */
const leastLength_mm = 0.5;

/**
 * Joint lines from the regions where walls meet other parts: the borders of such a region beside which there is air.
 * Both parts see the same line; the longer of the two is taken, because a border across the middle of a wall cuts its
 * corners short and one along the wall's own edges does not.
 */
export function findJoints(
  model: Model,
  eye: Eye,
  contacts: readonly Region[],
  edge_mm: number,
  sealed: Sealed,
): FoundJoint[] {
  const borders = contacts.map((region) => region.segments.filter((s) => isOpen(eye, s, sealed)));
  const joints: FoundJoint[] = [];
  for (const members of joinRegions(contacts, borders, edge_mm)) {
    const { mesh, partner } = contacts[members[0]];
    const sides = [mesh.part, partner].map((part) => {
      const own = members.filter((r) => contacts[r].mesh.part === part);
      const segments = own.flatMap((r) => borders[r]);
      return {
        segments,
        length_mm: segments.reduce((sum, s) => sum + lengthOf(s), 0),
        area_mm2: own.reduce((sum, r) => sum + contacts[r].area_mm2, 0),
        touching_mm2: own.reduce((sum, r) => sum + contacts[r].touching_mm2, 0),
      };
    });
    const best = sides[0].length_mm >= sides[1].length_mm ? sides[0] : sides[1];
    if (best.length_mm < leastLength_mm) continue;
    const lines = chained(best.segments);
    const touching = Math.max(sides[0].touching_mm2, sides[1].touching_mm2);
    const overlap = touching < 0.5 * Math.max(sides[0].area_mm2, sides[1].area_mm2);
    joints.push({
      place: {
        parts: [model.parts[mesh.part].id, model.parts[partner].id].sort(),
        at_mm: middleOf(lines),
        bounds_mm: boundsOf(lines),
        length_mm: best.length_mm,
        area_cm2: touching / 100,
        ...(overlap && {
          caveats: ['The parts overlap in the model; the line is where their surfaces cross.'],
        }),
      },
      drawing: { lines: lines.map((l) => Float32Array.from(l)) },
    });
  }
  return joints;
}

/** Whether there is air, not sealed off, beside a border, on this or on the other side of the wall's own plane. */
function isOpen(
  { whereabouts, contact_mm }: Eye,
  { a, b, outward: u, normal: n }: Segment,
  sealed: Sealed,
): boolean {
  const d = 2.5 * contact_mm;
  const at = (side: number) => [0, 1, 2].map((k) => (a[k] + b[k]) / 2 + d * u[k] + side * d * n[k]);
  return [1, -1].some((side) => {
    const [x, y, z] = at(side);
    if (partNear(whereabouts, x, y, z) >= 0) return false;
    const [dx, dy, dz] = [0, 1, 2].map((k) => Math.SQRT1_2 * (u[k] + side * n[k]));
    return !sealed(x, y, z, dx, dy, dz);
  });
}

/** Regions of the same two parts whose borders run together. */
function joinRegions(
  contacts: readonly Region[],
  borders: readonly (readonly Segment[])[],
  edge_mm: number,
): number[][] {
  const spots = newSpots(1.5 * edge_mm);
  const owner: number[] = [];
  const groups = newGroups(contacts.length);
  for (const [r, { mesh, partner }] of contacts.entries()) {
    for (const { a, b } of borders[r]) {
      const [x, y, z] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];
      visitSpots(spots, x, y, z, (s) => {
        const other = contacts[owner[s]];
        const same = other.mesh.part === mesh.part && other.partner === partner;
        const across = other.mesh.part === partner && other.partner === mesh.part;
        if (same || across) unite(groups, r, owner[s]);
      });
      addSpot(spots, x, y, z);
      owner.push(r);
    }
  }
  return membersOf(groups);
}

/** Segments joined end to end, mm. */
function chained(segments: readonly Segment[]): Float64Array[] {
  const pieces = segments.map(({ a, b }) => ({ points: Float64Array.of(...a, ...b), angle_deg: 0 }));
  return chainPieces(pieces, 1e-3).map((order) => {
    const points: number[] = [];
    for (const [i, step] of order.entries()) {
      const p = pieces[step < 0 ? ~step : step].points;
      const [from, to] = step < 0 ? [3, 0] : [0, 3];
      if (i === 0) points.push(...p.subarray(from, from + 3));
      points.push(...p.subarray(to, to + 3));
    }
    return Float64Array.from(points);
  });
}
