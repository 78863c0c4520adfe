/** Walks of a ray through the tree. The ray is set by `aim` and `choose`. */
import { candidates } from './candidates';
import { CHILDREN, IDS, leafAt, nodeAt, RAY } from './layout';
import { meets, passes, slotBest } from './ray';
import { boxSlack, farthest, lateSlack, MIN, OX, OY, OZ, six, siy, siz, toSingle } from './single';

const NOTHING: i32 = 0x7fffffff;

/**
 * Slot of the first triangle met, -1 for none; its distance is `tBest`. `work`: 16 bytes for lanes, `stack`: entries
 * of reference and distance.
 */
export function first(root: i32, work: usize, stack: usize): i32 {
  toSingle(work);
  const ray = work + RAY;
  const ix = f32x4.splat(six);
  const iy = f32x4.splat(siy);
  const iz = f32x4.splat(siz);
  const ax = f32x4.splat(six < 0 ? -boxSlack : boxSlack);
  const ay = f32x4.splat(siy < 0 ? -boxSlack : boxSlack);
  const az = f32x4.splat(siz < 0 ? -boxSlack : boxSlack);
  // The near planes come nearer and the far ones go farther by the slack.
  const inX = f32x4.add(v128.load(ray, OX), ax);
  const inY = f32x4.add(v128.load(ray, OY), ay);
  const inZ = f32x4.add(v128.load(ray, OZ), az);
  const outX = f32x4.sub(v128.load(ray, OX), ax);
  const outY = f32x4.sub(v128.load(ray, OY), ay);
  const outZ = f32x4.sub(v128.load(ray, OZ), az);
  const nearX: usize = six < 0 ? 16 : 0;
  const nearY: usize = siy < 0 ? 48 : 32;
  const nearZ: usize = siz < 0 ? 80 : 64;
  const farX: usize = 16 - nearX;
  const farY: usize = 80 - nearY;
  const farZ: usize = 144 - nearZ;
  const from = v128.load(ray, MIN);
  let far = farthest();
  let farLanes = f32x4.splat(far);
  let late = f32x4.splat(lateSlack(far));
  let top = stack;
  let ref = root;
  while (true) {
    while (ref >= 0) {
      const node = nodeAt(ref);
      const enter = f32x4.pmax(
        f32x4.pmax(
          f32x4.mul(f32x4.sub(v128.load(node + nearX), inX), ix),
          f32x4.mul(f32x4.sub(v128.load(node + nearY), inY), iy),
        ),
        f32x4.pmax(f32x4.mul(f32x4.sub(v128.load(node + nearZ), inZ), iz), from),
      );
      const leave = f32x4.pmin(
        f32x4.pmin(
          f32x4.mul(f32x4.sub(v128.load(node + farX), outX), ix),
          f32x4.mul(f32x4.sub(v128.load(node + farY), outY), iy),
        ),
        f32x4.pmin(f32x4.mul(f32x4.sub(v128.load(node + farZ), outZ), iz), farLanes),
      );
      let mask = i32x4.bitmask(f32x4.le(enter, leave));
      if (mask == 0) {
        ref = NOTHING;
        break;
      }
      const a = <usize>ctz(mask) << 2;
      mask &= mask - 1;
      const ra = load<i32>(node + a, CHILDREN);
      if (mask == 0) {
        ref = ra;
        continue;
      }
      v128.store(work, enter);
      const ta = load<f32>(work + a);
      const b = <usize>ctz(mask) << 2;
      mask &= mask - 1;
      const rb = load<i32>(node + b, CHILDREN);
      const tb = load<f32>(work + b);
      if (mask == 0) {
        const isFirst = ta <= tb;
        push(top, isFirst ? rb : ra, isFirst ? tb : ta);
        ref = isFirst ? ra : rb;
        top += 8;
        continue;
      }
      const base = top;
      if (ta >= tb) {
        push(top, ra, ta);
        push(top + 8, rb, tb);
      } else {
        push(top, rb, tb);
        push(top + 8, ra, ta);
      }
      top += 16;
      // The third and the fourth are put among them, the farthest at the bottom.
      while (mask != 0) {
        const c = <usize>ctz(mask) << 2;
        mask &= mask - 1;
        const tc = load<f32>(work + c);
        let at = top;
        while (at > base && load<f32>(at - 8, 4) < tc) {
          store<u64>(at, load<u64>(at - 8));
          at -= 8;
        }
        push(at, load<i32>(node + c, CHILDREN), tc);
        top += 8;
      }
      top -= 8;
      ref = load<i32>(top);
    }
    if (ref < 0) {
      const leaf = leafAt(ref);
      let mask = candidates(leaf, work, farLanes, late);
      if (mask != 0) {
        do {
          const slot = load<i32>(leaf + (<usize>ctz(mask) << 2), IDS);
          if (slot >= 0) meets(slot);
          mask &= mask - 1;
        } while (mask != 0);
        far = farthest();
        farLanes = f32x4.splat(far);
        late = f32x4.splat(lateSlack(far));
      }
    }
    do {
      if (top == stack) return slotBest;
      top -= 8;
    } while (load<f32>(top, 4) > far);
    ref = load<i32>(top);
  }
  return slotBest;
}

