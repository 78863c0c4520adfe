/** STEP files that the modelling library of the demo machine writes: names, colours, several bodies, exact volumes. */
import { readModel } from '@coveline/cad';
import { exportSTEP, makeBox, makeCylinder, setOC } from 'replicad';
import init from 'replicad-opencascadejs';
import { beforeAll, describe, expect, it } from 'vitest';
import { signedVolume } from '../../packages/cad/src/mesh/check.ts';

describe('files written by replicad', () => {
  beforeAll(async () => {
    setOC(
      (await init({ stdin: () => null, stdout: () => {}, stderr: () => {} })) as Parameters<typeof setOC>[0],
    );
  });

  const write = async (unit?: 'MM' | 'INCH') => {
    const hopper = makeBox([0, 0, 0], [100, 80, 60]).cut(makeBox([5, 5, 5], [95, 75, 61]));
    const shaft = makeCylinder(10, 200, [50, -50, 30], [0, 1, 0]);
    const shapes = [
      { shape: hopper, name: 'Hopper', color: '#bf8040' },
      { shape: shaft, name: 'Shaft 1/2"', color: '#4080bf' },
    ];
    const blob = exportSTEP(shapes, unit ? { unit, modelUnit: 'MM' } : {});
    return new Uint8Array(await blob.arrayBuffer());
  };

  it.each([undefined, 'MM', 'INCH'] as const)('come back whole, written in %s', async (unit) => {
    const model = await readModel(await write(unit), 'machine.step');
    expect(model.notes).toEqual([]);
    expect(model.parts.map((part) => part.name)).toEqual(['Hopper', 'Shaft 1/2"']);
    // "/" joins names to ids, so inside a name the division slash stands for it there.
    expect(model.parts.map((part) => part.id)).toEqual(['Hopper', 'Shaft 1∕2"']);
    expect(model.unit).toBe(unit === 'INCH' ? 'in' : 'mm');
    const volume = model.shapes.map((shape) => signedVolume(shape.positions, shape.triangles));
    expect(volume[0]).toBeCloseTo(100 * 80 * 60 - 90 * 70 * 55, 3);
    expect(volume[1] / (Math.PI * 100 * 200)).toBeGreaterThan(0.97);
    expect(volume[1] / (Math.PI * 100 * 200)).toBeLessThanOrEqual(1);
    const shaft = model.shapes[1].cad?.faces.find((face) => face.kind === 'cylinder');
    expect(shaft?.radius_mm).toBeCloseTo(10, 6);
    expect(shaft?.hollow).toBe(false);
  });

  it('come back in the colours of the file, which are lighter than what was asked for', async () => {
    // This library passes sRGB values on as linear light, and its kernel writes them as sRGB again: 0x80 = 0.502
    // becomes 0.737 (IEC 61966-2-1) in the file. The file says so, so that is what is read.
    const model = await readModel(await write(), 'machine.step');
    const [r, g, b] = model.parts[0].color ?? [];
    const encoded = (x: number) => 1.055 * x ** (1 / 2.4) - 0.055;
    expect(r).toBeCloseTo(encoded(0xbf / 255), 3);
    expect(g).toBeCloseTo(encoded(0x80 / 255), 3);
    expect(b).toBeCloseTo(encoded(0x40 / 255), 3);
  });
});
