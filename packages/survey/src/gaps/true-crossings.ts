import type { Sealed } from '../sealed.ts';
import { partNear } from '../tree/whereabouts.ts';
import type { Facing } from './facing.ts';
import { type Eye, look, newSight, open } from './look.ts';

/** A straight piece of the line at which two parts run into each other. */
export interface CrossingLine {
  readonly part: number;
  readonly partner: number;
  readonly a: readonly [number, number, number];
  readonly b: readonly [number, number, number];
}

/** Looks beside a line go this many contact distances off. */
const beside = 2.5;
const sight = newSight();

/**
 * The crossings beside which there is air, without those where the surfaces only touch: coarse triangles of a shaft
 * cross those of its bore, and a block that is sunk by less than the contact distance stands on its plate.
 */
export function trueCrossings(
  eye: Eye,
  { crossings: { ends, triangles }, surface: { normals, partOf }, candidate }: Facing,
  sealed: Sealed,
  step: () => void,
): CrossingLine[] {
  const d = beside * eye.contact_mm;
  const lines: CrossingLine[] = [];
  for (let i = 0; 2 * i < triangles.length; i++) {
    if (i % 1024 === 0) step();
    const [p, q] = [triangles[2 * i], triangles[2 * i + 1]];
    const e = 6 * i;
    const x = (ends[e] + ends[e + 3]) / 2;
    const y = (ends[e + 1] + ends[e + 4]) / 2;
    const z = (ends[e + 2] + ends[e + 5]) / 2;
    let [ux, uy, uz] = [0, 1, 2].map((k) => normals[3 * p + k] + normals[3 * q + k]);
    const length = Math.hypot(ux, uy, uz);
    if (length < 1e-6) continue;
    [ux, uy, uz] = [ux / length, uy / length, uz / length];
    if (partNear(eye.whereabouts, x + d * ux, y + d * uy, z + d * uz) >= 0) continue;
    if (sealed(x + d * ux, y + d * uy, z + d * uz, ux, uy, uz)) continue;
    // Where nothing faces a triangle it touches nothing.
    if (candidate[p] === 1 && facesBeyond(eye, normals, partOf, p, q, x, y, z)) continue;
    if (candidate[q] === 1 && facesBeyond(eye, normals, partOf, q, p, x, y, z)) continue;
    lines.push({
      part: partOf[p],
      partner: partOf[q],
      a: [ends[e], ends[e + 1], ends[e + 2]],
      b: [ends[e + 3], ends[e + 4], ends[e + 5]],
    });
  }
  return lines;
}

/** Whether, from the first triangle on the side where it should be buried, the other part is seen across air or touching. */
function facesBeyond(
  eye: Eye,
  normals: Float64Array,
  partOf: Uint32Array,
  from: number,
  into: number,
  x: number,
  y: number,
  z: number,
): boolean {
  const n = normals.subarray(3 * from, 3 * from + 3);
  const m = normals.subarray(3 * into, 3 * into + 3);
  const dot = n[0] * m[0] + n[1] * m[1] + n[2] * m[2];
  const length = Math.sqrt(Math.max(0, 1 - dot * dot)) || 1;
  const d = (beside * eye.contact_mm) / length;
  // Along the first triangle, against the normal of the other one.
  const at = (c: number, k: number) => c + d * (dot * n[k] - m[k]);
  look(eye, partOf[from], from, at(x, 0), at(y, 1), at(z, 2), n[0], n[1], n[2], sight);
  return sight.state !== open && sight.part === partOf[into];
}
