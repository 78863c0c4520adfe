/** Which part holds a point: signed crossings of one ray to the outside, a part after the other. */
import { crossings } from './cast';
import { CHILDREN, FAR, nodeAt } from './layout';
import { aim, choose, dx, dy, ox, oy, oz } from './ray';

// Upright, because machines are full of upright walls that such a ray passes at small cost; tilted by two unrelated
// small amounts, so that it does not run along walls and edges.
const DX: f64 = 0.0173;
const DY: f64 = 0.0291;

/**
 * Lowest number of a part that holds xyz, -1 for none. `parts`: tree whose leaves are complements of part numbers;
 * `roots`: the tree of each part, i32; `closed`: a byte a part, 0 for those that hold nothing.
 */
export function holder(parts: i32, work: usize, stack: usize, roots: usize, closed: usize, x: f64, y: f64, z: f64): i32 {
  aim(x, y, z, DX, DY, 1, 0, Infinity);
  choose(0, 0, 0, 0);
  let found: i32 = 0x7fffffff;
  let top = stack + 4;
  store<i32>(stack, parts);
  while (top != stack) {
    top -= 4;
    const ref = load<i32>(top);
    if (ref < 0) {
      const part = ~ref;
      if (part < found && load<u8>(closed + <usize>part) != 0 && crossings(load<i32>(roots + (<usize>part << 2)), work, top) > 0)
        found = part;
      continue;
    }
    const node = nodeAt(ref);
    for (let lane: usize = 0; lane < 16; lane += 4)
      if (isAbove(node + lane)) {
        store<i32>(top, load<i32>(node + lane, CHILDREN));
        top += 4;
      }
  }
  return found == 0x7fffffff ? -1 : found;
}

/** Whether the ray passes the box: heights at which it is above the box's floor plan, in double precision. */
@inline function isAbove(box: usize): bool {
  const low = max(
    max((<f64>load<f32>(box) - ox) / DX, (<f64>load<f32>(box, 32) - oy) / DY),
    max(<f64>load<f32>(box, 64) - oz, 0),
  );
  const high = min(
    min((<f64>load<f32>(box, 16) - ox) / DX, (<f64>load<f32>(box, 48) - oy) / DY),
    <f64>load<f32>(box, 80) - oz,
  );
  // Wider than the rounding of these few operations.
  return low <= high + abs(high) * 1e-12 && high >= 0;
}
