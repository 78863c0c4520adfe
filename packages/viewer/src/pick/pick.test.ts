import { Plane, Ray, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { boxesAt } from '../box.fixture.ts';
import { partBoxes } from '../geometry/part-boxes.ts';
import { measurement } from '../measure/measurement.ts';
import { orderByState, type PartState } from '../parts/part-order.ts';
import { PartPicker } from './part-picker.ts';
import { snap } from './snap.ts';

const model = boxesAt([
  [0, 0, 0],
  [0, 50, 0],
]);
const picker = new PartPicker(model, partBoxes(model), [0, 0, 0]);
const along = new Ray(new Vector3(5, -100, 5), new Vector3(0, 1, 0));

describe('picking', () => {
  test('finds the first part, its point and the normal towards the eye', () => {
    const hit = picker.first(along, () => true, null)!;
    expect(hit.part).toBe(0);
    expect(hit.point.toArray()).toEqual([5, 0, 5]);
    expect(hit.normal.toArray().map(Math.round)[1]).toBe(-1);
    expect(picker.corners(hit).every((c) => c.y === 0)).toBe(true);
  });

  test('goes through what is not visible, and through what the section takes away', () => {
    expect(picker.first(along, (part) => part !== 0, null)?.part).toBe(1);
    const plane = new Plane(new Vector3(0, 1, 0), -30);
    expect(picker.first(along, () => true, plane)?.part).toBe(1);
    const inside = new Plane(new Vector3(0, 1, 0), -5);
    expect(picker.first(along, () => true, inside)?.point.y).toBeCloseTo(10, 9);
  });

  test('finds nothing beside the parts', () => {
    expect(
      picker.first(new Ray(new Vector3(5, -100, 50), new Vector3(0, 1, 0)), () => true, null),
    ).toBeNull();
  });
});

test('a pick snaps to a corner within reach, and stays put otherwise', () => {
  const corner = new Vector3(1, 0, 0);
  expect(snap(new Vector3(1.2, 0, 0), [corner], 0.5)).toEqual({ point: corner, snapped: true });
  expect(snap(new Vector3(2, 0, 0), [corner], 0.5).snapped).toBe(false);
});

test('a distance says how far it can be off', () => {
  const exact = { at: [0, 0, 0], snapped: true, plane: false } as const;
  const curved = { at: [3, 4, 0], snapped: false, plane: false } as const;
  expect(measurement(exact, { ...curved, plane: true }, 0.05).uncertainty_mm).toBe(0);
  const m = measurement(exact, curved, 0.05);
  expect(m.distance_mm).toBe(5);
  expect(m.uncertainty_mm).toBe(0.05);
});

test('shown parts come first, then ghosts, hidden ones not at all', () => {
  const first = new Uint32Array([0, 1, 3, 4]);
  const states: PartState[] = ['ghost', 'shown', 'hidden'];
  const index = new Uint32Array(12);
  const count = orderByState(first, 3, (part) => states[part], index);
  expect(count).toEqual({ shown: 6, ghost: 3 });
  expect([...index.subarray(0, 9)]).toEqual([3, 4, 5, 6, 7, 8, 0, 1, 2]);
});
