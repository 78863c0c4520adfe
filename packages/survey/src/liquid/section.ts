import type { Soup } from './soup.ts';

/**
 * Section of a triangle with the vertical plane `coordinate[axis] = at` (axis 0: u, 1: v), written to `out` as
 * start along, start z, end along, end z; along is the other horizontal coordinate. Going from start to end along
 * +u in a plane of constant v, the material lies below. Returns false where the plane misses the triangle.
 *
 * The crossing of an edge is computed from its lower to its higher end, so that the two triangles at the edge get
 * the same number to the last bit: the section of a closed surface is a closed curve.
 */
export function section(soup: Soup, triangle: number, axis: 0 | 1, at: number, out: Float64Array): boolean {
  const { uvz, triangles } = soup;
  const t = triangle * 3;
  const a = triangles[t] * 3;
  const b = triangles[t + 1] * 3;
  const c = triangles[t + 2] * 3;
  const aUp = uvz[a + axis] >= at;
  const bUp = uvz[b + axis] >= at;
  const cUp = uvz[c + axis] >= at;
  if (aUp === bUp && bUp === cUp) return false;
  // p stands alone on its side; q, r follow it in the triangle's own order.
  let p = a;
  let q = b;
  let r = c;
  let alone = aUp;
  if (aUp === cUp) {
    p = b;
    q = c;
    r = a;
    alone = bUp;
  } else if (aUp === bUp) {
    p = c;
    q = a;
    r = b;
    alone = cUp;
  }
  const along = 1 - axis;
  if (alone) {
    cross(uvz, q, p, axis, along, at, out, 0);
    cross(uvz, r, p, axis, along, at, out, 2);
  } else {
    cross(uvz, p, r, axis, along, at, out, 0);
    cross(uvz, p, q, axis, along, at, out, 2);
  }
  return true;
}

function cross(
  uvz: Float64Array,
  below: number,
  above: number,
  axis: number,
  along: number,
  at: number,
  out: Float64Array,
  slot: number,
): void {
  const s = (at - uvz[below + axis]) / (uvz[above + axis] - uvz[below + axis]);
  out[slot] = uvz[below + along] + s * (uvz[above + along] - uvz[below + along]);
  out[slot + 1] = uvz[below + 2] + s * (uvz[above + 2] - uvz[below + 2]);
}
