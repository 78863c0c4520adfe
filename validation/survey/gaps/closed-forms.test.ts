/** Gaps and joints of many drawings at three sizes, three orientations and with noise on every vertex. */
import type { Model } from '@coveline/model';
import { defaultSettings, measureNarrowGaps } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { motion } from '../../shapes/assemble.ts';
import { movedModel } from '../../shapes/mesh.ts';
import { type Case, cases } from './cases.ts';

interface Variant {
  readonly said: string;
  readonly scale: number;
  readonly turn: Float64Array;
  /** Largest shift of a vertex along each axis. */
  readonly noise_mm: number;
}

const variants: readonly Variant[] = [
  { said: 'as drawn', scale: 1, turn: motion(), noise_mm: 0 },
  { said: 'half as large, turned', scale: 0.5, turn: motion([400, 5, -60], [1, 2, 3], 35), noise_mm: 0 },
  {
    said: 'three times as large, lying',
    scale: 3,
    turn: motion([-900, 0, 80], [1, 0, 0.2], 97),
    noise_mm: 0,
  },
  { said: 'with noise of 0.002', scale: 1, turn: motion([10, 20, 30], [3, 1, 2], 200), noise_mm: 0.002 },
];

/** Shares by which numbers may be off: width 1 %, depth 5 %, as the survey promises; lengths and areas 2 %. */
const may = { width: 0.01, depth: 0.05, mouth: 0.02, area: 0.02, length: 0.01 };

describe.each(variants)('$said', (variant) => {
  test.each(cases)('$name', (drawn) => {
    check(drawn, variant);
  });
});

function check({ model, gaps, joints }: Case, { scale, turn, noise_mm }: Variant): void {
  const shaken = withNoise(movedModel(model(scale), turn), noise_mm);
  const found = measureNarrowGaps(shaken, defaultSettings).measure;
  const known = gaps(scale);
  expect(found.places.map((p) => p.parts.join()).sort()).toEqual(known.map((g) => g.parts).sort());
  for (const gap of known) {
    const place = found.places.find((p) => p.parts.join() === gap.parts)!;
    near('width', place.width_mm, gap.width, may.width, 2 * noise_mm);
    if (gap.widest !== undefined) near('widest', place.widest_mm, gap.widest, may.width, 2 * noise_mm);
    if (gap.depth !== undefined) near('depth', place.depth_mm, gap.depth, may.depth);
    if (gap.mouth !== undefined) near('mouth', place.mouth_mm, gap.mouth, may.mouth);
    near('area', place.area_cm2, gap.area, may.area);
  }
  const expected = joints(scale);
  const parts = new Set(found.joints.map((j) => j.parts.join()));
  expect([...parts].sort()).toEqual(expected.map((j) => j.parts).sort());
  for (const joint of expected) {
    const lines = found.joints.filter((j) => j.parts.join() === joint.parts);
    near('length', sum(lines.map((j) => j.length_mm)), joint.length, may.length);
    if (joint.area !== undefined) near('area', sum(lines.map((j) => j.area_cm2)), joint.area, may.area, 1e-9);
    if (joint.flush !== undefined) expect(lines.map((j) => j.flush)).toEqual(lines.map(() => joint.flush));
  }
}

function near(what: string, value: number, exact: number, share: number, slack = 0): void {
  expect(Math.abs(value - exact), `${what}: ${value} for ${exact}`).toBeLessThanOrEqual(
    share * exact + slack,
  );
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => a + b, 0);
}

/** Every vertex of every shape shifted a little, by a fixed sequence (Weyl, golden section). */
function withNoise(model: Model, size_mm: number): Model {
  if (size_mm === 0) return model;
  let n = 0;
  const shapes = model.shapes.map((shape) => ({
    ...shape,
    positions: shape.positions.map((c) => c + (2 * ((++n * 0.6180339887498949) % 1) - 1) * size_mm),
  }));
  return { ...model, shapes };
}
