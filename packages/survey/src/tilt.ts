import type { Model, Vec3 } from '@coveline/model';

/** Turn of the whole machine about a horizontal axis through the origin, right-handed, degrees. */
export interface Tilt {
  readonly axis: 'x' | 'y';
  readonly deg: number;
}

/** The model as it stands when tilted. */
export function tilted(model: Model, tilt: Tilt): Model {
  const turn = turnOf(tilt);
  const parts = model.parts.map((part) => {
    const placement = part.placement.slice();
    for (let column = 0; column < 4; column++) {
      const [x, y, z] = turn([placement[column * 4], placement[column * 4 + 1], placement[column * 4 + 2]]);
      placement[column * 4] = x;
      placement[column * 4 + 1] = y;
      placement[column * 4 + 2] = z;
    }
    return { ...part, placement };
  });
  return { ...model, parts };
}

/** Takes a point of the tilted machine to where it lies on the level one. */
export function untilt({ axis, deg }: Tilt): (point: Vec3) => Vec3 {
  return turnOf({ axis, deg: -deg });
}

function turnOf({ axis, deg }: Tilt): (point: Vec3) => Vec3 {
  const c = Math.cos((deg * Math.PI) / 180);
  const s = Math.sin((deg * Math.PI) / 180);
  return axis === 'x'
    ? ([x, y, z]) => [x, c * y - s * z, s * y + c * z]
    : ([x, y, z]) => [c * x + s * z, y, c * z - s * x];
}
