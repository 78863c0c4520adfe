/**
 * What lies where in linear memory. Addresses are bytes; the caller lays out everything but the arena's inside.
 *
 * Corners: nine f64 a slot, xyz of three corners. A slot is a triangle in model order.
 *
 * Reference: >= 0 a node, < 0 the complement of a leaf; either counts blocks of 64 bytes from address 0.
 *
 * Node, 128 bytes: bounds of four children, an axis after the other, one lane a child
 * (minX[4], maxX[4], minY[4], maxY[4], minZ[4], maxZ[4], f32), then the references of the four (i32).
 * An absent child has bounds that nothing meets.
 *
 * Leaf, 192 bytes: corner and two edge vectors of four triangles, one lane a triangle (x, y, z of the corner, of
 * edge 1, of edge 2, f32), then the slots (i32, -1 for none), then the sizes (f32, see `SIZES`).
 *
 * Work area, one for each thread, so that threads can ask the same tree: see the offsets below.
 */
export const NODE: usize = 128;
export const CHILDREN: usize = 96;
export const LEAF: usize = 192;
export const IDS: usize = 144;
/** Largest coordinate of the two edge vectors of each triangle: the error bounds scale with it. */
export const SIZES: usize = 160;
export const BLOCK_SHIFT: usize = 6;
export const SLOT: usize = 72;

/** In a work area: four lanes to look into; results of one query, f64; the ray; stack of entries of 8 bytes; batches. */
export const RESULTS: usize = 64;
export const RAY: usize = 128;
export const STACK: usize = 512;
export const BATCH: usize = 16384;

/** Half a unit in the last place of single precision, relative. */
export const EPS: f32 = 5.9604645e-8;
/** Above any distance in a machine, and finite, so that no bound multiplies infinity by zero. */
export const FAR: f32 = 3e38;

/** First of the corners, set once an instance. */
export let corners: usize = 0;
/** Largest absolute coordinate of the model. */
export let magnitude: f32 = 0;

export function open(cornersAt: usize, largest: f64): void {
  corners = cornersAt;
  magnitude = <f32>(largest * 1.000001);
}

@inline export function nodeAt(ref: i32): usize {
  return (<usize>ref) << BLOCK_SHIFT;
}

@inline export function leafAt(ref: i32): usize {
  return (<usize>~ref) << BLOCK_SHIFT;
}

@inline export function infinite(): v128 {
  return f32x4.splat(Infinity);
}
