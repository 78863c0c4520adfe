/** What stands straight above an open mouth. */
import type { Model, Vec3 } from '@coveline/model';
import { placedPositions } from '@coveline/model';
import { type Extent, extentOf, middle } from './extent.ts';

/** The open top of a container, taken as an ellipse. */
export interface Mouth {
  /** Index of the part that it belongs to. */
  readonly part: number;
  /** Middle of the mouth, mm. */
  readonly at_mm: Vec3;
  /** Half widths, mm. */
  readonly half_mm: readonly [number, number];
}

/** Points of the rim lie within this of the top, mm. */
const rim_mm = 0.5;

/**
 * The mouth of a container that stands upright: the inner edge of its rim, told from the vertices at its top. Round
 * and rectangular rims come out with their true half widths, as long as they are centred on the rim.
 */
export function mouthOf(model: Model, part: number): Mouth {
  const xyz = placedPositions(model, part);
  const { high } = extentOf(xyz);
  const rim: number[] = [];
  for (let i = 0; i < xyz.length; i += 3)
    if (xyz[i + 2] >= high[2] - rim_mm) rim.push(xyz[i], xyz[i + 1], xyz[i + 2]);
  const top = extentOf(Float64Array.from(rim));
  const [x, y] = middle(top);
  const outer = [0, 1].map((i) => (top.high[i] - top.low[i]) / 2);
  let least = Infinity;
  let most = 0;
  for (let i = 0; i < rim.length; i += 3) {
    const r = Math.hypot((rim[i] - x) / outer[0], (rim[i + 1] - y) / outer[1]);
    if (r < least) least = r;
    if (r > most) most = r;
  }
  // A rim of one point or one edge has no width; then the mouth is as wide as the container.
  const share = least > 0.2 * most && most > 0 ? least / most : 1;
  return { part, at_mm: [x, y, high[2]], half_mm: [outer[0] * share, outer[1] * share] };
}

export interface Hanging {
  /** Index of the part that hangs above. */
  readonly part: number;
  /** Share of the mouth with this part straight above it, 0 to 1. */
  readonly share: number;
  /** Least height above the mouth, mm. */
  readonly height_mm: number;
}

/** Points that sample a mouth; 1600 give the share to about one percent. */
const sampleCount = 1600;
/** What lies flush on the rim belongs to the mouth: lids, seals. */
const onRim_mm = 1;

/**
 * Parts that stand straight above a mouth, up to `reach_mm`, lowest first. `ignore` are indices of parts that may be
 * there. Rays go up from points spread over the ellipse of the mouth.
 */
export function hangingOver(
  model: Model,
  extents: readonly Extent[],
  mouth: Mouth,
  reach_mm: number,
  ignore: (part: number) => boolean,
): readonly Hanging[] {
  const points = samples(mouth);
  const out: Hanging[] = [];
  for (let p = 0; p < model.parts.length; p++) {
    if (p === mouth.part || ignore(p) || !mayHang(extents[p], mouth, reach_mm)) continue;
    const heights = heightsAbove(model, p, mouth, points);
    let hit = 0;
    let least = Infinity;
    for (const h of heights) {
      if (h > reach_mm) continue;
      hit++;
      if (h < least) least = h;
    }
    if (hit > 0) out.push({ part: p, share: hit / heights.length, height_mm: least });
  }
  return out.sort((a, b) => a.height_mm - b.height_mm || a.part - b.part);
}

function mayHang({ low, high }: Extent, { at_mm, half_mm }: Mouth, reach_mm: number): boolean {
  return (
    high[2] > at_mm[2] + onRim_mm &&
    low[2] < at_mm[2] + reach_mm &&
    [0, 1].every((i) => low[i] < at_mm[i] + half_mm[i] && high[i] > at_mm[i] - half_mm[i])
  );
}

/** xy per point, evenly over the ellipse: a spiral by the golden angle, which no straight edge runs along. */
function samples({ at_mm, half_mm }: Mouth): Float64Array {
  const golden = Math.PI * (3 - Math.sqrt(5));
  const out = new Float64Array(2 * sampleCount);
  for (let i = 0; i < sampleCount; i++) {
    const r = Math.sqrt((i + 0.5) / sampleCount);
    out[2 * i] = at_mm[0] + r * Math.cos(i * golden) * half_mm[0];
    out[2 * i + 1] = at_mm[1] + r * Math.sin(i * golden) * half_mm[1];
  }
  return out;
}

/** Per point the height of the lowest surface of a part above the mouth, mm; Infinity where there is none. */
function heightsAbove(model: Model, part: number, { at_mm }: Mouth, points: Float64Array): Float64Array {
  const xyz = placedPositions(model, part);
  const { triangles } = model.shapes[model.parts[part].shape];
  const floor = at_mm[2] + onRim_mm;
  const out = new Float64Array(points.length / 2).fill(Infinity);
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    if (xyz[a + 2] < floor && xyz[b + 2] < floor && xyz[c + 2] < floor) continue;
    const abx = xyz[b] - xyz[a];
    const aby = xyz[b + 1] - xyz[a + 1];
    const acx = xyz[c] - xyz[a];
    const acy = xyz[c + 1] - xyz[a + 1];
    const area = abx * acy - acx * aby;
    if (area === 0) continue;
    for (let i = 0; i < out.length; i++) {
      const px = points[2 * i] - xyz[a];
      const py = points[2 * i + 1] - xyz[a + 1];
      const v = (px * acy - acx * py) / area;
      const w = (abx * py - px * aby) / area;
      if (v < 0 || w < 0 || v + w > 1) continue;
      const z = xyz[a + 2] + v * (xyz[b + 2] - xyz[a + 2]) + w * (xyz[c + 2] - xyz[a + 2]);
      const height = z - at_mm[2];
      if (height >= onRim_mm && height < out[i]) out[i] = height;
    }
  }
  return out;
}
