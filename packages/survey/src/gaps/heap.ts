/** A queue that hands out the smallest key first, equal keys by value. */
export interface Heap {
  readonly keys: number[];
  readonly values: number[];
}

export function newHeap(): Heap {
  return { keys: [], values: [] };
}

export function push({ keys, values }: Heap, key: number, value: number): void {
  let i = keys.length;
  keys.push(key);
  values.push(value);
  while (i > 0) {
    const up = (i - 1) >> 1;
    if (!before(key, value, keys[up], values[up])) break;
    keys[i] = keys[up];
    values[i] = values[up];
    i = up;
  }
  keys[i] = key;
  values[i] = value;
}

export function pop({ keys, values }: Heap): { key: number; value: number } | undefined {
  if (keys.length === 0) return undefined;
  const top = { key: keys[0], value: values[0] };
  const key = keys.pop()!;
  const value = values.pop()!;
  const n = keys.length;
  if (n === 0) return top;
  let i = 0;
  for (;;) {
    let down = 2 * i + 1;
    if (down >= n) break;
    if (down + 1 < n && before(keys[down + 1], values[down + 1], keys[down], values[down])) down++;
    if (!before(keys[down], values[down], key, value)) break;
    keys[i] = keys[down];
    values[i] = values[down];
    i = down;
  }
  keys[i] = key;
  values[i] = value;
  return top;
}

function before(k: number, v: number, key: number, value: number): boolean {
  return k < key || (k === key && v < value);
}
