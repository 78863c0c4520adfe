import { type Around, crossings } from './axis.ts';

/** Drop of a dome from its top to three quarters of its radius, over the radius: 0.34 for a half sphere; flat tops have 0. */
const leastDrop = 0.12;
const rings = [0.25, 0.5, 0.75];
const directions = 6;

/**
 * Whether the surface about the axis ends in a dome: highest on the axis, falling ever more steeply outwards, without
 * a step. `side`: 1 for the end in the direction of the axis, -1 for the other. `end`: where what would be domed ends on
 * that side, mm along the axis; `radius_mm`: its half width. What lies more than that beyond is something else.
 */
export function isDomed(near: Around, side: 1 | -1, end: number, radius_mm: number): boolean {
  const limit = side * end + 2 * radius_mm;
  const top = outermost(near, side, 0, 0, limit);
  if (top === undefined) return false;
  const drops = [0];
  for (const ring of rings) {
    let sum = 0;
    for (let k = 0; k < directions; k++) {
      const angle = (2 * Math.PI * (k + 0.5)) / directions;
      const [a, b] = [ring * radius_mm * Math.cos(angle), ring * radius_mm * Math.sin(angle)];
      const z = outermost(near, side, a, b, limit);
      if (z === undefined) return false;
      sum += top - z;
    }
    drops.push(sum / directions);
  }
  const steps = [drops[1] - drops[0], drops[2] - drops[1], drops[3] - drops[2]];
  return (
    drops[3] > leastDrop * radius_mm &&
    drops[3] < radius_mm &&
    steps[0] >= 0 &&
    steps[1] > 1.5 * steps[0] &&
    steps[2] > 1.1 * steps[1]
  );
}

/** How far the surface goes on a line beside the axis, counted along `side`, up to a limit. */
function outermost(near: Around, side: 1 | -1, a: number, b: number, limit: number): number | undefined {
  // A hair off the axis, for the fan of triangles at the tip of a dome has all its edges there.
  const hits = crossings(near, a + 1.3e-7, b + 0.7e-7).map((z) => side * z);
  const below = hits.filter((z) => z < limit);
  return below.length > 0 ? Math.max(...below) : undefined;
}
