/** Drawn threads of a shape without a recognised head: studs, threaded holes, spindles. */
import type { Shape, Vec3 } from '@coveline/model';
import { smallestAxis } from '../corners/symmetric3.ts';
import { cross, dot, minus } from '../hollows/vector.ts';
import { type Weld, weldOf } from '../weld/weld.ts';
import { type Axis, around } from './axis.ts';
import { helixAbout } from './helix.ts';
import type { LocalThread } from './local.ts';

const mostRadius_mm = 40;
/** Axes that are looked at in one shape: a plate with more threaded holes than that has them drawn plain. */
const mostAxes = 24;

/**
 * CAD: about the axes of its cylinders and cones, where it has free-form faces at all. Triangles: about its own long
 * axis, so only bodies that are a threaded rod as a whole.
 */
export function fromHelices(shape: Shape): LocalThread[] {
  const weld = weldOf(shape);
  const places = shape.cad ? axesOfFaces(shape) : longAxis(weld);
  return places.flatMap(({ axis, reach_mm }) => {
    const near = around(weld, axis, reach_mm);
    const [helix] = [false, true].flatMap((inside) => helixAbout(near, reach_mm, inside) ?? []);
    if (!helix) return [];
    return [
      {
        ...axis,
        ...helix,
        by: shape.cad ? 'cad' : 'triangles',
        weak: false,
        caveats: [],
      } satisfies LocalThread,
    ];
  });
}

interface Place {
  readonly axis: Axis;
  readonly reach_mm: number;
}

function axesOfFaces({ cad }: Shape): Place[] {
  const places: Place[] = [];
  if (!cad?.faces.some((f) => f.kind === 'freeform' && f.radius_mm === undefined)) return places;
  for (const { kind, axis, radius_mm } of cad.faces) {
    if (!axis || (kind !== 'cylinder' && kind !== 'cone')) continue;
    const known = places.find((p) => isSame(p.axis, axis));
    if (known) continue;
    const widest = cad.faces.reduce(
      (most, f) =>
        f.kind === 'cylinder' && f.axis && isSame(f.axis, axis) ? Math.max(most, f.radius_mm!) : most,
      radius_mm ?? mostRadius_mm / 2,
    );
    if (places.length < mostAxes) places.push({ axis, reach_mm: Math.min(mostRadius_mm, 1.5 * widest) });
  }
  return places;
}

function isSame(a: Axis, b: Axis): boolean {
  const turn = cross(a.direction, b.direction);
  const aside = cross(minus(b.origin, a.origin), a.direction);
  return dot(turn, turn) < 1e-6 && dot(aside, aside) < 1e-4;
}

/** The direction in which a body is longest, through the middle of its surface; none where it is not thin enough. */
function longAxis({ positions: p, triangles, areas }: Weld): Place[] {
  const middle = [0, 0, 0];
  let area = 0;
  const eachMiddle = (use: (m: Vec3, a: number) => void) => {
    for (let t = 0; t < areas.length; t++) {
      const [a, b, c] = [triangles[t * 3] * 3, triangles[t * 3 + 1] * 3, triangles[t * 3 + 2] * 3];
      use([0, 1, 2].map((k) => (p[a + k] + p[b + k] + p[c + k]) / 3) as unknown as Vec3, areas[t]);
    }
  };
  eachMiddle((m, a) => {
    area += a;
    for (let k = 0; k < 3; k++) middle[k] += a * m[k];
  });
  if (area === 0) return [];
  const origin: Vec3 = [middle[0] / area, middle[1] / area, middle[2] / area];
  const inertia = new Float64Array(6);
  eachMiddle((m, a) => {
    const [x, y, z] = minus(m, origin);
    inertia[0] += a * (y * y + z * z);
    inertia[1] -= a * x * y;
    inertia[2] -= a * x * z;
    inertia[3] += a * (x * x + z * z);
    inertia[4] -= a * y * z;
    inertia[5] += a * (x * x + y * y);
  });
  const axis: Axis = { origin, direction: smallestAxis(inertia) };
  let reach = 0;
  for (let i = 0; i < p.length; i += 3) {
    const aside = cross(minus([p[i], p[i + 1], p[i + 2]], origin), axis.direction);
    reach = Math.max(reach, Math.hypot(...aside));
  }
  return reach <= mostRadius_mm ? [{ axis, reach_mm: 1.01 * reach }] : [];
}
