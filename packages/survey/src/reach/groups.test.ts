import { expect, test } from 'vitest';
import { byPart } from './groups.ts';
import type { Patches } from './patches.ts';

/** Patches of which only parts and areas matter. */
function patches(...of: readonly [part: number, area_mm2: number][]): Patches {
  return {
    count: of.length,
    firstPiece: new Uint32Array(1),
    ofPiece: new Uint32Array(),
    halvings: new Uint8Array(),
    points: new Float32Array(3 * of.length),
    normals: new Float32Array(3 * of.length),
    area_mm2: Float32Array.from(of, ([, area]) => area),
    part: Uint32Array.from(of, ([part]) => part),
    cell: new Int32Array(of.length),
  };
}

test('a region of four parts stays whole', () => {
  const all = patches([0, 900], [1, 900], [2, 1], [3, 1], [0, 900]);
  expect(byPart(all, [0, 1, 2, 3, 4], 500)).toEqual([[0, 1, 2, 3, 4]]);
});

test('a region of more is told part by part, largest first, and small parts together', () => {
  const all = patches([0, 600], [1, 400], [2, 300], [3, 300], [4, 200], [1, 400]);
  expect(byPart(all, [0, 1, 2, 3, 4, 5], 500)).toEqual([[1, 5], [0], [2, 3, 4]]);
});

test('small parts that are too little to be told stay with the largest one', () => {
  const all = patches([0, 600], [1, 900], [2, 100], [3, 100], [4, 100]);
  expect(byPart(all, [0, 1, 2, 3, 4], 500)).toEqual([[1, 2, 3, 4], [0]]);
});

test('small parts alone stay together', () => {
  const all = patches([0, 10], [1, 10], [2, 10], [3, 10], [4, 10]);
  expect(byPart(all, [0, 1, 2, 3, 4], 500)).toEqual([[0, 1, 2, 3, 4]]);
});
