/**
 * Judges the shells of a shape before they are used as material: closed, inverted, nearly closed, open.
 *
 * Vertices nearer than the contact distance are made one where that closes the surface: a crack of rounding noise is no
 * opening. A closed shell bounds material. A closed shell that is inside out is turned, unless it lies inside another shell
 * of the shape and so is the wall of a cavity. A shell with a few small holes is closed with caps. Any other shell
 * is a sheet: it stops liquid but has no inside.
 */
import type { Shape } from '@coveline/model';
import { boundaryCaps } from './caps.ts';
import { edgeUse } from './edge-use.ts';
import { orientShells } from './orient-shells.ts';
import { type Shells, shellsOf, windingAround } from './shells.ts';
import { weldNear } from './weld-near.ts';

export interface SoundShape {
  /** Three vertex indices per triangle: those of the shape, in order, turned where needed, then caps. */
  readonly triangles: Uint32Array;
  /** Per triangle: 1 where it belongs to a sheet. */
  readonly sheet: Uint8Array;
  readonly inverted: number;
  readonly reoriented: number;
  /** 1 where cracks narrower than the contact distance were closed. */
  readonly zipped: number;
  readonly capped: number;
  readonly sheets: number;
}

/** Caps may make up this part of a shell's area; a larger opening is meant to be open. */
const capShare = 0.01;

export function soundShape({ positions, triangles: source }: Shape): SoundShape {
  const triangles = Uint32Array.from(source);
  let uses = edgeUse(triangles);
  let welded: Uint32Array = triangles;
  if (uses.unbalanced > 0) {
    welded = weldEqual(positions, triangles);
    uses = edgeUse(welded);
  }
  let zipped = 0;
  if (uses.unbalanced > 0) {
    const near = weldNear(positions, welded);
    const nearUses = edgeUse(near);
    if (nearUses.unbalanced === 0) {
      welded = near;
      uses = nearUses;
      zipped = 1;
    }
  }
  let shells = shellsOf(positions, welded, uses);
  let reoriented = 0;
  if (shells.open.includes(1)) {
    reoriented = orientShells(welded, uses, shells);
    if (reoriented > 0) {
      uses = edgeUse(welded);
      shells = shellsOf(positions, welded, uses);
    }
  }
  const caps = shells.open.includes(1) ? boundaryCaps(positions, welded, uses, shells, capShare) : noCaps;
  const sheetShell = shells.open.map((open, s) =>
    (open && !caps.closed[s]) || shells.volume[s] === 0 ? 1 : 0,
  );
  const flip = invertedShells(positions, welded, shells, sheetShell);

  const count = welded.length / 3;
  const all = new Uint32Array(welded.length + caps.triangles.length);
  all.set(welded);
  all.set(caps.triangles, welded.length);
  const sheet = new Uint8Array(all.length / 3);
  for (let t = 0; t < all.length / 3; t++) {
    const shell = t < count ? shells.ofTriangle[t] : caps.shell[t - count];
    sheet[t] = sheetShell[shell];
    if (flip[shell]) {
      const second = all[t * 3 + 1];
      all[t * 3 + 1] = all[t * 3 + 2];
      all[t * 3 + 2] = second;
    }
  }
  return {
    triangles: all,
    sheet,
    inverted: sum(flip),
    reoriented,
    zipped,
    capped: sum(caps.closed),
    sheets: sum(sheetShell),
  };
}

const noCaps = { triangles: new Uint32Array(0), shell: new Uint32Array(0), closed: new Uint8Array(0) };

function invertedShells(
  positions: Float64Array,
  triangles: Uint32Array,
  shells: Shells,
  sheetShell: Uint8Array,
): Uint8Array {
  return shells.volume.reduce((flip, volume, s) => {
    if (volume < 0 && !sheetShell[s] && windingAround(positions, triangles, shells, s) <= 0) flip[s] = 1;
    return flip;
  }, new Uint8Array(shells.volume.length));
}

/** The same triangles with vertices of exactly equal coordinates made one. */
function weldEqual(positions: Float64Array, triangles: Uint32Array): Uint32Array {
  const count = positions.length / 3;
  const bits = new Uint32Array(positions.buffer, positions.byteOffset, positions.length * 2);
  let size = 16;
  while (size < count * 2) size *= 2;
  const slots = new Int32Array(size).fill(-1);
  const same = new Uint32Array(count);
  for (let v = 0; v < count; v++) {
    let hash = 0x811c9dc5;
    for (let k = 0; k < 6; k++) {
      // -0 and 0 are the same place: drop the sign where nothing else is set.
      const word = positions[v * 3 + (k >> 1)] === 0 ? 0 : bits[v * 6 + k];
      hash = Math.imul(hash ^ word, 0x01000193);
      hash ^= hash >>> 15;
    }
    let slot = (hash >>> 0) & (size - 1);
    for (;;) {
      const w = slots[slot];
      if (w < 0) {
        slots[slot] = v;
        same[v] = v;
        break;
      }
      if (
        positions[w * 3] === positions[v * 3] &&
        positions[w * 3 + 1] === positions[v * 3 + 1] &&
        positions[w * 3 + 2] === positions[v * 3 + 2]
      ) {
        same[v] = w;
        break;
      }
      slot = (slot + 1) & (size - 1);
    }
  }
  return triangles.map((v) => same[v]);
}

function sum(flags: Uint8Array): number {
  let n = 0;
  for (const f of flags) n += f;
  return n;
}
