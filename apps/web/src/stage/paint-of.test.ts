import { expect, test } from 'vitest';
import { onParts, paintOf } from './paint-of.ts';

const field = (...values: number[]) => new Float32Array(values);

test('of reach only what is not reached is painted, and of jets what no nozzle sees', () => {
  expect(paintOf('handReach', field(Number.NaN, 120, -1))).toEqual({
    values: field(Number.NaN, Number.NaN, 1),
    scale: null,
  });
  expect(paintOf('jetReach', field(0, 2, Number.NaN)).values).toEqual(field(1, Number.NaN, Number.NaN));
});

test('the graver end of a scale is the full one', () => {
  expect(paintOf('standingLiquid', field(3, 7)).scale).toEqual({ pale: 0, full: 7 });
  expect(paintOf('openSky', field(0.25)).scale).toEqual({ pale: 100, full: 0 });
  expect(paintOf('openSky', field(0.25)).values).toEqual(field(25));
  expect(paintOf('clearances', field(40, 90)).scale).toEqual({ pale: 90, full: 0 });
});

test('a face that looks down is as flat as one that looks up', () => {
  expect(paintOf('flatFaces', field(-2, 1))).toEqual({ values: field(2, 1), scale: { pale: 0, full: 2 } });
});

test('of a finding only its own parts are painted', () => {
  const shape = (triangles: number) => ({
    positions: new Float64Array(9),
    triangles: new Uint32Array(3 * triangles),
    hash: '',
  });
  const part = (id: string, of: number) => ({
    id,
    name: id,
    assembly: [],
    shape: of,
    placement: new Float64Array(16),
    color: [0, 0, 0] as const,
  });
  const model = {
    shapes: [shape(2), shape(1)],
    parts: [part('a', 1), part('b', 0), part('c', 1)],
    unit: 'mm' as const,
    deviation_mm: 0,
    notes: [],
  };
  const paint = paintOf('handReach', field(-1, -1, 5, -1));
  expect(onParts(paint, model, ['b', 'c']).values).toEqual(field(Number.NaN, 1, Number.NaN, 1));
});
