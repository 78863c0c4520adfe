/**
 * A queue that hands out entries of the smallest key first, as exact as the width of its buckets; within a bucket the
 * first one in comes out first. An entry is a cell with the cell it is come to from.
 */
export interface BucketQueue {
  readonly width: number;
  /** Per bucket: its first entry, -1 for none, and its last one. */
  head: Int32Array;
  tail: Int32Array;
  /** Per entry: the next one in its bucket, or among the free ones. */
  next: Int32Array;
  cell: Int32Array;
  from: Int32Array;
  key: Float32Array;
  used: number;
  free: number;
  /** No bucket below this one holds an entry. */
  lowest: number;
}

export function newBucketQueue(width: number): BucketQueue {
  return {
    width,
    head: new Int32Array(1024).fill(-1),
    tail: new Int32Array(1024),
    next: new Int32Array(4096),
    cell: new Int32Array(4096),
    from: new Int32Array(4096),
    key: new Float32Array(4096),
    used: 0,
    free: -1,
    lowest: 0,
  };
}

/** Keys below 0 count as 0. */
export function push(q: BucketQueue, key: number, cell: number, from: number): void {
  let entry = q.free;
  if (entry >= 0) q.free = q.next[entry];
  else {
    if (q.used === q.next.length) growEntries(q);
    entry = q.used++;
  }
  const bucket = key > 0 ? (key / q.width) | 0 : 0;
  if (bucket >= q.head.length) growBuckets(q, bucket);
  q.key[entry] = key;
  q.cell[entry] = cell;
  q.from[entry] = from;
  q.next[entry] = -1;
  if (q.head[bucket] < 0) q.head[bucket] = entry;
  else q.next[q.tail[bucket]] = entry;
  q.tail[bucket] = entry;
  if (bucket < q.lowest) q.lowest = bucket;
}

/** The entry taken out, -1 when there is none. Its key, cell and from may be read until the next push. */
export function pop(q: BucketQueue): number {
  while (q.lowest < q.head.length && q.head[q.lowest] < 0) q.lowest++;
  if (q.lowest === q.head.length) return -1;
  const entry = q.head[q.lowest];
  q.head[q.lowest] = q.next[entry];
  q.next[entry] = q.free;
  q.free = entry;
  return entry;
}

function growEntries(q: BucketQueue): void {
  const size = q.next.length * 2;
  q.next = widened(q.next, new Int32Array(size));
  q.cell = widened(q.cell, new Int32Array(size));
  q.from = widened(q.from, new Int32Array(size));
  q.key = widened(q.key, new Float32Array(size));
}

function growBuckets(q: BucketQueue, bucket: number): void {
  const size = Math.max(bucket + 1, q.head.length * 2);
  q.head = widened(q.head, new Int32Array(size).fill(-1));
  q.tail = widened(q.tail, new Int32Array(size));
}

function widened<A extends Int32Array | Float32Array>(old: A, wide: A): A {
  wide.set(old);
  return wide;
}
