/** A public tee of pipe fittings, capped with a disc: lengths from its nominal dimensions. */
import { readModel } from '@coveline/cad';
import type { Model } from '@coveline/model';
import { type DeadLeg, survey } from '@coveline/survey';
import { beforeAll, describe, expect, it } from 'vitest';
import { modelBytes, modelsThere, whyNot } from '../../cad/models.ts';
import { identity } from '../../shapes/mesh.ts';
import { type Bore, rod } from './drilled.ts';

/** The drawing: a tee of bore 23 mm, run and branch 27 mm from the middle (model tee-dn15, its own dimensions). */
const bore = 23;
const reach = 27;

describe.skipIf(!modelsThere)(`tee DN 15${whyNot}`, () => {
  let tee: Model;
  beforeAll(async () => {
    tee = await readModel(modelBytes('tee-dn15.step'), 'tee-dn15.step');
  }, 60_000);

  /** The tee with a disc across one of its openings; `cad` false leaves only its triangles. */
  async function legsWith(disc: Omit<Bore, 'length' | 'radius'>, cad: boolean): Promise<readonly DeadLeg[]> {
    const shapes = cad ? tee.shapes : tee.shapes.map(({ cad: _, ...triangles }) => triangles);
    const cap = { ...rod({ ...disc, length: 3, radius: 15 }), hash: 'cap' };
    const { result } = await survey(
      {
        ...tee,
        shapes: [...shapes, cap],
        parts: [
          ...tee.parts,
          { id: 'cap', name: 'cap', assembly: [], shape: shapes.length, placement: identity },
        ],
      },
      { measures: ['hollows'], settings: { pitch_mm: 4 } },
    );
    return result.measures.hollows?.deadLegs ?? [];
  }

  it.each([
    ['branch', { from: [0, -27, 27], direction: [0, -1, 0] }],
    ['end of the run', { from: [0, 0, 54], direction: [0, 0, 1] }],
  ] as const)('a disc on the %s', async (_name, disc) => {
    for (const cad of [true, false]) {
      const legs = await legsWith(disc, cad);
      expect(legs).toHaveLength(1);
      const tolerance = cad ? 1e-6 : 0.05;
      const expected = { bore_mm: bore, main_mm: bore, fromAxis_mm: reach, fromWall_mm: reach - bore / 2 };
      for (const [key, value] of Object.entries(expected))
        expect(Math.abs(legs[0][key as keyof typeof expected] / value - 1), key).toBeLessThan(tolerance);
      expect(Math.abs(legs[0].ratioFromWall / (15.5 / 23) - 1)).toBeLessThan(tolerance);
      expect(Math.abs(legs[0].ratioFromAxis / (27 / 23) - 1)).toBeLessThan(tolerance);
    }
  });
});

describe.skipIf(!modelsThere)(`plate frame${whyNot}`, () => {
  it('has four screw holes of 3.3 mm that end 5 mm behind their nut slots, from faces and from triangles', async () => {
    const model = await readModel(modelBytes('frame.step'), 'frame.step');
    for (const cad of [true, false]) {
      const shapes = cad ? model.shapes : model.shapes.map(({ cad: _, ...triangles }) => triangles);
      const { result } = await survey(
        { ...model, shapes },
        { measures: ['hollows'], settings: { pitch_mm: 4 } },
      );
      const { blind = [] } = result.measures.hollows ?? {};
      expect(blind).toHaveLength(4);
      for (const { depth_mm, mouth_mm } of blind) {
        expect(Math.abs(mouth_mm / 3.3 - 1)).toBeLessThan(cad ? 1e-6 : 0.05);
        expect(Math.abs(depth_mm / 5 - 1)).toBeLessThan(cad ? 1e-6 : 0.05);
      }
    }
  });
});
