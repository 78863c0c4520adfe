import { bounds } from '@coveline/model';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readModel } from '../read.ts';
import { openEdges, signedVolume } from './check.ts';

const mesh = `<mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="10" y="0" z="0"/><vertex x="0" y="10" z="0"/><vertex x="0" y="0" z="10"/></vertices><triangles><triangle v1="0" v2="2" v3="1"/><triangle v1="0" v2="1" v3="3"/><triangle v1="0" v2="3" v3="2"/><triangle v1="1" v2="2" v3="3"/></triangles></mesh>`;

const rels = `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r" Target="/3D/root.model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

function file(
  resources: string,
  build: string,
  unit = 'millimeter',
  more: Record<string, string> = {},
): Uint8Array {
  const model = `<?xml version="1.0" encoding="UTF-8"?><model unit="${unit}" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06"><resources>${resources}</resources><build>${build}</build></model>`;
  const members: Record<string, Uint8Array> = {
    '_rels/.rels': strToU8(rels),
    '3D/root.model': strToU8(model),
  };
  for (const [name, text] of Object.entries(more)) members[name] = strToU8(text);
  return zipSync(members);
}

const failure = async (bytes: Uint8Array) =>
  readModel(bytes, 'part.3mf').then(
    () => expect.fail('it was read'),
    (error) => error as { code: string; message: string },
  );

describe('3MF', () => {
  it('reads names, colours, components and transforms in the unit of the file', async () => {
    const resources = `<basematerials id="9"><base name="red" displaycolor="#FF8000FF"/></basematerials><object id="1" name="Corner" pid="9" pindex="0">${mesh}</object><object id="2" name="Pair"><components><component objectid="1"/><component objectid="1" transform="-1 0 0 0 1 0 0 0 1 5 0 0"/></components></object>`;
    const model = await readModel(
      file(resources, '<item objectid="2" transform="0 1 0 -1 0 0 0 0 1 1 2 3"/>', 'centimeter'),
      'pair.3mf',
    );
    expect(model.unit).toBe('cm');
    expect(model.parts.map((part) => part.id)).toEqual(['Pair/Corner', 'Pair/Corner#2']);
    expect(model.parts[0].color).toEqual([1, 128 / 255, 0]);
    // Row vectors: x goes to +y, y to -x, then the shift; 1 cm is 10 mm.
    expect([...model.parts[0].placement]).toEqual([0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1, 0, 10, 20, 30, 1]);
    // The mirrored component is a shape of its own, still wound from the air.
    expect(model.shapes).toHaveLength(2);
    for (const shape of model.shapes) {
      expect(openEdges(shape.triangles, 4)).toBe(0);
      expect(signedVolume(shape.positions, shape.triangles)).toBeCloseTo(100 ** 3 / 6, 3);
    }
    expect(bounds(model)).toEqual([
      [-90, -30, 30],
      [10, 120, 130],
    ]);
  });

  it('follows objects into other model parts', async () => {
    const other = `<model unit="millimeter"><resources><object id="7" name="Far">${mesh}</object></resources><build/></model>`;
    const model = await readModel(
      file('', '<item objectid="7" p:path="/3D/other.model"/>', 'millimeter', { '3D/other.model': other }),
      'far.3mf',
    );
    expect(model.parts.map((part) => part.id)).toEqual(['Far']);
  });

  it('leaves supports out and says so', async () => {
    const resources = `<object id="1" name="Part">${mesh}</object><object id="2" type="support">${mesh}</object>`;
    const model = await readModel(file(resources, '<item objectid="1"/><item objectid="2"/>'), 'a.3mf');
    expect(model.parts).toHaveLength(1);
    expect(model.notes.map((note) => note.text)).toEqual(['Objects of type "support" are left out.']);
  });

  it('refuses hostile archives', async () => {
    const bomb = zipSync({ '3D/3dmodel.model': new Uint8Array(20_000_000) }, { level: 9 });
    expect(bomb.length).toBeLessThan(40_000);
    const refused = await failure(bomb);
    expect(refused.code).toBe('hostile');
    expect(refused.message).toContain('would unpack');
    const loop = '<object id="1" name="A"><components><component objectid="1"/></components></object>';
    expect((await failure(file(loop, '<item objectid="1"/>'))).message).toBe(
      'Object "A" in "part.3mf" contains itself; export it again.',
    );
  });

  it('passes over empty objects, however often they are repeated', async () => {
    let resources = `<object id="0" name="Real">${mesh}</object><object id="1"><components/></object>`;
    for (let i = 2; i < 60; i++) {
      const twice = `<component objectid="${i - 1}"/>`.repeat(3);
      resources += `<object id="${i}"><components>${twice}</components></object>`;
    }
    const model = await readModel(file(resources, '<item objectid="59"/><item objectid="0"/>'), 'a.3mf');
    expect(model.parts.map((part) => part.id)).toEqual(['Real']);
  });

  it('tells in one sentence what is broken', async () => {
    const good = file(`<object id="1">${mesh}</object>`, '<item objectid="1"/>');
    expect((await failure(good.slice(0, good.length >> 1))).code).toBe('damaged');
    expect((await failure(zipSync({ 'letter.txt': strToU8('hello') }))).code).toBe('unknownFormat');
    expect((await failure(file('<object id="1"><mesh>', '<item objectid="1"/>'))).message).toMatch(
      /^"3D\/root.model" in "part.3mf" is damaged: .*; export the file again\.$/,
    );
    expect((await failure(file('', '<item objectid="4"/>'))).message).toContain('places object 4');
    const wild = `<object id="1">${mesh.replace('v3="1"', 'v3="77"')}</object>`;
    expect((await failure(file(wild, '<item objectid="1"/>'))).message).toContain('names vertex 78 of 4');
  });
});
