/** Threads: pitch and diameter where they are drawn, and the length that stands free, against closed forms. */
import type { Model } from '@coveline/model';
import { type SurveyMeasures, survey } from '@coveline/survey';
import { makeBox } from 'replicad';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Mesh, modelOf, placed } from '../../shapes/mesh.ts';
import { union } from '../../shapes/solid.ts';
import {
  capNut,
  hexBolt,
  hexNut,
  placedAt,
  read,
  rod,
  type Size,
  sizes,
  startDrawing,
  trianglesOnly,
} from './drawn.ts';
import { hexagonRadius, ringSolid, threadRadius } from './threaded.ts';

beforeAll(startDrawing);

const measured = async (model: Model): Promise<NonNullable<SurveyMeasures['fasteners']>> =>
  (await survey(model, { measures: ['fasteners'] })).result.measures.fasteners!;

const plate = (width: number, thickness: number, hole: number, z: number) =>
  makeBox([-width, -width, z], [width, width, z + thickness]).cut(rod(hole, thickness, z));

const turns = [
  {},
  { turn: 23, tiltX: 90 },
  { turn: 71, tiltX: 31, tiltY: -48, move: [300, 20, -70] as const },
];

describe.each([4, 8, 20] as const)('M%d', (d) => {
  const { nut } = sizes[d];

  it.each([
    ['a clearance hole', 1.1],
    ['a hole that fits', 1],
  ])('bolt through a plate with %s and a nut: length - plate - nut stands free', async (_name, hole) => {
    const thickness = 1.5 * d;
    const length = 5 * d;
    const drawn = await read([
      { shape: hexBolt(d, length), name: 'bolt' },
      { shape: plate(3 * d, thickness, hole * d, -thickness), name: 'plate' },
      { shape: hexNut(d).translate([0, 0, -thickness - nut]), name: 'nut' },
    ]);
    for (const turn of turns) {
      for (const model of [
        placedAt(drawn, placed(turn)),
        trianglesOnly(placedAt(drawn, placed(turn)), 0.005, 3),
      ]) {
        const { heads, threads } = await measured(model);
        expect(heads.map((h) => h.kind).sort()).toEqual(['hexagon', 'nut']);
        expect(threads).toHaveLength(1);
        expect(threads[0].parts).toEqual(['bolt']);
        // To one station of 0.05 mm at either end.
        expect(Math.abs(threads[0].exposed_mm - (length - thickness - nut))).toBeLessThan(0.1);
        expect(threads[0].diameter_mm).toBeCloseTo(d, 1);
        expect(threads[0].pitch_mm).toBeUndefined();
      }
    }
  });

  it('stud without a head, told by the nut on it, stands free on both sides', async () => {
    const length = 6 * d;
    const model = await read([
      { shape: rod(d, length, -2 * d), name: 'column' },
      { shape: plate(3 * d, d, 1.1 * d, 0), name: 'plate' },
      { shape: hexNut(d).translate([0, 0, d]), name: 'piece' },
    ]);
    const { threads } = await measured(model);
    expect(threads.map((t) => [t.parts[0], t.from, t.inside])).toEqual([['column', 'cad', false]]);
    expect(Math.abs(threads[0].exposed_mm - (length - d - nut))).toBeLessThan(0.1);
  });

  it('a cap nut covers what is in it, and an empty one shows its inner thread', async () => {
    const covered = await read([
      { shape: hexBolt(d, 3 * d), name: 'bolt' },
      { shape: plate(3 * d, 3 * d - nut, d, -3 * d + nut), name: 'plate' },
      {
        shape: capNut(d)
          .rotate(180, [0, 0, 0], [1, 0, 0])
          .translate([0, 0, -3 * d + nut]),
        name: 'nut',
      },
    ]);
    expect((await measured(covered)).threads).toEqual([]);
    const { threads } = await measured(await read([{ shape: capNut(d), name: 'nut' }]));
    expect(threads.map((t) => t.inside)).toEqual([true]);
    expect(Math.abs(threads[0].exposed_mm - nut)).toBeLessThan(0.1);
  });

  it('half in a wall counts half, and a wall beside it covers nothing', async () => {
    const length = 4 * d;
    const half = await read([
      { shape: hexBolt(d, length), name: 'bolt' },
      { shape: makeBox([0, -3 * d, -3 * d], [3 * d, 3 * d, -d]), name: 'wall' },
    ]);
    // 2 d of its length has one half of its round in the wall; sixteen directions tell the half exactly.
    expect((await measured(half)).threads.map((t) => t.exposed_mm)).toEqual([expect.closeTo(length - d, 1)]);
    const beside = await read([
      { shape: hexBolt(d, length), name: 'bolt' },
      { shape: makeBox([1.2 * d, -3 * d, -3 * d], [3 * d, 3 * d, -d]), name: 'wall' },
    ]);
    expect((await measured(beside)).threads.map((t) => t.exposed_mm)).toEqual([expect.closeTo(length, 6)]);
  });

  it('a plain rod without a nut is no thread, but for its name', async () => {
    expect(await measured(await read([{ shape: rod(d, 60), name: 'guide' }]))).toEqual({
      heads: [],
      threads: [],
    });
    const { threads } = await measured(await read([{ shape: rod(d, 60), name: `threaded rod M${d}` }]));
    expect(threads.map((t) => [t.from, t.diameter_mm])).toEqual([['name', expect.closeTo(d, 6)]]);
    const other = await measured(await read([{ shape: rod(d + 2, 60), name: `threaded rod M${d}` }]));
    expect(other.threads).toEqual([]);
  });
});

