/** Fasteners drawn by others, at the nominal sizes of their standards; and their models of other things, which have none. */
import { readModel } from '@coveline/cad';
import type { Model } from '@coveline/model';
import { type SurveyMeasures, survey } from '@coveline/survey';
import { describe, expect, it } from 'vitest';
import { modelBytes, modelsThere, whyNot } from '../../cad/models.ts';
import { trianglesOnly } from './drawn.ts';

type Found = NonNullable<SurveyMeasures['fasteners']>;

const fastenersIn = async (model: Model): Promise<Found> =>
  (await survey(model, { measures: ['fasteners'] })).result.measures.fasteners!;

const measured = async (file: string, strip: boolean): Promise<Found> => {
  const model = await readModel(modelBytes(file), file);
  return fastenersIn(strip ? trianglesOnly(model, 0.005, 11) : model);
};

describe.skipIf(!modelsThere)(`models of fasteners${whyNot}`, () => {
  describe.each([
    ['cad', false, 4],
    ['triangles', true, 1],
  ] as const)('from %s', (from, strip, digits) => {
    it('screw M6 x 25: 10 mm across flats, thread of 6 mm and 25 mm long', async () => {
      // ISO 4017 M6: s 10, d 6 and l 25 by its designation (s from memory).
      const { heads, threads } = await measured('bolt-m6x25.step', strip);
      expect(heads.map((h) => [h.kind, h.from])).toEqual([['hexagon', from]]);
      expect(heads[0].acrossFlats_mm).toBeCloseTo(10, digits);
      expect(threads.map((t) => [t.inside, t.from])).toEqual([[false, from]]);
      expect(threads[0].diameter_mm).toBeCloseTo(6, digits);
      expect(threads[0].exposed_mm).toBeCloseTo(25, 1);
    });

    it('nut M8: 13 mm across flats, a hole of 8 mm', async () => {
      // ISO 4032 M8: s 13 (BS EN ISO 4032:2001 table 1, secondary copy).
      const { heads, threads } = await measured('nut-m8.step', strip);
      expect(heads.map((h) => [h.kind, h.from])).toEqual([['nut', from]]);
      expect(heads[0].acrossFlats_mm).toBeCloseTo(13, digits);
      expect(threads.map((t) => t.inside)).toEqual([true]);
      expect(threads[0].diameter_mm).toBeCloseTo(8, digits);
    });

    it('coupling: four set screws with a socket, and its helical slit is no thread', async () => {
      const { heads, threads } = await measured('coupling.step', strip);
      // 2.2 mm and 3.9 mm as drawn; set screws M4 have sockets of 2 mm (ISO 4026; from memory).
      expect(heads.map((h) => h.kind)).toEqual(Array(4).fill('hexagonSocket'));
      for (const { acrossFlats_mm, diameter_mm } of heads) {
        expect(acrossFlats_mm).toBeCloseTo(2.2, 1);
        expect(diameter_mm).toBeCloseTo(3.9, 1);
      }
      expect(threads.every((t) => t.diameter_mm < 4)).toBe(true);
    });
  });

  it.each([
    'bearing-608.step',
    'tee-dn15.step',
    'flange-dn15.step',
    'bottle.step',
    'cup.step',
    'profile-40x40.step',
    'pump-carriage.step',
    'pump-base.step',
    'frame.step',
    'cover-lower.stp',
    'cover-upper.stp',
    'ctc-01-ap242.stp',
  ])('%s has none', { timeout: 120_000 }, async (file) => {
    const model = await readModel(modelBytes(file), file);
    const none = { heads: [], threads: [] };
    expect(await fastenersIn(model)).toEqual(none);
    expect(await fastenersIn(trianglesOnly(model, 0.005, 11))).toEqual(none);
  });
});
