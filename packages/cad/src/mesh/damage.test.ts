/** Damaged mesh files and random bytes: a model or one sentence, never a crash, never a hang. */
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { asciiStl, binaryStl, glb, tetrahedron } from '../../fixtures/triangles.ts';
import { CadError } from '../error.ts';
import { readModel } from '../read.ts';

/** Mulberry32, a small seeded generator (public domain). */
function random(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const mesh =
  '<mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="10" y="0" z="0"/><vertex x="0" y="10" z="0"/><vertex x="0" y="0" z="10"/></vertices><triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/><triangle v1="0" v2="3" v3="2"/><triangle v1="1" v2="2" v3="3"/></triangles></mesh>';
const model = `<model unit="millimeter"><resources><object id="1" name="A">${mesh}</object></resources><build><item objectid="1" transform="1 0 0 0 1 0 0 0 1 5 5 5"/></build></model>`;

const wholes: Record<string, Uint8Array> = {
  'a.stl': strToU8(asciiStl('a', tetrahedron)),
  'b.stl': binaryStl('b', tetrahedron),
  'c.obj': strToU8('o c\nv 0 0 0\nv 1 0 0\nv 0 1 0\nv 0 0 1\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n'),
  'd.3mf': zipSync({ '3D/3dmodel.model': strToU8(model) }, { level: 0 }),
  'e.glb': glb(tetrahedron, [
    { name: 'root', children: [1] },
    { name: 'e', mesh: 0, translation: [1, 2, 3] },
  ]),
};

describe.each(Object.keys(wholes))('%s', (name) => {
  it('whole, it is read', async () => {
    expect((await readModel(wholes[name], name)).parts).toHaveLength(1);
  });

  it('with flipped bits, cut, or with a piece missing, it is read or refused in one sentence (seeds 1 to 300)', async () => {
    for (let seed = 1; seed <= 300; seed++) {
      const next = random(seed);
      const pick = (n: number) => Math.floor(next() * n);
      let bytes = wholes[name].slice();
      if (seed % 3 === 0) bytes = bytes.slice(0, pick(bytes.length));
      else if (seed % 3 === 1) {
        const at = pick(bytes.length);
        bytes = new Uint8Array([...bytes.slice(0, at), ...bytes.slice(at + 1 + pick(20))]);
      } else for (let k = 0; k <= pick(4); k++) bytes[pick(bytes.length)] ^= 1 << pick(8);
      try {
        const { shapes } = await readModel(bytes, name);
        for (const shape of shapes) expect(shape.positions.every(Number.isFinite)).toBe(true);
      } catch (error) {
        if (!(error instanceof CadError)) throw new Error(`seed ${seed} of ${name}`, { cause: error });
        expect(error.message).toMatch(/^[^\n]+\.$/);
      }
    }
  }, 60_000);
});

it.each(['x.step', 'x.stl', 'x.obj', 'x.3mf', 'x.glb', 'x'])(
  'random bytes called %s are refused (seeds 1 to 20)',
  async (name) => {
    for (let seed = 1; seed <= 20; seed++) {
      const next = random(seed);
      const bytes = new Uint8Array(1 + Math.floor(next() * 3000)).map(() => Math.floor(next() * 256));
      await expect(readModel(bytes, name)).rejects.toBeInstanceOf(CadError);
    }
  },
);
