/**
 * Linear memory of the column kernel. First the model, written once by the caller; then the heads of the lists of one
 * line; then whatever the line needs, taken from the end and given back when the next line begins.
 *
 * Model: three f64 a vertex (u, v, z); three addresses of vertices (u32) a triangle; a byte a triangle, 1 at a sheet.
 */

/** First free byte, a multiple of 8, and what memory there is. */
let free: usize = 0;
let end: usize = 0;

/** Gives back all from `at` (a multiple of 8) on. */
export function begin(at: usize): void {
  free = at;
}

/** Room for some bytes, at a multiple of 8. Stops the kernel when the system does not give it. */
@inline export function take(bytes: usize): usize {
  const at = free;
  free = (at + bytes + 7) & ~7;
  if (free > end) widen();
  return at;
}

/** At least a quarter more, so that growing stays rare. */
function widen(): void {
  const have = memory.size();
  const wanted = <i32>((free + 65535) >> 16);
  const lacking = wanted - have;
  if (lacking > 0 && memory.grow(max(lacking, have >> 2)) < 0 && memory.grow(lacking) < 0) throw new Error('no memory');
  end = <usize>memory.size() << 16;
}
