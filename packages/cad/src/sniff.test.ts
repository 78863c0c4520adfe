import { describe, expect, it } from 'vitest';
import { boxFile } from '../fixtures/stepText.ts';
import { asciiStl, binaryStl, glb, tetrahedron } from '../fixtures/triangles.ts';
import { formats } from './formats.ts';
import { sniff } from './sniff.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const zip = new Uint8Array([0x50, 0x4b, 3, 4, 20, 0]);

describe('format of a file', () => {
  it.each([
    ['step', bytes(boxFile())],
    ['step', bytes(`/* a comment first */\n\n${boxFile()}`)],
    ['stl', bytes(asciiStl('a', tetrahedron))],
    ['stl', binaryStl('solid a', tetrahedron)],
    ['obj', bytes('# made by hand\nv 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n')],
    ['3mf', zip],
    ['glb', glb(tetrahedron, [{ mesh: 0 }])],
  ])('is %s by its content, whatever the name', (format, data) => {
    for (const name of ['x', 'x.step', 'x.stl', 'X.OBJ', 'x.pdf']) expect(sniff(data, name)).toBe(format);
  });

  it('is taken from the name where the format has no sign of its own', () => {
    expect(sniff(bytes('?'), 'Part.V2.STL')).toBe('stl');
    expect(sniff(bytes('?'), 'part.obj')).toBe('obj');
  });

  it('is not believed from the name where the format begins with its own sign', () => {
    for (const { id, extensions } of formats) {
      if (id === 'stl' || id === 'obj') continue;
      for (const extension of extensions) {
        expect(() => sniff(bytes('?'), `part.${extension}`)).toThrow(
          /is named as a .* but does not begin like one/,
        );
      }
    }
  });

  it.each([
    ['IGES', bytes(`${'Start of a drawing'.padEnd(72)}S      1\n`)],
    ['compound document', new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1])],
    ['gzip', new Uint8Array([0x1f, 0x8b, 8, 0])],
    ['glTF', bytes('{ "asset": { "version": "2.0" }, "buffers": [{ "uri": "a.bin" }] }')],
    ['PLY', bytes('ply\nformat ascii 1.0\n')],
    ['PDF', bytes('%PDF-1.7\n')],
    ['web page', bytes('<!DOCTYPE html><html></html>')],
  ])('tells what a %s file is and what to give instead', (word, data) => {
    expect(() => sniff(data, 'machine.step')).toThrow(
      new RegExp(
        `^"machine\\.step" is an? .*${word}.*, which is not read; .+\\.$|^"machine\\.step" is .*${word}`,
      ),
    );
  });
});
