import type { Part21Index } from './scan.ts';

export interface Dangling {
  /** References to instances that the file does not define. */
  readonly count: number;
  readonly first: number;
  readonly user: number;
}

/** Looks at every reference in the file. */
export function danglingReferences(index: Part21Index): Dangling {
  const { bytes, ids, starts, ends } = index;
  const defined = lookup(ids);
  let count = 0;
  let first = -1;
  let user = -1;
  for (let i = 0; i < ids.length; i++) {
    for (let p = starts[i]; p < ends[i]; p++) {
      const c = bytes[p];
      if (c === 39) {
        p++;
        while (p < ends[i] && bytes[p] !== 39) p++;
      } else if (c === 35) {
        let id = 0;
        for (p++; bytes[p] >= 48 && bytes[p] <= 57; p++) id = id * 10 + bytes[p] - 48;
        p--;
        if (!defined(id) && count++ === 0) {
          first = id;
          user = ids[i];
        }
      }
    }
  }
  return { count, first, user };
}

/** A table where the numbers are dense, which they nearly always are; a set where they are not. */
function lookup(ids: Uint32Array): (id: number) => boolean {
  const highest = ids.length > 0 ? ids[ids.length - 1] : 0;
  if (highest < ids.length * 16 + 1e6) {
    const table = new Uint8Array(highest + 1);
    for (const id of ids) table[id] = 1;
    return (id) => table[id] === 1;
  }
  const set = new Set(ids);
  return (id) => set.has(id);
}
