/** Lowest and highest xyz of many things, in a tree of eights: asks quickly which of them stand near a place. */
export interface BoxTree {
  /** Six per thing, in the order in which they were given: lowest xyz, highest xyz, mm. */
  readonly boxes: Float64Array;
  /** Things in an order that keeps neighbours together; eight at a time form a group of the lowest level. */
  readonly order: Uint32Array;
  /** Boxes of the groups, six numbers each, from the lowest level up to a single one. */
  readonly levels: readonly Float64Array[];
}

/** Members of a group, and groups of a larger group. */
export const groupSize = 8;

export function boxTreeOf(boxes: Float64Array): BoxTree {
  const order = alongCurve(boxes);
  const levels: Float64Array[] = [];
  let below = (i: number) => order[i] * 6;
  let source = boxes;
  let count = order.length;
  do {
    const groups = Math.ceil(count / groupSize);
    const level = new Float64Array(groups * 6);
    for (let g = 0; g < groups; g++) {
      level.fill(Infinity, g * 6, g * 6 + 3).fill(-Infinity, g * 6 + 3, g * 6 + 6);
      const end = Math.min(count, (g + 1) * groupSize);
      for (let i = g * groupSize; i < end; i++) grow(level, g * 6, source, below(i));
    }
    levels.push(level);
    source = level;
    below = (i) => i * 6;
    count = groups;
  } while (count > 1);
  return { boxes, order, levels };
}

const stack: number[] = [];

/**
 * Calls `visit` with the number of every lowest group that meets the box, six numbers from `at` on, until it says
 * true; then the answer is true. `enter(level, group)` may refuse a group with all that is in it.
 */
export function visitGroups(
  { levels }: BoxTree,
  box: Float64Array,
  at: number,
  enter: (level: number, group: number) => boolean,
  visit: (group: number) => boolean,
): boolean {
  const bottom = stack.length;
  stack.push(levels.length - 1, 0);
  while (stack.length > bottom) {
    const group = stack.pop()!;
    const level = stack.pop()!;
    if (!meet(levels[level], group * 6, box, at) || !enter(level, group)) continue;
    if (level === 0) {
      if (!visit(group)) continue;
      stack.length = bottom;
      return true;
    }
    const end = Math.min(levels[level - 1].length / 6, (group + 1) * groupSize);
    for (let child = group * groupSize; child < end; child++) stack.push(level - 1, child);
  }
  return false;
}

const always = () => true;

/** Calls `visit` with every thing whose box meets the given one, until it says true; then the answer is true. */
export function visitBoxes(
  tree: BoxTree,
  box: Float64Array,
  at: number,
  visit: (thing: number) => boolean,
): boolean {
  const { boxes, order } = tree;
  return visitGroups(tree, box, at, always, (group) => {
    const end = Math.min(order.length, (group + 1) * groupSize);
    for (let i = group * groupSize; i < end; i++) {
      if (meet(boxes, order[i] * 6, box, at) && visit(order[i])) return true;
    }
    return false;
  });
}

export function meet(a: Float64Array, i: number, b: Float64Array, j: number): boolean {
  return (
    a[i] <= b[j + 3] &&
    b[j] <= a[i + 3] &&
    a[i + 1] <= b[j + 4] &&
    b[j + 1] <= a[i + 4] &&
    a[i + 2] <= b[j + 5] &&
    b[j + 2] <= a[i + 5]
  );
}

function grow(to: Float64Array, i: number, from: Float64Array, j: number): void {
  for (let k = 0; k < 3; k++) {
    if (from[j + k] < to[i + k]) to[i + k] = from[j + k];
    if (from[j + 3 + k] > to[i + 3 + k]) to[i + 3 + k] = from[j + 3 + k];
  }
}

/** Numbers of the boxes in the order in which Morton's curve passes their middles: 10 bits an axis, radix sort. */
function alongCurve(boxes: Float64Array): Uint32Array {
  const n = boxes.length / 6;
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < 3; k++) {
      const c = boxes[i * 6 + k] + boxes[i * 6 + 3 + k];
      if (c < low[k]) low[k] = c;
      if (c > high[k]) high[k] = c;
    }
  }
  const scale = 1023 / Math.max(1e-9, high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  const keys = new Uint32Array(n);
  let from = new Uint32Array(n);
  for (let i = 0; i < n; i++) {
    let key = 0;
    for (let k = 0; k < 3; k++)
      key |= spread((boxes[i * 6 + k] + boxes[i * 6 + 3 + k] - low[k]) * scale) << k;
    keys[i] = key;
    from[i] = i;
  }
  let to = new Uint32Array(n);
  for (let shift = 0; shift < 30; shift += 10) {
    const start = new Uint32Array(1025);
    for (let i = 0; i < n; i++) start[((keys[i] >>> shift) & 1023) + 1]++;
    for (let d = 0; d < 1024; d++) start[d + 1] += start[d];
    for (let i = 0; i < n; i++) to[start[(keys[from[i]] >>> shift) & 1023]++] = from[i];
    [from, to] = [to, from];
  }
  return from;
}

/** The bits of a number below 1024 with two zeros between each. */
function spread(value: number): number {
  let x = value & 1023;
  x = (x | (x << 16)) & 0x30000ff;
  x = (x | (x << 8)) & 0x300f00f;
  x = (x | (x << 4)) & 0x30c30c3;
  return (x | (x << 2)) & 0x9249249;
}
