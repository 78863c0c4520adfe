import type { Model, Vec3 } from '@coveline/model';
import type { NarrowGap } from '../result.ts';
import { boundsOf } from '../weld/polyline.ts';
import { reachOf } from './depth.ts';
import type { Eye } from './look.ts';
import type { WallPair } from './pair-walls.ts';

export interface FoundGap {
  readonly pair: WallPair;
  readonly place: Omit<NarrowGap, 'id'>;
  /** The depth would not gain from finer wall meshes. */
  readonly settled: boolean;
}

/** Sums up the walls of one gap. Numbers of both walls are halved, so that they tell of one. */
export function describeGap(model: Model, eye: Eye, pair: WallPair): FoundGap {
  const { walls, complete } = pair;
  const share = complete ? 0.5 : 1;
  let width_mm = Infinity;
  let widest_mm = 0;
  let area_mm2 = 0;
  let mouth_mm = 0;
  let depth_mm = Number.NEGATIVE_INFINITY;
  let settled = true;
  const parts = new Set<string>();
  for (const wall of walls) {
    area_mm2 += wall.area_mm2;
    parts.add(model.parts[wall.mesh.part].id);
    for (const v of wall.vertices) {
      width_mm = Math.min(width_mm, wall.views.width_mm[v]);
      widest_mm = Math.max(widest_mm, wall.views.width_mm[v]);
      parts.add(model.parts[wall.views.part[v]].id);
    }
    const reach = reachOf(eye, wall);
    mouth_mm += reach.mouth_mm;
    if (!Number.isFinite(reach.depth_mm) || reach.depth_mm <= depth_mm) continue;
    depth_mm = reach.depth_mm;
    settled = reach.atFloor;
  }
  const bounds_mm = boundsOf(walls.map((w) => w.outlineTriangles));
  const hasMouth = Number.isFinite(depth_mm);
  return {
    pair,
    settled,
    place: {
      parts: [...parts].sort(),
      at_mm: middleVertex(pair, bounds_mm),
      bounds_mm,
      width_mm,
      widest_mm,
      depth_mm: hasMouth
        ? depth_mm
        : Math.hypot(...[0, 1, 2].map((k) => bounds_mm[1][k] - bounds_mm[0][k])) / 2,
      mouth_mm: mouth_mm * share,
      area_cm2: (area_mm2 * share) / 100,
      ...(!hasMouth && {
        caveats: [
          'No mouth to open air was found: the gap is sealed or opens into another gap; its depth is half its extent.',
        ],
      }),
    },
  };
}

/** The point half-way across the gap from the wall vertex nearest to the middle of all. */
function middleVertex({ walls }: WallPair, [low, high]: readonly [Vec3, Vec3]): Vec3 {
  let best: Vec3 = [0, 0, 0];
  let least = Infinity;
  for (const { mesh, views, vertices } of walls) {
    for (const v of vertices) {
      let d = 0;
      for (let k = 0; k < 3; k++) d += (mesh.xyz[3 * v + k] - (low[k] + high[k]) / 2) ** 2;
      if (d >= least) continue;
      least = d;
      const half = views.width_mm[v] / 2;
      const at = (k: number) => mesh.xyz[3 * v + k] + half * mesh.normals[3 * v + k];
      best = [at(0), at(1), at(2)];
    }
  }
  return best;
}
