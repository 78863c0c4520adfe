/** Which part carries a pool: the one with the most upward surface under the liquid. */
import type { Model } from '@coveline/model';
import { placedPositions } from '@coveline/model';
import type { Pool } from '@coveline/survey';

/** Area of each part's upward faces in the box of the pool, mm2 seen from above, largest first, then by index. */
export function carriers(
  model: Model,
  pool: Pool,
  indexOf: ReadonlyMap<string, number>,
): readonly { readonly part: number; readonly area_mm2: number }[] {
  const parts = pool.parts.map((id) => indexOf.get(id)).filter((p) => p !== undefined);
  if (parts.length === 1) return [{ part: parts[0], area_mm2: pool.area_cm2 * 100 }];
  return parts
    .map((part) => ({ part, area_mm2: upwardArea(model, part, pool) }))
    .sort((a, b) => b.area_mm2 - a.area_mm2 || a.part - b.part);
}

/** A triangle counts with the share of its box that lies in the box of the pool, so that large triangles count too. */
function upwardArea(model: Model, part: number, { bounds_mm: [low, high] }: Pool): number {
  const xyz = placedPositions(model, part);
  const { triangles } = model.shapes[model.parts[part].shape];
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] * 3, triangles[t + 1] * 3, triangles[t + 2] * 3];
    const seen =
      ((xyz[b] - xyz[a]) * (xyz[c + 1] - xyz[a + 1]) - (xyz[c] - xyz[a]) * (xyz[b + 1] - xyz[a + 1])) / 2;
    if (seen <= 0) continue;
    let share = 1;
    for (let i = 0; i < 3 && share > 0; i++) {
      const from = Math.min(xyz[a + i], xyz[b + i], xyz[c + i]);
      const to = Math.max(xyz[a + i], xyz[b + i], xyz[c + i]);
      const inside = Math.min(to, high[i] + 0.5) - Math.max(from, low[i] - 0.5);
      share *= inside < 0 ? 0 : to - from < 1e-9 ? 1 : Math.min(1, inside / (to - from));
    }
    sum += seen * share;
  }
  return sum;
}
