/**
 * A round surface seen from its axis: for a cylinder or the tube of a torus, per vertex an angle about the tube's own
 * centre line and a place along it, so that lengths and areas come out as on the true surface.
 */
export interface RoundFrame {
  readonly radius_mm: number;
  /** Writes angle (radians, -pi to pi), place along the centre line (mm on a cylinder, radians on a torus). */
  readonly locate: (x: number, y: number, z: number, out: Float64Array) => void;
  /** mm along the surface per unit of place, at an angle. */
  readonly stretch: (angle: number) => number;
  /** The point of the surface at an angle and a place; and the unit direction from it towards the centre line. */
  readonly point: (angle: number, place: number, out: Float64Array, inward: Float64Array) => void;
  /** The place comes round again after this much; 0 when it does not. */
  readonly period: number;
}

export type Triple = readonly [number, number, number];

/** Two unit directions that complete a unit direction to a right-handed frame. */
export function across([x, y, z]: Triple): { u: Triple; v: Triple } {
  const [ax, ay, az] = Math.abs(x) < 0.6 ? [1, 0, 0] : [0, 1, 0];
  let [ux, uy, uz] = [ay * z - az * y, az * x - ax * z, ax * y - ay * x];
  const length = Math.hypot(ux, uy, uz);
  [ux, uy, uz] = [ux / length, uy / length, uz / length];
  return { u: [ux, uy, uz], v: [y * uz - z * uy, z * ux - x * uz, x * uy - y * ux] };
}

export function cylinderFrame(origin: Triple, axis: Triple, radius_mm: number): RoundFrame {
  const w = unit(axis);
  const { u, v } = across(w);
  return {
    radius_mm,
    period: 0,
    stretch: () => 1,
    locate(x, y, z, out) {
      const [dx, dy, dz] = [x - origin[0], y - origin[1], z - origin[2]];
      out[0] = Math.atan2(dx * v[0] + dy * v[1] + dz * v[2], dx * u[0] + dy * u[1] + dz * u[2]);
      out[1] = dx * w[0] + dy * w[1] + dz * w[2];
    },
    point(angle, place, out, inward) {
      for (let k = 0; k < 3; k++) {
        const radial = Math.cos(angle) * u[k] + Math.sin(angle) * v[k];
        out[k] = origin[k] + place * w[k] + radius_mm * radial;
        inward[k] = -radial;
      }
    },
  };
}

export function torusFrame(origin: Triple, axis: Triple, major_mm: number, radius_mm: number): RoundFrame {
  const w = unit(axis);
  const { u, v } = across(w);
  return {
    radius_mm,
    period: 2 * Math.PI,
    stretch: (angle) => major_mm + radius_mm * Math.cos(angle),
    locate(x, y, z, out) {
      const [dx, dy, dz] = [x - origin[0], y - origin[1], z - origin[2]];
      const a = dx * u[0] + dy * u[1] + dz * u[2];
      const b = dx * v[0] + dy * v[1] + dz * v[2];
      out[0] = Math.atan2(dx * w[0] + dy * w[1] + dz * w[2], Math.hypot(a, b) - major_mm);
      out[1] = Math.atan2(b, a);
    },
    point(angle, place, out, inward) {
      const reach = major_mm + radius_mm * Math.cos(angle);
      for (let k = 0; k < 3; k++) {
        const outward = Math.cos(place) * u[k] + Math.sin(place) * v[k];
        out[k] = origin[k] + reach * outward + radius_mm * Math.sin(angle) * w[k];
        inward[k] = -(Math.cos(angle) * outward + Math.sin(angle) * w[k]);
      }
    },
  };
}

export function unit([x, y, z]: Triple): Triple {
  const length = Math.hypot(x, y, z);
  return [x / length, y / length, z / length];
}
