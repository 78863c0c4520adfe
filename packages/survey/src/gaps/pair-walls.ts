import { membersOf, newGroups, unite } from '../weld/groups.ts';
import { markNew, newMarks } from './marks.ts';
import type { Region } from './region.ts';
import { addSpot, newSpots, visitSpots } from './spots.ts';

/** Walls that belong to one gap. */
export interface WallPair {
  readonly walls: readonly Region[];
  /** Every wall has its opposite among the walls, or faces itself. */
  readonly complete: boolean;
}

/** From each wall this many points look for the wall across. */
const mostLooks = 48;

/** Puts walls together that face each other. `edge_mm`: edge length of the wall meshes. */
export function pairWalls(walls: readonly Region[], edge_mm: number): WallPair[] {
  const spots = newSpots(2 * edge_mm);
  const owner: number[] = [];
  const normals: number[] = [];
  for (const [r, { mesh }] of walls.entries()) {
    for (const v of thinned(walls[r], 0.5 * edge_mm)) {
      addSpot(spots, mesh.xyz[3 * v], mesh.xyz[3 * v + 1], mesh.xyz[3 * v + 2]);
      owner.push(r);
      for (let k = 0; k < 3; k++) normals.push(mesh.normals[3 * v + k]);
    }
  }
  const groups = newGroups(walls.length);
  const answered = new Uint8Array(walls.length);
  for (const [r, { mesh, views, vertices }] of walls.entries()) {
    const stride = Math.max(1, Math.floor(vertices.length / mostLooks));
    for (let i = 0; i < vertices.length; i += stride) {
      const v = vertices[i];
      const n = mesh.normals.subarray(3 * v, 3 * v + 3);
      const q = [0, 1, 2].map((k) => mesh.xyz[3 * v + k] + n[k] * views.width_mm[v]);
      let best = -1;
      let least = Infinity;
      visitSpots(spots, q[0], q[1], q[2], (s, d) => {
        if (d >= least || walls[owner[s]].mesh.part !== views.part[v]) return;
        // Not the back of a thin sheet.
        const dot = n[0] * normals[3 * s] + n[1] * normals[3 * s + 1] + n[2] * normals[3 * s + 2];
        if (dot > -0.3) return;
        best = owner[s];
        least = d;
      });
      if (best < 0) continue;
      answered[r] = 1;
      answered[best] = 1;
      unite(groups, r, best);
    }
  }
  return membersOf(groups).map((members) => ({
    walls: members.map((r) => walls[r]),
    complete: members.every((r) => answered[r] === 1),
  }));
}

/** Vertices of a wall, one for each cell of a grid that holds any. */
function thinned({ mesh: { xyz }, vertices }: Region, cell_mm: number): number[] {
  const seen = newMarks(cell_mm);
  return vertices.filter((v) => markNew(seen, xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]));
}
