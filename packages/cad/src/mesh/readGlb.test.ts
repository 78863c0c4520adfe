import { bounds } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { glb, type Triangle, tetrahedron } from '../../fixtures/triangles.ts';
import { readModel } from '../read.ts';
import { openEdges, signedVolume } from './check.ts';

const metres = tetrahedron.map((t) => t.map((p) => p.map((x) => x / 1000))) as unknown as Triangle[];

const failure = async (bytes: Uint8Array) =>
  readModel(bytes, 'part.glb').then(
    () => expect.fail('it was read'),
    (error) => error as { code: string; message: string },
  );

describe('GLB', () => {
  it('reads nodes as parts: metres to millimetres, names, transforms, linear colours to sRGB', async () => {
    const model = await readModel(
      glb(
        metres,
        [
          { name: 'Machine', children: [1, 2] },
          { name: 'Corner', mesh: 0, translation: [1, 0, 0] },
          { name: 'Mirror', mesh: 0, scale: [-2, 2, 2] },
        ],
        { colour: [0.5225215539683921, 0.21404114048223255, 0] },
      ),
      'a.glb',
    );
    expect(model.unit).toBe('m');
    expect(model.parts.map((part) => part.id)).toEqual(['Machine/Corner', 'Machine/Mirror']);
    // sRGB 0.75 is 0.5225 in linear light and 0.5 is 0.2140 (IEC 61966-2-1).
    const [r, g, b] = model.parts[0].color ?? [];
    expect(r).toBeCloseTo(0.75, 6);
    expect(g).toBeCloseTo(0.5, 6);
    expect(b).toBe(0);
    const [low, high] = bounds(model);
    expect(low[0]).toBeCloseTo(-20, 5);
    expect(high[0]).toBeCloseTo(1010, 4);
    const volumes = model.shapes.map((s) => signedVolume(s.positions, s.triangles));
    expect(volumes[0]).toBeCloseTo(1000 / 6, 3);
    expect(volumes[1]).toBeCloseTo(8000 / 6, 2);
    expect(model.shapes.every((s) => openEdges(s.triangles, s.positions.length / 3) === 0)).toBe(true);
  });

  it('leaves points and lines out, and says so or refuses where nothing else is there', async () => {
    expect((await failure(glb(metres, [{ mesh: 0 }], { mode: 1 }))).code).toBe('noGeometry');
  });

  it('tells in one sentence what is wrong', async () => {
    const whole = glb(metres, [{ mesh: 0 }]);
    expect((await failure(whole.slice(0, -30))).code).toBe('truncated');
    const loop = glb(metres, [{ children: [1] }, { children: [2] }, { children: [1] }]);
    expect((await failure(loop)).message).toBe(
      'Node 1 in "part.glb" is missing or has two parents; export the file again.',
    );
    const ring = glb(metres, [{ mesh: 0 }, { children: [2] }, { children: [1] }]);
    expect((await failure(ring)).code).toBe('hostile');
    const packed = glb(metres, [{ mesh: 0 }], {
      json: { extensionsRequired: ['KHR_draco_mesh_compression'] },
    });
    expect((await failure(packed)).message).toContain('needs the glTF extension KHR_draco_mesh_compression');
    const outside = glb(metres, [{ mesh: 0 }], { json: { buffers: [{ byteLength: 144, uri: 'far.bin' }] } });
    expect((await failure(outside)).message).toContain('keeps its geometry in another file (far.bin)');
  });
});
