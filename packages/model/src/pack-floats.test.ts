import { expect, test } from 'vitest';
import { floatsBegin, floatsPrelude, packFloats, unpackFloats, withFloats } from './pack-floats.ts';

test('packed numbers read the same from any alignment', () => {
  const value = { a: new Float32Array([1, 2, 3]), b: 'ü', c: [null, { d: new Float32Array(0) }] };
  const bytes = packFloats(value);
  for (let shift = 0; shift < 4; shift++) {
    const moved = new Uint8Array(bytes.length + shift);
    moved.set(bytes, shift);
    expect(unpackFloats(moved.subarray(shift))).toEqual(value);
  }
});

test('a part is read without the numbers of the rest', () => {
  const bytes = packFloats({ a: new Float32Array([1, 2]), b: new Float32Array([3, 4, 5]) });
  const begin = floatsBegin(bytes.subarray(0, floatsPrelude));
  const header = JSON.parse(new TextDecoder().decode(bytes.slice(floatsPrelude, begin)));
  const asked: number[][] = [];
  const read = (first: number, count: number) => {
    asked.push([first, count]);
    return new Float32Array(bytes.slice(begin + 4 * first, begin + 4 * (first + count)).buffer);
  };
  expect(withFloats(header.b, read)).toEqual(new Float32Array([3, 4, 5]));
  expect(asked).toEqual([[2, 3]]);
});

test('other bytes are refused with what they begin with', () => {
  const other = new TextEncoder().encode('PNG and more, not ours at all');
  expect(() => unpackFloats(other)).toThrow('starts with "PNG and "');
});
