import type { Model, Vec3 } from '@coveline/model';
import type { NarrowGap } from '../result.ts';
import type { WallPair } from './pair-walls.ts';
import type { Wall } from './walls.ts';

/** Sums up the walls of one gap. Numbers of both walls are halved, so that they tell of one. */
export function describeGap(model: Model, { walls, complete }: WallPair): Omit<NarrowGap, 'id'> {
  const share = complete ? 0.5 : 1;
  let width_mm = Infinity;
  let widest_mm = 0;
  let area_mm2 = 0;
  let mouth_mm = 0;
  let depth_mm = Number.NEGATIVE_INFINITY;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  const parts = new Set<string>();
  for (const wall of walls) {
    for (const part of [wall.part, ...wall.facing]) parts.add(model.parts[part].id);
    width_mm = Math.min(width_mm, wall.width_mm);
    widest_mm = Math.max(widest_mm, wall.widest_mm);
    area_mm2 += wall.area_mm2;
    mouth_mm += wall.mouth_mm;
    if (Number.isFinite(wall.depth_mm)) depth_mm = Math.max(depth_mm, wall.depth_mm);
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k], wall.bounds_mm[0][k]);
      high[k] = Math.max(high[k], wall.bounds_mm[1][k]);
    }
  }
  const bounds_mm: readonly [Vec3, Vec3] = [
    [low[0], low[1], low[2]],
    [high[0], high[1], high[2]],
  ];
  const hasMouth = Number.isFinite(depth_mm);
  return {
    parts: [...parts].sort(),
    at_mm: middleOf(walls, bounds_mm),
    bounds_mm,
    width_mm,
    widest_mm,
    depth_mm: hasMouth ? depth_mm : Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) / 2,
    mouth_mm: mouth_mm * share,
    area_cm2: (area_mm2 * share) / 100,
    ...(!hasMouth && {
      caveats: [
        'No mouth to open air was found: the gap is sealed or opens into another gap; its depth is half its extent.',
      ],
    }),
  };
}

/** The point half-way across the gap that is nearest to the middle of all. */
function middleOf(walls: readonly Wall[], [low, high]: readonly [Vec3, Vec3]): Vec3 {
  let best: Vec3 = [0, 0, 0];
  let least = Infinity;
  for (const { middles } of walls) {
    for (let i = 0; i < middles.length; i += 3) {
      let d = 0;
      for (let k = 0; k < 3; k++) d += (middles[i + k] - (low[k] + high[k]) / 2) ** 2;
      if (d >= least) continue;
      least = d;
      best = [middles[i], middles[i + 1], middles[i + 2]];
    }
  }
  return best;
}
