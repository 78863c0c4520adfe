import { bounds } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { asciiStl, binaryStl, tetrahedron } from '../../fixtures/triangles.ts';
import { readModel } from '../read.ts';
import { openEdges, signedVolume } from './check.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const failure = async (data: Uint8Array, name = 'part.stl') =>
  readModel(data, name).then(
    () => expect.fail('it was read'),
    (error) => error as { code: string; message: string },
  );

describe('STL', () => {
  it('reads ASCII: one part per solid, vertices joined, unit told', async () => {
    const model = await readModel(
      bytes(asciiStl('lid', tetrahedron) + asciiStl('base plate', tetrahedron)),
      'a.stl',
    );
    expect(model.parts.map((part) => part.name)).toEqual(['lid', 'base plate']);
    // The two solids are equal, so they share one shape.
    expect(model.shapes).toHaveLength(1);
    const [shape] = model.shapes;
    expect(shape.positions.length / 3).toBe(4);
    expect(openEdges(shape.triangles, 4)).toBe(0);
    // A corner of a cube with edge 10: a sixth of its volume.
    expect(signedVolume(shape.positions, shape.triangles)).toBeCloseTo(1000 / 6, 9);
    expect(shape.cad).toBeUndefined();
    expect(model.deviation_mm).toBe(0);
    expect(model.notes.map((note) => note.text)).toEqual([
      'The format states no length unit; the file was read as millimetres, so check a known size.',
    ]);
  });

  it('reads binary, also where its header starts with "solid", in the unit that it is told', async () => {
    const model = await readModel(binaryStl('solid bracket', tetrahedron), 'a.stl', { unit: 'in' });
    expect(model.parts[0].name).toBe('bracket');
    expect(model.unit).toBe('in');
    expect(model.notes).toEqual([]);
    expect(bounds(model)[1]).toEqual([254, 254, 254]);
  });

  it('turns over a closed mesh that is wound inside out, and says so', async () => {
    const inside = tetrahedron.map(([a, b, c]) => [a, c, b] as (typeof tetrahedron)[number]);
    const model = await readModel(binaryStl('', inside), 'wound.stl');
    const [shape] = model.shapes;
    expect(signedVolume(shape.positions, shape.triangles)).toBeGreaterThan(0);
    expect(model.parts[0].name).toBe('wound');
    expect(model.notes.some((note) => note.text.includes('inside out'))).toBe(true);
  });

  it('tells how many edges of an open mesh have no neighbour', async () => {
    const model = await readModel(binaryStl('', tetrahedron.slice(1)), 'open.stl');
    expect(model.notes.find((note) => note.level === 'warning')?.text).toBe(
      'The surface of solid "open" does not close: 3 edges of its triangles have no neighbour, or more than one.',
    );
  });

  it('notices a cut ASCII file, wherever it is cut', async () => {
    const whole = asciiStl('lid', tetrahedron);
    const cut = await failure(bytes(whole.slice(0, whole.indexOf('endsolid'))));
    expect(cut.code).toBe('truncated');
    expect(cut.message).toBe(
      '"part.stl" stops after 4 triangles without its "endsolid" line; copy or export it again.',
    );
    for (let at = 20; at < whole.length - 12; at += 7) {
      expect(['truncated', 'damaged']).toContain((await failure(bytes(whole.slice(0, at)))).code);
    }
  });

  it('notices a cut binary file, coordinates that are no numbers, and files without triangles', async () => {
    const whole = binaryStl('', tetrahedron);
    expect((await failure(whole.slice(0, -20))).message).toBe(
      '"part.stl" announces 4 triangles but ends after 3; copy or export it again.',
    );
    new DataView(whole.buffer).setFloat32(84 + 12, Number.NaN, true);
    const bad = await failure(whole);
    expect(bad.code).toBe('damaged');
    expect(bad.message).toContain('has the coordinate NaN');
    expect(
      (await failure(bytes('solid x\nfacet normal 0 0 1\nouter loop\nvertex 0 0 1e400\n'))).message,
    ).toContain('Line 4 of "part.stl" has the coordinate "1e400", which is no number');
    expect((await failure(bytes('solid empty\nendsolid empty\n'))).code).toBe('noGeometry');
  });
});
