import type { Model } from '@coveline/model';

export interface Tilt {
  readonly axis: 'x' | 'y';
  /** Right-handed turn about the axis through the origin. */
  readonly deg: number;
}

/** The same machine standing out of level. */
export function tiltModel(model: Model, { axis, deg }: Tilt): Model {
  const c = Math.cos((deg * Math.PI) / 180);
  const s = Math.sin((deg * Math.PI) / 180);
  const [a, b, sign] = axis === 'x' ? [1, 2, 1] : [0, 2, -1];
  const parts = model.parts.map((part) => {
    const placement = part.placement.slice();
    for (let column = 0; column < 16; column += 4) {
      const u = part.placement[column + a];
      const v = part.placement[column + b];
      placement[column + a] = c * u - sign * s * v;
      placement[column + b] = sign * s * u + c * v;
    }
    return { ...part, placement };
  });
  return { ...model, parts };
}
