import { bounds } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { assemblyFile, type Product } from '../../fixtures/assemblyFile.ts';
import { readModel } from '../read.ts';

const foot: Product = { name: 'Foot', box_mm: [20, 20, 10], colour: [0.75, 0.25, 0.5] };
const leg: Product = { name: 'Leg', box_mm: [10, 10, 400] };
const stand: Product = {
  name: 'Stand',
  children: [
    { product: foot, at: [0, 0, 0] },
    { product: leg, at: [5, 5, 10], colour: [0.1, 0.6, 0.3] },
  ],
};
const machine: Product = {
  name: 'Machine',
  children: [
    { product: stand, at: [0, 0, 0] },
    { product: stand, at: [300, 0, 0], turns: 1 },
    { product: { name: 'Grüße – plate', box_mm: [300, 200, 5] }, at: [0, 0, 410] },
  ],
};

describe('assemblies written by a CAD kernel', () => {
  it.each([
    ['MM', 'mm'],
    ['INCH', 'in'],
    ['M', 'm'],
    ['CM', 'cm'],
  ])('come back with names, tree, places and colours, written in %s', async (written, unit) => {
    const model = await readModel(await assemblyFile([machine], written), 'machine.step');
    expect(model.notes).toEqual([]);
    expect(model.unit).toBe(unit);
    expect(model.parts.map((part) => part.id)).toEqual([
      'Machine/Stand/Foot',
      'Machine/Stand/Leg',
      'Machine/Stand/Foot#2',
      'Machine/Stand/Leg#2',
      'Machine/Grüße – plate',
    ]);
    expect(model.parts[1].assembly).toEqual(['Machine', 'Stand']);
    expect(model.shapes).toHaveLength(3);
    const [low, high] = bounds(model);
    for (const [k, value] of [0, 0, 0].entries()) expect(low[k]).toBeCloseTo(value, 6);
    for (const [k, value] of [300, 200, 415].entries()) expect(high[k]).toBeCloseTo(value, 6);
    // sRGB in, sRGB out: 0.75 must not come back as its linear value 0.5225 (nor 0.5225 as 0.75).
    const colour = (n: number) => model.parts[n].color?.map((x) => Number(x.toFixed(4)));
    expect(colour(0)).toEqual([0.75, 0.25, 0.5]);
    expect(colour(1)).toEqual([0.1, 0.6, 0.3]);
    expect(colour(4)).toBeUndefined();
  });

  it('keep a colour that only one use of a part has', async () => {
    const painted: Product = {
      name: 'Rail',
      children: [
        { product: foot, at: [0, 0, 0] },
        { product: foot, at: [50, 0, 0], colour: [1, 0.5, 0] },
      ],
    };
    const model = await readModel(await assemblyFile([painted]), 'rail.step');
    expect(model.parts.map((part) => part.color?.map((x) => Number(x.toFixed(4))))).toEqual([
      [0.75, 0.25, 0.5],
      [1, 0.5, 0],
    ]);
  });

  it('keep several roots apart, with namesakes numbered', async () => {
    const one: Product = { name: 'Guard', box_mm: [1, 2, 3], colour: [1, 0, 0] };
    const two: Product = { name: 'Guard', box_mm: [3, 2, 1], colour: [0, 0, 1] };
    const model = await readModel(await assemblyFile([one, two]), 'guards.step');
    expect(model.parts.map((part) => [part.id, part.assembly.length, part.color])).toEqual([
      ['Guard', 0, [1, 0, 0]],
      ['Guard#2', 0, [0, 0, 1]],
    ]);
  });
});
