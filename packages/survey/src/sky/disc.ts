import type { Vec3 } from '@coveline/model';
import { type Division, divide } from '../patchwork/divide.ts';
import { Pieces } from '../patchwork/pieces.ts';
import type { Mouth } from '../site.ts';
import { across, plus, unit } from './vector.ts';

/** Sides of the polygon that stands for a circle; it has the circle's area, and runs within 0.1 % of its radius. */
const sides = 64;
const outer = Math.sqrt((2 * Math.PI) / (sides * Math.sin((2 * Math.PI) / sides)));
/** Triangles that are asked as a whole, as a share of the radius: about 2 000 rays a mouth. */
const size = 1 / 12;

/** Points of the circle around the mouth, and its first point again at the end, mm. */
export function circle({ at_mm, outward }: Mouth, radius_mm: number): readonly Vec3[] {
  const [u, v] = across(unit(outward));
  return Array.from({ length: sides + 1 }, (_, i) => {
    // Turned a little, so that no corner lies on an axis.
    const a = (2 * Math.PI * ((i % sides) + 0.3)) / sides;
    return plus(plus(at_mm, u, radius_mm * outer * Math.cos(a)), v, radius_mm * outer * Math.sin(a));
  });
}

/** What a disc or a ring consists of, by kind. */
export interface Shares {
  /** Share of each kind that occurs; together 1. */
  readonly of: ReadonlyMap<number, number>;
  /** Free triangles of a kind, xyz per corner, mm. */
  readonly triangles: (kinds: (kind: number) => boolean) => Float32Array;
}

/** Divides the mouth, or the ring of the given width around it, by what a ray from each of its points meets. */
export function divideMouth(
  mouth: Mouth,
  ring_mm: number | null,
  question: Pick<Division, 'kind' | 'middle'> & { readonly take?: Division['take'] },
): Shares {
  const pieces = new Pieces();
  const areas = new Map<number, number>();
  let whole = 0;
  const division: Division = {
    ...question,
    pieces,
    gatherFrom: 0,
    size_mm: size * mouth.radius_mm,
    take: (kind, area, x, y, z) => {
      areas.set(kind, (areas.get(kind) ?? 0) + area);
      whole += area;
      question.take?.(kind, area, x, y, z);
    },
  };
  const inner = circle(mouth, mouth.radius_mm);
  const rim = ring_mm === null ? inner : circle(mouth, mouth.radius_mm + ring_mm);
  for (let i = 0; i < sides; i++) {
    if (ring_mm === null) divide(Float64Array.of(...mouth.at_mm, ...rim[i], ...rim[i + 1]), 0, division);
    else {
      divide(Float64Array.of(...inner[i], ...rim[i], ...rim[i + 1]), 0, division);
      divide(Float64Array.of(...inner[i], ...rim[i + 1], ...inner[i + 1]), 0, division);
    }
  }
  return {
    of: new Map([...areas].map(([kind, area]) => [kind, area / whole])),
    triangles: (kinds) => {
      const out: number[] = [];
      for (let n = 0; n < pieces.count; n++) {
        if (!kinds(pieces.kind[n])) continue;
        for (let k = 0; k < 9; k++) out.push(pieces.corners[n * 9 + k]);
      }
      return Float32Array.from(out);
    },
  };
}

/** Corners of the box around some points, mm. */
export function boxAround(points: Iterable<Vec3>): readonly [Vec3, Vec3] {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const p of points) {
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k], p[k]);
      high[k] = Math.max(high[k], p[k]);
    }
  }
  return [low, high];
}

/** Why a mouth cannot be looked at; null when it can. */
export function mouthFault({ at_mm, outward, radius_mm }: Mouth): string | null {
  if (!at_mm.every(Number.isFinite)) return 'its position is no number';
  if (!(Math.hypot(...outward) > 0)) return 'its direction has no length';
  if (!(radius_mm > 0) || !Number.isFinite(radius_mm)) return `its radius of ${radius_mm} mm is not above 0`;
  return null;
}