@inline function push(at: usize, ref: i32, t: f32): void {
  store<i32>(at, ref);
  store<f32>(at, t, 4);
}

/** Slot of some triangle that the ray meets, -1 for none. `stack`: references. */
export function any(root: i32, work: usize, stack: usize): i32 {
  return walk(root, work, stack, false);
}

/** Sum of the crossings of the ray with the triangles below a reference: see `passes`. */
export function crossings(root: i32, work: usize, stack: usize): i32 {
  return walk(root, work, stack, true);
}

/** Whether to count crossings is known where it is inlined, so that each has a loop of its own. */
@inline function walk(root: i32, work: usize, stack: usize, count: bool): i32 {
  toSingle(work);
  const ray = work + RAY;
  const ix = f32x4.splat(six);
  const iy = f32x4.splat(siy);
  const iz = f32x4.splat(siz);
  const ax = f32x4.splat(six < 0 ? -boxSlack : boxSlack);
  const ay = f32x4.splat(siy < 0 ? -boxSlack : boxSlack);
  const az = f32x4.splat(siz < 0 ? -boxSlack : boxSlack);
  const inX = f32x4.add(v128.load(ray, OX), ax);
  const inY = f32x4.add(v128.load(ray, OY), ay);
  const inZ = f32x4.add(v128.load(ray, OZ), az);
  const outX = f32x4.sub(v128.load(ray, OX), ax);
  const outY = f32x4.sub(v128.load(ray, OY), ay);
  const outZ = f32x4.sub(v128.load(ray, OZ), az);
  const nearX: usize = six < 0 ? 16 : 0;
  const nearY: usize = siy < 0 ? 48 : 32;
  const nearZ: usize = siz < 0 ? 80 : 64;
  const farX: usize = 16 - nearX;
  const farY: usize = 80 - nearY;
  const farZ: usize = 144 - nearZ;
  const from = v128.load(ray, MIN);
  const far = farthest();
  const farLanes = f32x4.splat(far);
  const late = f32x4.splat(lateSlack(far));
  let sum: i32 = 0;
  let top = stack + 4;
  store<i32>(stack, root);
  while (top != stack) {
    top -= 4;
    const ref = load<i32>(top);
    if (ref >= 0) {
      const node = nodeAt(ref);
      const enter = f32x4.pmax(
        f32x4.pmax(
          f32x4.mul(f32x4.sub(v128.load(node + nearX), inX), ix),
          f32x4.mul(f32x4.sub(v128.load(node + nearY), inY), iy),
        ),
        f32x4.pmax(f32x4.mul(f32x4.sub(v128.load(node + nearZ), inZ), iz), from),
      );
      const leave = f32x4.pmin(
        f32x4.pmin(
          f32x4.mul(f32x4.sub(v128.load(node + farX), outX), ix),
          f32x4.mul(f32x4.sub(v128.load(node + farY), outY), iy),
        ),
        f32x4.pmin(f32x4.mul(f32x4.sub(v128.load(node + farZ), outZ), iz), farLanes),
      );
      let mask = i32x4.bitmask(f32x4.le(enter, leave));
      while (mask != 0) {
        store<i32>(top, load<i32>(node + (<usize>ctz(mask) << 2), CHILDREN));
        mask &= mask - 1;
        top += 4;
      }
    } else {
      const leaf = leafAt(ref);
      let mask = candidates(leaf, work, farLanes, late);
      while (mask != 0) {
        const slot = load<i32>(leaf + (<usize>ctz(mask) << 2), IDS);
        mask &= mask - 1;
        if (slot < 0) continue;
        if (count) sum += passes(slot);
        else if (meets(slot)) return slot;
      }
    }
  }
  return count ? sum : -1;
}
