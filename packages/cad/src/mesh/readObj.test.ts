import { bounds } from '@coveline/model';
import { describe, expect, it } from 'vitest';
import { readModel } from '../read.ts';
import { openEdges, signedVolume } from './check.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const failure = async (text: string) =>
  readModel(bytes(text), 'part.obj').then(
    () => expect.fail('it was read'),
    (error) => error as { code: string; message: string },
  );

/** A box with quadrilateral faces; corners numbered with bit 1 for x, 2 for y, 4 for z. */
function box(x: number, y: number, z: number, first = 1): string {
  let text = '';
  for (let i = 0; i < 8; i++) text += `v ${i & 1 ? x : 0} ${i & 2 ? y : 0} ${i & 4 ? z : 0}\n`;
  const loops = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  for (const loop of loops) text += `f ${loop.map((i) => `${i + first}//1`).join(' ')}\n`;
  return text;
}

describe('OBJ', () => {
  it('makes a part of each object, keeps names, and cuts quadrilaterals', async () => {
    const text = `# made by hand\no lid\n${box(1, 2, 3)}o base plate\n${box(4, 5, 6, 9)}`;
    const model = await readModel(bytes(text), 'two.obj', { unit: 'cm' });
    expect(model.parts.map((part) => part.name)).toEqual(['lid', 'base plate']);
    expect(model.shapes.map((s) => openEdges(s.triangles, s.positions.length / 3))).toEqual([0, 0]);
    expect(signedVolume(model.shapes[0].positions, model.shapes[0].triangles)).toBeCloseTo(6000, 6);
    expect(bounds(model)[1]).toEqual([40, 50, 60]);
  });

  it('takes groups for parts where there are no objects, and the file name where there is neither', async () => {
    const grouped = await readModel(bytes(`g a\n${box(1, 1, 1)}g b\n${box(1, 1, 2, 9)}`), 'x.obj');
    expect(grouped.parts.map((part) => part.name)).toEqual(['a', 'b']);
    const bare = await readModel(bytes(box(1, 1, 1)), 'dir/bare.obj');
    expect(bare.parts[0].name).toBe('bare');
  });

  it('counts negative indices from the end and joins continued lines', async () => {
    const text = 'v 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\nf -4 \\\n -2 -3\nf -4 -3 -1\nf -4 -1 -2\nf -3 -2 -1\n';
    const model = await readModel(bytes(text), 'x.obj');
    const [shape] = model.shapes;
    expect(openEdges(shape.triangles, 4)).toBe(0);
    expect(signedVolume(shape.positions, shape.triangles)).toBeCloseTo(1 / 6, 12);
  });

  it('cuts a polygon with a re-entrant corner without leaving it, seen from either side', async () => {
    // An L of area 3 in a plane that is not square to an axis: (x, y) becomes (x, y, y).
    const l = [
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [1, 2],
      [0, 2],
    ];
    const text = l.map(([x, y]) => `v ${x} ${y} ${y}\n`).join('');
    for (const loop of ['1 2 3 4 5 6', '6 5 4 3 2 1']) {
      const model = await readModel(bytes(`${text}f ${loop}\n`), 'l.obj');
      const { positions: p, triangles: t } = model.shapes[0];
      let area = 0;
      let up = 0;
      for (let i = 0; i < t.length; i += 3) {
        const [a, b, c] = [t[i] * 3, t[i + 1] * 3, t[i + 2] * 3];
        const twice = (p[b] - p[a]) * (p[c + 1] - p[a + 1]) - (p[c] - p[a]) * (p[b + 1] - p[a + 1]);
        up += twice / 2;
        area += Math.abs(twice) / 2;
      }
      expect(area).toBeCloseTo(3, 12);
      expect(up).toBeCloseTo(loop.startsWith('1') ? 3 : -3, 12);
    }
  });

  it('tells in one sentence what is wrong and on which line', async () => {
    expect((await failure('v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 9\n')).message).toBe(
      'Line 4 of "part.obj" names vertex 9, of which there are 3 so far; export the file again.',
    );
    expect((await failure('v 0 0 0\nv 1 x 0\n')).message).toBe(
      'Line 2 of "part.obj" has a vertex without three numbers; export the file again.',
    );
    expect((await failure('v 0 0 0\nv 1 0 0\n')).code).toBe('noGeometry');
    expect((await failure('v 0 0 0\nv 1e30 0 0\nv 0 1 0\nf 1 2 3\n')).code).toBe('damaged');
  });
});