describe.each([
  ['M4', 4, 0.7],
  ['M8', 8, 1.25],
  ['M20', 20, 2.5],
  ['M20 fine', 20, 1.5],
] as const)('drawn thread %s', (_name, d, pitch) => {
  // Depth of an outer metric thread 0.6134 P, of an inner one 0.5413 P (ISO 724; from memory).
  const outside = threadRadius(d / 2, pitch, 0.6134 * pitch);
  const length = 3 * d;
  const levels = Math.round((length / pitch) * 10);
  const stud = ringSolid(outside, undefined, length, levels, 48);

  it.each(turns)('outside: pitch, diameter and length, turned %o', async (turn) => {
    for (const noise of [0, 0.01]) {
      const model = trianglesOnly(modelOf([{ id: 'stud', mesh: stud, placement: placed(turn) }]), noise, 5);
      const { threads } = await measured(model);
      expect(threads).toHaveLength(1);
      const [thread] = threads;
      expect(Math.abs(thread.pitch_mm! / pitch - 1)).toBeLessThan(0.01);
      expect(Math.abs(thread.diameter_mm / d - 1)).toBeLessThan(0.01);
      expect(Math.abs(thread.exposed_mm - length)).toBeLessThan(pitch);
      expect([thread.inside, thread.from]).toEqual([false, 'triangles']);
    }
  });

  it('on a bolt, and inside a nut', async () => {
    const { flats, head, nut } = sizes[d as Size];
    const ends = ringSolid(hexagonRadius(flats), undefined, head, 1, 48);
    const lifted: Mesh = { ...ends, positions: ends.positions.map((c, i) => (i % 3 === 2 ? c + length : c)) };
    const bolt = await measured(modelOf([{ id: 'bolt', mesh: union(stud, lifted) }]));
    expect(bolt.heads.map((h) => h.kind)).toEqual(['hexagon']);
    expect(Math.abs(bolt.threads[0].pitch_mm! / pitch - 1)).toBeLessThan(0.02);
    expect(Math.abs(bolt.threads[0].exposed_mm - length)).toBeLessThan(1.5 * pitch);
    const inside = threadRadius(d / 2, pitch, 0.5413 * pitch);
    const mesh = ringSolid(hexagonRadius(flats), inside, nut, Math.round((nut / pitch) * 10), 48);
    const found = await measured(modelOf([{ id: 'nut', mesh }]));
    expect(found.heads.map((h) => [h.kind, h.acrossFlats_mm])).toEqual([['nut', expect.closeTo(flats, 3)]]);
    expect(found.threads.map((t) => t.inside)).toEqual([true]);
    expect(Math.abs(found.threads[0].pitch_mm! / pitch - 1)).toBeLessThan(0.03);
    expect(Math.abs(found.threads[0].diameter_mm / d - 1)).toBeLessThan(0.02);
  });

  it('rings instead of a helix are no thread', async () => {
    const rings = ringSolid(threadRadius(d / 2, pitch, 0.6134 * pitch, 0), undefined, length, levels, 48);
    expect((await measured(modelOf([{ id: 'bellows', mesh: rings }]))).threads).toEqual([]);
  });

  it('a knurl along the axis is no thread', async () => {
    const knurl = ringSolid(
      (angle) => d / 2 - 0.05 * d * Math.abs((((angle * 12) / Math.PI) % 2) - 1),
      undefined,
      length,
      40,
      48,
    );
    expect((await measured(modelOf([{ id: 'wheel', mesh: knurl }]))).threads).toEqual([]);
  });
});
