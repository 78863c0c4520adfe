/** Shapes and nozzles for the checks of jet reach. */
import type { Model, Vec3 } from '@coveline/model';
import { transformPoint } from '@coveline/model';
import { defaultSettings, measureJetReach, type Nozzle } from '@coveline/survey';
import { type Mesh, movedModel, type Placement } from '../../shapes/mesh.ts';

export const nozzle = (at_mm: Vec3, more: Partial<Nozzle> = {}): Nozzle => ({
  id: 'nozzle',
  parts: [],
  at_mm,
  direction: [0, 0, -1],
  cone_deg: 360,
  range_mm: 1e5,
  ...more,
});

export const jets = (model: Model, ...nozzles: readonly Nozzle[]) =>
  measureJetReach(model, defaultSettings, { nozzles });

/** Model and nozzles moved as a whole. */
export function moved(model: Model, nozzles: readonly Nozzle[], by: Placement) {
  const [x, y, z] = transformPoint(by, [0, 0, 0]);
  return {
    model: movedModel(model, by),
    nozzles: nozzles.map((n): Nozzle => {
      const d = transformPoint(by, n.direction);
      return { ...n, at_mm: transformPoint(by, n.at_mm), direction: [d[0] - x, d[1] - y, d[2] - z] };
    }),
  };
}

/** A rectangle in the plane z = 0 that looks up, cut into fields, so that its triangles are as small as asked. */
export function sheet(
  length: number,
  width: number,
  fields: number,
  noise: (n: number) => number = () => 0,
): Mesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (let j = 0; j <= fields; j++) {
    for (let i = 0; i <= fields; i++) {
      positions.push(length * (i / fields - 0.5), width * (j / fields - 0.5), noise(positions.length / 3));
    }
  }
  for (let j = 0; j < fields; j++) {
    for (let i = 0; i < fields; i++) {
      const a = j * (fields + 1) + i;
      const c = a + fields + 1;
      triangles.push(a, a + 1, c + 1, a, c + 1, c);
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}
