import { type Mesh, meshOf, type Point } from './mesh.ts';

/**
 * Solid of revolution about z from a closed profile of [radius, height] in order around the material, counter-clockwise
 * in the (radius, height) plane. Points on the axis become one vertex.
 */
export function revolve(profile: readonly (readonly [number, number])[], segments: number): Mesh {
  const points: Point[] = [];
  const rings = profile.map(([r, z]) => {
    const start = points.length;
    if (r === 0) {
      points.push([0, 0, z]);
      return Array.from({ length: segments }, () => start);
    }
    for (let s = 0; s < segments; s++) {
      const angle = (2 * Math.PI * s) / segments;
      points.push([r * Math.cos(angle), r * Math.sin(angle), z]);
    }
    return Array.from({ length: segments }, (_, s) => start + s);
  });
  const triangles: number[][] = [];
  for (let k = 0; k < rings.length; k++) {
    const a = rings[k];
    const b = rings[(k + 1) % rings.length];
    for (let s = 0; s < segments; s++) {
      const t = (s + 1) % segments;
      if (a[s] !== a[t]) triangles.push([a[s], a[t], b[t]]);
      if (b[s] !== b[t]) triangles.push([a[s], b[t], b[s]]);
    }
  }
  return meshOf(points, triangles);
}

/**
 * Area of the regular polygon in the circle, as a share of the circle: a revolved volume made of `segments` flat
 * facets with its vertices on the true surface is exactly this share of the round one.
 */
export function polygonShare(segments: number): number {
  return (segments / (2 * Math.PI)) * Math.sin((2 * Math.PI) / segments);
}

/** Points of an arc about a centre on the plane of the profile, degrees from +r, both ends included. */
export function arc(
  [cr, cz]: readonly [number, number],
  radius: number,
  from: number,
  to: number,
  steps: number,
): [number, number][] {
  return Array.from({ length: steps + 1 }, (_, k) => {
    const a = ((from + ((to - from) * k) / steps) * Math.PI) / 180;
    const r = cr + radius * Math.cos(a);
    return [Math.abs(r) < 1e-12 * radius ? 0 : r, cz + radius * Math.sin(a)];
  });
}
