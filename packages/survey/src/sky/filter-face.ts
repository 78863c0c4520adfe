import type { Vec3 } from '@coveline/model';
import type { FilterFace } from '../site.ts';
import { cross, dot, minus, plus, unit } from './vector.ts';

/**
 * How far along a ray the face of a filter lies, as a multiple of the direction; null when the ray misses the
 * rectangle or runs away from it. `slack` widens the rectangle, as a share of its half sides, against rounding.
 */
export function landsOn(filter: FilterFace, from: Vec3, direction: Vec3, slack = 1e-9): number | null {
  const { at_mm, across_mm, along_mm } = filter;
  const normal = cross(across_mm, along_mm);
  const speed = dot(normal, direction);
  if (speed === 0) return null;
  const t = dot(normal, minus(at_mm, from)) / speed;
  if (!(t > 0)) return null;
  const on = minus(plus(from, direction, t), at_mm);
  // Weights of the two half sides, which need not stand square.
  const square = dot(normal, normal);
  const a = dot(cross(on, along_mm), normal) / square;
  const b = dot(cross(across_mm, on), normal) / square;
  return Math.abs(a) <= 1 + slack && Math.abs(b) <= 1 + slack ? t : null;
}

/** Why a filter face cannot be used; null when it can. */
export function filterFault({ at_mm, flow, across_mm, along_mm }: FilterFace): string | null {
  if (!at_mm.every(Number.isFinite)) return 'its position is no number';
  if (!(Math.hypot(...flow) > 0)) return 'its flow has no direction';
  const normal = cross(across_mm, along_mm);
  if (!(Math.hypot(...normal) > 0)) return 'its rectangle has no area';
  if (Math.abs(dot(unit(normal), unit(flow))) < flattest) return 'its air flows along its face';
  return null;
}

const flattest = Math.sin(Math.PI / 180);
/** Faces whose flow differs by less than this blow side by side. */
const alike = Math.cos(Math.PI / 180);

/** Faces that blow the same way: one stream from several panels. */
export interface Stream {
  /** Unit vector against the flow. */
  readonly upstream: Vec3;
  readonly faces: readonly FilterFace[];
}

export function streamsOf(filters: readonly FilterFace[]): readonly Stream[] {
  const streams: { upstream: Vec3; faces: FilterFace[] }[] = [];
  for (const filter of filters) {
    const [x, y, z] = unit(filter.flow);
    const upstream: Vec3 = [-x, -y, -z];
    const same = streams.find((s) => dot(s.upstream, upstream) > alike);
    if (same) same.faces.push(filter);
    else streams.push({ upstream, faces: [filter] });
  }
  return streams;
}
