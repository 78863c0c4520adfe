/**
 * Points spread evenly over a list of triangles, `perPoint` mm2 each: stratified along the list by area, and within
 * a triangle by the additive recurrence of the plastic number (Roberts, The unreasonable effectiveness of
 * quasirandom sequences, 2018). No randomness, so the same triangles give the same points in any frame.
 *
 * Calls `visit` with the place of the triangle in the list and the weights of its three corners.
 */
export function spreadPoints(
  areas: ArrayLike<number>,
  count: number,
  visit: (at: number, a: number, b: number, c: number) => void,
): void {
  let whole = 0;
  for (let i = 0; i < areas.length; i++) whole += areas[i];
  const each = whole / count;
  let passed = 0;
  let point = 0;
  for (let i = 0; i < areas.length; i++) {
    passed += areas[i];
    while (point < count && (point + 0.5) * each <= passed) {
      let u = (0.5 + point * 0.7548776662466927) % 1;
      let v = (0.5 + point * 0.5698402909980532) % 1;
      if (u + v > 1) {
        u = 1 - u;
        v = 1 - v;
      }
      visit(i, 1 - u - v, u, v);
      point++;
    }
  }
}
