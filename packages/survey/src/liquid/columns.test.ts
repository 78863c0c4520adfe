import { expect, test } from 'vitest';
import { buildColumns, openEnd } from './columns.ts';
import { floodFromOutside } from './flood.ts';
import type { Grid } from './grid.ts';
import { Line } from './line.ts';
import { lineIndex } from './line-index.ts';
import type { Soup } from './soup.ts';

const contact_mm = 0.02;

/** Mulberry32 (from memory). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Tetrahedra that overlap, slivers among them, and every fourth of them a sheet. */
function tetrahedra(count: number, next: () => number): Soup {
  const uvz: number[] = [];
  const triangles: number[] = [];
  const sheet: number[] = [];
  for (let k = 0; k < count; k++) {
    const size = k % 3 === 0 ? 0.3 : 12;
    const at = [next() * 40, next() * 30, next() * 30];
    const corners = Array.from({ length: 4 }, () => at.map((c, i) => c + next() * (i === 0 ? 15 : size)));
    const [a, b, c] = corners.slice(1).map((p) => p.map((x, i) => x - corners[0][i]));
    const volume =
      a[0] * (b[1] * c[2] - b[2] * c[1]) -
      a[1] * (b[0] * c[2] - b[2] * c[0]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
    const [p, q] = volume > 0 ? [1, 2] : [2, 1];
    const n = uvz.length / 3;
    for (const corner of corners) uvz.push(...corner);
    triangles.push(n, n + q, n + p, n, n + p, n + 3, n, n + 3, n + q, n + p, n + q, n + 3);
    for (let t = 0; t < 4; t++) sheet.push(k % 4 === 3 ? 1 : 0);
  }
  return {
    uvz: Float64Array.from(uvz),
    triangles: Uint32Array.from(triangles),
    part: new Uint32Array(sheet.length),
    sheet: Uint8Array.from(sheet),
    source: new Int32Array(sheet.length),
    firstOfPart: new Uint32Array(1),
    low: [0, 0, 0],
    high: [55, 42, 42],
    turn: [1, 0],
    notes: [],
  };
}

interface Interval {
  readonly bottom: number;
  readonly top: number;
  readonly floor: number;
  readonly ceiling: number;
}

/** The same by the plain way: all crossings of a column, sorted, and what they leave open. */
function airOf(line: Line, soup: Soup, column: number): Interval[] {
  const crossings: { z: number; turn: number; triangle: number }[] = [];
  for (let k = line.crossingHead[column]; k >= 0; k = line.crossingNext[k]) {
    const triangle = line.crossingTriangle[k];
    crossings.push({ z: line.crossingZ[k], turn: soup.sheet[triangle] ? 0 : line.crossingTurn[k], triangle });
  }
  crossings.sort((p, q) => p.z - q.z);
  const air: Interval[] = [];
  let winding = 0;
  let open: { bottom: number; floor: number } | undefined = { bottom: -Infinity, floor: openEnd };
  for (const { z, turn, triangle } of crossings) {
    winding += turn;
    if (open && (winding > 0 || turn === 0)) {
      air.push({ ...open, top: z, ceiling: triangle });
      open = undefined;
    }
    if (!open && winding <= 0) open = { bottom: z, floor: triangle };
  }
  if (open) air.push({ ...open, top: Infinity, ceiling: openEnd });
  return air.filter(({ bottom, top }) => top - bottom >= contact_mm);
}

/** Lowest height between two that no piece of the section covers. */
function lowestFree(line: Line, strip: number, low: number, high: number): number {
  const ranges: [number, number][] = [];
  for (let k = line.pieceHead[strip]; k >= 0; k = line.pieceNext[k]) {
    ranges.push([
      Math.min(line.pieceFromZ[k], line.pieceToZ[k]),
      Math.max(line.pieceFromZ[k], line.pieceToZ[k]),
    ]);
  }
  ranges.sort((p, q) => p[0] - q[0]);
  let z = low;
  for (const [from, to] of ranges) if (from - z < contact_mm && to > z) z = to;
  return high === Infinity || high - z >= contact_mm ? z : Infinity;
}

const grid: Grid = { u0: -1.3, v0: -1.1, pitch: 0.77, nu: 78, nv: 60 };

for (const seed of [1, 2, 3, 4]) {
  test(`columns of overlapping bodies and sheets are what sorting everything gives, seed ${seed}`, () => {
    const soup = tetrahedra(120, random(seed));
    const columns = buildColumns(soup, grid, contact_mm);
    const { nu, nv } = grid;
    const rows = lineIndex(soup, grid, 1);
    const line = new Line(grid, 1);
    let intervals = 0;
    for (let j = 0; j < nv; j++) {
      line.load(soup, rows, j);
      for (let i = 0; i < nu; i++) {
        const c = j * nu + i;
        const found = [];
        for (let n = columns.first[c]; n < columns.first[c + 1]; n++) {
          found.push({
            bottom: columns.bottom[n],
            top: columns.top[n],
            floor: columns.floor[n],
            ceiling: columns.ceiling[n],
          });
          expect(columns.columnOf[n]).toBe(c);
        }
        expect(found).toEqual(airOf(line, soup, i));
        intervals += found.length;
      }
    }
    expect(intervals).toBeGreaterThan(nu * nv * 1.5);
  });

  test(`passages are the lowest heights that the section leaves free, seed ${seed}`, () => {
    const soup = tetrahedra(120, random(seed));
    const columns = buildColumns(soup, grid, contact_mm);
    const { nu, nv } = grid;
    for (const axis of [1, 0] as const) {
      const index = lineIndex(soup, grid, axis);
      const line = new Line(grid, axis);
      const passages = axis === 1 ? columns.alongU : columns.alongV;
      const [lines, along, step] = axis === 1 ? [nv, nu, 1] : [nu, nv, nu];
      let met = 0;
      for (let l = 0; l < lines; l++) {
        line.load(soup, index, l);
        for (let k = 0; k < along; k++) {
          const c = axis === 1 ? l * nu + k : k * nu + l;
          const expected: [number, number, number][] = [];
          if (k + 1 < along) {
            for (let a = columns.first[c]; a < columns.first[c + 1]; a++) {
              for (let b = columns.first[c + step]; b < columns.first[c + step + 1]; b++) {
                const low = Math.max(columns.bottom[a], columns.bottom[b]);
                const high = Math.min(columns.top[a], columns.top[b]);
                const z = lowestFree(line, k, low, high);
                if (z < Infinity) expected.push([a, b, z]);
              }
            }
          }
          const found: [number, number, number][] = [];
          const strip = l * along + k;
          for (let e = passages.first[strip]; e < passages.first[strip + 1]; e++) {
            found.push([passages.a[e], passages.b[e], passages.height[e]]);
          }
          expect(found).toEqual(expected);
          met += found.length;
        }
      }
      expect(met).toBeGreaterThan(nu * nv);
    }
  });

  test(`levels are those of a flood that looks at every passage until nothing falls, seed ${seed}`, () => {
    const columns = buildColumns(tetrahedra(120, random(seed)), grid, contact_mm);
    const level = Float64Array.from(columns.bottom, (z) => (z === -Infinity ? z : Infinity));
    for (let falling = true; falling; ) {
      falling = false;
      for (const { a, b, height } of [columns.alongU, columns.alongV]) {
        for (let e = 0; e < height.length; e++) {
          const high = Math.max(height[e], Math.min(level[a[e]], level[b[e]]));
          for (const n of [a[e], b[e]]) {
            if (level[n] <= high) continue;
            level[n] = high;
            falling = true;
          }
        }
      }
    }
    const flood = floodFromOutside(columns);
    expect(flood.level).toEqual(level);
    for (let n = 0; n < level.length; n++) {
      if (flood.from[n] !== n) expect(level[flood.from[n]]).toBeLessThanOrEqual(level[n]);
    }
  });
}

test('a flood can be stopped on the way, and columns too', () => {
  const soup = tetrahedra(120, random(5));
  const stop = (): never => {
    throw new Error('stopped');
  };
  expect(() => buildColumns(soup, grid, contact_mm, { tick: stop })).toThrow('stopped');
  expect(() => floodFromOutside(buildColumns(soup, grid, contact_mm), stop)).toThrow('stopped');
});
