/**
 * Models drawn by others, held against the standards that their originals follow: names, sizes, kinds of faces.
 * Bought-out parts are drawn at nominal size, so lengths are checked to 0.01 mm.
 */
import { readModel } from '@coveline/cad';
import { bounds, type CadFace, type Model } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { modelBytes, modelsThere, whyNot } from './models.ts';

const read = (file: string): Promise<Model> => readModel(modelBytes(file), file);

const faces = (model: Model): CadFace[] => model.shapes.flatMap((shape) => [...(shape.cad?.faces ?? [])]);

const size = (model: Model): number[] => {
  const [low, high] = bounds(model);
  return [0, 1, 2].map((k) => high[k] - low[k]);
};

/** Diameters of the hollow (or round) cylinders about an axis through the origin along z, ascending, each once. */
function diameters(model: Model, hollow: boolean): number[] {
  const found = faces(model)
    .filter((face) => face.kind === 'cylinder' && face.hollow === hollow)
    .filter(
      ({ axis }) =>
        axis && Math.hypot(axis.origin[0], axis.origin[1]) < 1e-6 && Math.abs(axis.direction[2]) > 0.999,
    )
    .map((face) => 2 * (face.radius_mm ?? 0));
  return [...new Set(found.map((d) => Number(d.toFixed(3))))].sort((a, b) => a - b);
}

/** Distances between pairs of opposite planes whose normal lies in the xy plane. */
function acrossFlats(model: Model): number[] {
  const flats = faces(model).filter(
    (face) => face.kind === 'plane' && Math.abs(face.axis?.direction[2] ?? 1) < 1e-6,
  );
  const distance = ({ axis }: CadFace) =>
    axis ? axis.origin[0] * axis.direction[0] + axis.origin[1] * axis.direction[1] : 0;
  const out: number[] = [];
  for (const [i, one] of flats.entries()) {
    for (const two of flats.slice(i + 1)) {
      const [a, b] = [one.axis!.direction, two.axis!.direction];
      if (a[0] * b[0] + a[1] * b[1] < -0.999_999) out.push(distance(one) + distance(two));
    }
  }
  return out;
}

describe.skipIf(!modelsThere)(`fasteners and bearings${whyNot}`, () => {
  it('nut M8: 13 mm across flats, height between 6.44 and 6.80 mm, an 8 mm hole', async () => {
    // ISO 4032 M8: s max 13, min 12.73; m max 6.80, min 6.44; da min 8 (BS EN ISO 4032:2001 table 1, secondary copy).
    const model = await read('nut-m8.step');
    expect(model.parts).toHaveLength(1);
    const flats = acrossFlats(model);
    expect(flats).toHaveLength(3);
    for (const s of flats) expect(s).toBeCloseTo(13, 2);
    expect(size(model)[2]).toBeGreaterThanOrEqual(6.44);
    expect(size(model)[2]).toBeLessThanOrEqual(6.8);
    expect(diameters(model, true)).toEqual([8]);
  });

  it('screw M6 x 25: 10 mm across flats, head 4 mm, shank 6 mm and 25 mm long', async () => {
    // ISO 4017 M6: s 10, k 4 (from memory); d 6 and l 25 by its designation.
    const model = await read('bolt-m6x25.step');
    expect(model.parts.map((part) => part.name)).toEqual(['ISO4017_Hex_Head_Cap_Screw_M6x25']);
    for (const s of acrossFlats(model)) expect(s).toBeCloseTo(10, 2);
    expect(diameters(model, false)).toContain(6);
    const [low, high] = bounds(model);
    expect(high[2]).toBeCloseTo(4, 2);
    expect(low[2]).toBeCloseTo(-25, 2);
  });

  it('bearing 608: bore 8, outside 22, width 7 mm', async () => {
    // ISO 15, dimension series 10, bore 8 (d 8, D 22, B 7; secondary copies).
    const model = await read('bearing-608.step');
    expect(model.parts.map((part) => part.name)).toEqual(['608ZZ_Ball_Bearing']);
    expect(diameters(model, true)).toEqual([8]);
    expect(diameters(model, false)).toEqual([22]);
    for (const [k, value] of [22, 22, 7].entries()) expect(size(model)[k]).toBeCloseTo(value, 2);
  });
});

describe.skipIf(!modelsThere)(`fittings and assemblies${whyNot}`, () => {
  it('flange DN15: 95 mm outside, four equal bolt holes on one circle', async () => {
    // EN 1092-1, DN 15, PN 10 to 40: D 95, four holes on a circle of 65 (from memory). This stamped one has 13.5 mm holes.
    const model = await read('flange-dn15.step');
    expect(model.parts.map((part) => part.id)).toEqual(['ASSEMBLY/DN15_Stamped_Flange']);
    const cylinders = faces(model).filter((face) => face.kind === 'cylinder');
    expect(Math.max(...cylinders.map((face) => 2 * (face.radius_mm ?? 0)))).toBeCloseTo(95, 6);
    const holes = cylinders.filter((face) => face.hollow && Math.abs((face.radius_mm ?? 0) - 6.75) < 1e-6);
    expect(holes).toHaveLength(4);
    for (const { axis } of holes) {
      expect(2 * Math.hypot(axis!.origin[0], axis!.origin[2])).toBeCloseTo(65, 3);
    }
  });

  it('tee DN15: three mouths of one bore, run and branch at a right angle', async () => {
    const model = await read('tee-dn15.step');
    const bores = faces(model).filter((face) => face.kind === 'cylinder' && face.hollow);
    expect(new Set(bores.map((face) => face.radius_mm?.toFixed(3)))).toEqual(new Set(['11.500']));
    const directions = new Set(
      bores.map((face) => face.axis?.direction.map((x) => Math.round(Math.abs(x))).join()),
    );
    expect(directions).toEqual(new Set(['0,0,1', '0,1,0']));
  });

  it('coupling: a hub and four set screws, apart', async () => {
    const model = await read('coupling.step');
    expect(model.parts).toHaveLength(5);
    expect(new Set(model.parts.map((part) => part.id)).size).toBe(5);
    expect(model.parts.every((part) => part.assembly[0] === 'ASSEMBLY')).toBe(true);
  });

  it('aluminium profile: 30 x 30 mm section, 40 mm long, slots alike on its four sides', async () => {
    const model = await read('profile-40x40.step');
    for (const [k, value] of [30, 40, 30].entries()) expect(size(model)[k]).toBeCloseTo(value, 2);
    const slots = faces(model).filter(
      (face) => face.kind === 'cylinder' && face.hollow && face.radius_mm === 0.5,
    );
    expect(slots.length % 4).toBe(0);
  });
});
