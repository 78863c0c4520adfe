import { readModel } from '@coveline/cad';
import { bounds, type Model, type Part } from '@coveline/model';
import { measureVolume } from 'replicad';
import { beforeAll, describe, expect, it } from 'vitest';
import { startKernel } from './kernel.ts';
import { machine } from './machine.ts';
import { type Parameters, revisionA, revisionB } from './parameters.ts';
import { stepFileName } from './project.ts';
import { writeStep } from './step.ts';
import { type PlacedBody, placedBodies } from './tree.ts';

const read = new Map<Parameters, { model: Model; bodies: PlacedBody[] }>();

beforeAll(async () => {
  await startKernel();
  for (const p of [revisionA, revisionB]) {
    const root = machine(p);
    const step = new TextEncoder().encode(writeStep(root, stepFileName(p)));
    read.set(p, { model: await readModel(step, stepFileName(p)), bodies: placedBodies(root) });
  }
}, 120_000);

describe.each([revisionA, revisionB])('revision $revision, read back', (p) => {
  it('has the drawn hierarchy: the same part ids', () => {
    const { model, bodies } = read.get(p)!;
    expect(model.parts.map((part) => part.id).sort()).toEqual(bodies.map((b) => b.id).sort());
    expect(model.notes).toEqual([]);
    expect(model.unit).toBe('mm');
  });

  it('keeps one shape for repeated parts', () => {
    const { model, bodies } = read.get(p)!;
    for (const name of new Set(bodies.map((b) => b.name))) {
      const shapes = new Set(model.parts.filter((part) => part.name === name).map((part) => part.shape));
      expect(shapes.size, name).toBe(1);
    }
  });

  it('keeps the colours', () => {
    const { bodies } = read.get(p)!;
    for (const b of bodies) {
      const hex = partOf(p, b).color!.map((c) =>
        Math.round(c * 255)
          .toString(16)
          .padStart(2, '0'),
      );
      expect(`#${hex.join('')}`, b.id).toBe(b.body.color);
    }
  });

  it('keeps the volume of every part within what its triangles cut off', () => {
    const { model, bodies } = read.get(p)!;
    const seen = new Set<PlacedBody['body']>();
    for (const b of bodies.filter((c) => !seen.has(c.body) && seen.add(c.body))) {
      const { positions, triangles } = model.shapes[partOf(p, b).shape];
      const exact = measureVolume(b.body.shape);
      // Chords of 0.1 mm or 20 degrees: up to 3 % of a thin round bar, more of a thin pipe.
      expect(Math.abs(meshVolume(positions, triangles) / exact - 1), b.id).toBeLessThan(0.05);
    }
  });

  it('stands on z = 0 and is as large as its brief says', () => {
    const [low, high] = bounds(read.get(p)!.model);
    expect(low[2]).toBeCloseTo(0, 6);
    expect(high[2]).toBeCloseTo(1400, -1);
    expect(high[0] - low[0]).toBeLessThanOrEqual(1200);
    expect(high[1] - low[1]).toBeLessThanOrEqual(750);
  });
});

function partOf(p: Parameters, b: PlacedBody): Part {
  const part = read.get(p)!.model.parts.find((c) => c.id === b.id);
  if (!part) throw new Error(`The model has no part "${b.id}".`);
  return part;
}

/** Signed volume by the divergence theorem, mm3. */
function meshVolume(xyz: Float64Array, triangles: Uint32Array): number {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] * 3, triangles[t + 1] * 3, triangles[t + 2] * 3];
    sum +=
      xyz[a] * (xyz[b + 1] * xyz[c + 2] - xyz[b + 2] * xyz[c + 1]) -
      xyz[a + 1] * (xyz[b] * xyz[c + 2] - xyz[b + 2] * xyz[c]) +
      xyz[a + 2] * (xyz[b] * xyz[c + 1] - xyz[b + 1] * xyz[c]);
  }
  return sum / 6;
}
