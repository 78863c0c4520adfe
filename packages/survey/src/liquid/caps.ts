import type { EdgeUse } from './edge-use.ts';
import type { Shells } from './shells.ts';

export interface Caps {
  /** Three vertex indices per triangle. */
  readonly triangles: Uint32Array;
  /** Shell of each cap triangle. */
  readonly shell: Uint32Array;
  /** Per shell: 1 where the caps close it. */
  readonly closed: Uint8Array;
}

/**
 * Fans over the holes of open shells. A shell is closed only when its border consists of simple loops and the caps
 * stay below `share` of its area: cracks and lost triangles, not the mouth of a vessel that was drawn as a surface.
 */
export function boundaryCaps(
  positions: Float64Array,
  triangles: Uint32Array,
  uses: EdgeUse,
  shells: Shells,
  share: number,
): Caps {
  const shellCount = shells.open.length;
  const next = new Map<number, number>();
  const shellOfVertex = new Map<number, number>();
  const bad = new Uint8Array(shellCount);
  for (let c = 0; c < triangles.length; c++) {
    const e = uses.ofCorner[c];
    if (uses.forward[e] === uses.backward[e]) continue;
    const shell = shells.ofTriangle[(c / 3) | 0];
    const from = triangles[c];
    const to = triangles[c % 3 === 2 ? c - 2 : c + 1];
    // A cap runs against the border. One loop through each border vertex, or the shell stays a sheet.
    if (next.has(to) || uses.forward[e] + uses.backward[e] !== 1) bad[shell] = 1;
    next.set(to, from);
    shellOfVertex.set(to, shell);
  }
  const found: { shell: number; corners: number[] }[] = [];
  const capArea = new Float64Array(shellCount);
  const seen = new Set<number>();
  for (const start of next.keys()) {
    if (seen.has(start)) continue;
    const shell = shellOfVertex.get(start) as number;
    const loop: number[] = [];
    let v: number | undefined = start;
    while (v !== undefined && !seen.has(v)) {
      seen.add(v);
      loop.push(v);
      v = next.get(v);
    }
    if (v !== start) bad[shell] = 1;
    for (let k = 2; k < loop.length; k++) {
      const corners = [loop[0], loop[k - 1], loop[k]];
      capArea[shell] += triangleArea(positions, corners);
      found.push({ shell, corners });
    }
  }
  const closed = shells.open.map((open, s) =>
    open && !bad[s] && capArea[s] <= share * shells.area[s] ? 1 : 0,
  );
  const kept = found.filter(({ shell }) => closed[shell]);
  return {
    triangles: Uint32Array.from(kept.flatMap(({ corners }) => corners)),
    shell: Uint32Array.from(kept, ({ shell }) => shell),
    closed,
  };
}

function triangleArea(positions: Float64Array, [a, b, c]: readonly number[]): number {
  const d = (k: number, v: number) => positions[v * 3 + k] - positions[a * 3 + k];
  return (
    Math.hypot(
      d(1, b) * d(2, c) - d(2, b) * d(1, c),
      d(2, b) * d(0, c) - d(0, b) * d(2, c),
      d(0, b) * d(1, c) - d(1, b) * d(0, c),
    ) / 2
  );
}
