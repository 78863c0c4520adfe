/**
 * The same files through the kernel's own whole-file reader: as many solids and faces, the same size, the same volume
 * (by its exact surfaces). Our reader cuts the file into bodies, so this shows that nothing is lost on the way.
 */
import { readModel } from '@coveline/cad';
import { bounds, type Model, placedPositions } from '@coveline/model';
import init, { type OpenCascadeInstance } from 'replicad-opencascadejs';
import { beforeAll, describe, expect, it } from 'vitest';
import { openEdges, signedVolume } from '../../packages/cad/src/mesh/check.ts';
import { modelBytes, modelsThere, whyNot } from './models.ts';

/** File, and the solid entities in its text. */
const files: readonly [string, number][] = [
  ['bearing-608.step', 1],
  ['bolt-m6x25.step', 1],
  ['bottle.step', 1],
  ['coupling.step', 5],
  ['cover-lower.stp', 1],
  ['cover-upper.stp', 1],
  ['ctc-01-ap242.stp', 1],
  ['cup.step', 1],
  ['flange-dn15.step', 1],
  ['frame.step', 1],
  ['nut-m8.step', 1],
  ['profile-40x40.step', 1],
  ['pump-base.step', 1],
  ['pump-carriage.step', 1],
  ['tee-dn15.step', 1],
];

interface Exact {
  readonly solids: number;
  readonly faces: number;
  readonly volume_mm3: number;
  readonly area_mm2: number;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

describe.skipIf(!modelsThere)(`our reader against the kernel's${whyNot}`, () => {
  let oc: OpenCascadeInstance;
  beforeAll(async () => {
    oc = await init({ stdin: () => null, stdout: () => {}, stderr: () => {} });
  });

  it.each(files)(
    '%s: %i part(s), all faces, closed meshes, volume and size',
    async (file, parts) => {
      const bytes = modelBytes(file);
      const model = await readModel(bytes, file);
      const exact = readWhole(oc, bytes);
      expect(model.parts).toHaveLength(parts);
      expect(exact.solids).toBe(parts);
      expect(faceCount(model)).toBe(exact.faces);
      expect(model.notes.filter((note) => note.level === 'warning')).toEqual([]);
      for (const shape of model.shapes) {
        expect(openEdges(shape.triangles, shape.positions.length / 3)).toBe(0);
      }
      // No triangle is further than the deviation from its surface, so the volumes differ by less than that skin.
      const volume = model.parts.reduce((sum, part, i) => {
        const { triangles } = model.shapes[part.shape];
        return sum + signedVolume(placedPositions(model, i), triangles);
      }, 0);
      expect(Math.abs(volume - exact.volume_mm3)).toBeLessThan(exact.area_mm2 * model.deviation_mm);
      expect(Math.abs(volume / exact.volume_mm3 - 1)).toBeLessThan(0.02);
      const [low, high] = bounds(model);
      for (let k = 0; k < 3; k++) {
        // The kernel's box lies around the surfaces' control points, so ours is inside it, but not by much.
        expect(low[k]).toBeGreaterThan(exact.low[k] - 0.01);
        expect(high[k]).toBeLessThan(exact.high[k] + 0.01);
      }
    },
    60_000,
  );
});

const faceCount = (model: Model) =>
  model.parts.reduce((n, part) => n + (model.shapes[part.shape].cad?.faces.length ?? 0), 0);

function readWhole(oc: OpenCascadeInstance, bytes: Uint8Array): Exact {
  oc.FS.writeFile('/whole.step', bytes);
  const reader = new oc.STEPControl_Reader();
  reader.ReadFile('/whole.step');
  reader.TransferRoots(new oc.Message_ProgressRange());
  const shape = reader.OneShape();
  oc.FS.unlink('/whole.step');
  const count = (kind: keyof typeof oc.TopAbs_ShapeEnum) => {
    let n = 0;
    const walk = new oc.TopExp_Explorer(shape, oc.TopAbs_ShapeEnum[kind], oc.TopAbs_ShapeEnum.TopAbs_SHAPE);
    for (; walk.More(); walk.Next()) n++;
    return n;
  };
  const volume = new oc.GProp_GProps();
  oc.BRepGProp.VolumeProperties(shape, volume, false, false, false);
  const area = new oc.GProp_GProps();
  oc.BRepGProp.SurfaceProperties(shape, area, false, false);
  const box = new oc.Bnd_Box();
  oc.BRepBndLib.Add(shape, box, false);
  const low = box.CornerMin();
  const high = box.CornerMax();
  return {
    solids: count('TopAbs_SOLID'),
    faces: count('TopAbs_FACE'),
    volume_mm3: volume.Mass(),
    area_mm2: area.Mass(),
    low: [low.X(), low.Y(), low.Z()],
    high: [high.X(), high.Y(), high.Z()],
  };
}
