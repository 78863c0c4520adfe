import type { Weld } from './weld.ts';

/** Connected pieces of a surface, numbered by their first triangle. */
export interface Shells {
  readonly shellOf: Uint32Array;
  /** Enclosed volume per shell, mm3: negative for a cavity, whose normals point into the sealed air. */
  readonly volumes: readonly number[];
}

/** Finds the pieces that hang together over edges. */
export function shellsOf(weld: Weld): Shells {
  const { triangles, twin, positions } = weld;
  const n = triangles.length / 3;
  const none = 0xffffffff;
  const shellOf = new Uint32Array(n).fill(none);
  const volumes: number[] = [];
  const stack = new Uint32Array(n);
  for (let seed = 0; seed < n; seed++) {
    if (shellOf[seed] !== none) continue;
    const shell = volumes.length;
    let volume = 0;
    let top = 0;
    stack[top++] = seed;
    shellOf[seed] = shell;
    while (top > 0) {
      const t = stack[--top];
      volume += signedVolume(positions, triangles, t);
      for (let h = 3 * t; h < 3 * t + 3; h++) {
        if (twin[h] < 0) continue;
        const other = (twin[h] / 3) | 0;
        if (shellOf[other] !== none) continue;
        shellOf[other] = shell;
        stack[top++] = other;
      }
    }
    volumes.push(volume);
  }
  return { shellOf, volumes };
}

/** Of the tetrahedron between a triangle and the origin, mm3. */
function signedVolume(p: Float64Array, triangles: Uint32Array, t: number): number {
  const a = triangles[t * 3] * 3;
  const b = triangles[t * 3 + 1] * 3;
  const c = triangles[t * 3 + 2] * 3;
  const x = p[b + 1] * p[c + 2] - p[b + 2] * p[c + 1];
  const y = p[b + 2] * p[c] - p[b] * p[c + 2];
  const z = p[b] * p[c + 1] - p[b + 1] * p[c];
  return (p[a] * x + p[a + 1] * y + p[a + 2] * z) / 6;
}

/**
 * Per triangle: 1 on the walls of a cavity inside the material, whose air is sealed off. A surface that is inside out
 * as a whole is not taken for a cavity, and one with an open border seals nothing.
 */
export function cavityTriangles(weld: Weld): Uint8Array {
  const out = new Uint8Array(weld.triangles.length / 3);
  if (!weld.closed) return out;
  const { shellOf, volumes } = shellsOf(weld);
  const whole = volumes.reduce((sum, v) => sum + v, 0);
  if (whole <= 0) return out;
  for (let t = 0; t < out.length; t++) out[t] = volumes[shellOf[t]] < 0 ? 1 : 0;
  return out;
}
