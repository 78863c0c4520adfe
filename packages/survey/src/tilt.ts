import type { Model, Placement, Vec3 } from '@coveline/model';

/** Turn of the whole machine about a horizontal axis through the origin, right-handed, degrees. */
export interface AxisTilt {
  readonly axis: 'x' | 'y';
  readonly deg: number;
}

/**
 * Tilt about both horizontal axes at once: one turn about the axis (x_deg, y_deg, 0) by the length of that vector, so that
 * neither comes first.
 */
export interface DoubleTilt {
  readonly x_deg: number;
  readonly y_deg: number;
}

export type Tilt = AxisTilt | DoubleTilt;

/** Whether the machine stands as it is drawn. */
export function isLevel(tilt: Tilt): boolean {
  const { x_deg, y_deg } = both(tilt);
  return x_deg === 0 && y_deg === 0;
}

/** The tilt that takes it back. */
export function reversed(tilt: Tilt): Tilt {
  const { x_deg, y_deg } = both(tilt);
  return { x_deg: -x_deg, y_deg: -y_deg };
}

/** The model as it stands when tilted. */
export function tilted(model: Model, tilt: Tilt): Model {
  const turn = turnOf(tilt);
  return {
    ...model,
    parts: model.parts.map((part) => ({ ...part, placement: turned(part.placement, turn) })),
  };
}

/** Takes a point of the tilted machine to where it lies on the level one. */
export function untilt(tilt: Tilt): (point: Vec3) => Vec3 {
  return turnOf(reversed(tilt));
}

/** A placement turned about the origin. */
export function turned(placement: Placement, turn: (point: Vec3) => Vec3): Placement {
  const out = placement.slice();
  for (let column = 0; column < 4; column++) {
    const [x, y, z] = turn([out[column * 4], out[column * 4 + 1], out[column * 4 + 2]]);
    out[column * 4] = x;
    out[column * 4 + 1] = y;
    out[column * 4 + 2] = z;
  }
  return out;
}

/** The turn as a map of points. */
export function turnOf(tilt: Tilt): (point: Vec3) => Vec3 {
  const { x_deg, y_deg } = both(tilt);
  const deg = Math.hypot(x_deg, y_deg);
  if (deg === 0) return (point) => point;
  return turnAbout([x_deg / deg, y_deg / deg, 0], deg);
}

/** Right-handed turn about a unit axis through the origin (Rodrigues' formula). */
export function turnAbout([ax, ay, az]: Vec3, deg: number): (point: Vec3) => Vec3 {
  const c = Math.cos((deg * Math.PI) / 180);
  const s = Math.sin((deg * Math.PI) / 180);
  return ([x, y, z]) => {
    const along = (1 - c) * (ax * x + ay * y + az * z);
    return [
      c * x + s * (ay * z - az * y) + along * ax,
      c * y + s * (az * x - ax * z) + along * ay,
      c * z + s * (ax * y - ay * x) + along * az,
    ];
  };
}

function both(tilt: Tilt): DoubleTilt {
  if (!('axis' in tilt)) return tilt;
  return tilt.axis === 'x' ? { x_deg: tilt.deg, y_deg: 0 } : { x_deg: 0, y_deg: tilt.deg };
}
