/** Drain holes narrower than the columns are found where the CAD model knows them. */
import type { CadTopology, Model } from '@coveline/model';
import { expect, test } from 'vitest';
import { box, tray } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { about, type Mesh, modelOf, movedModel, placed } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { poolsIn } from './pools-in.ts';

const [x, y] = [200, 100];

function pierced(diameter: number): Mesh {
  return difference(tray(400, 200, 30, 3), cylinder(diameter / 2, 20, 48, placed({ move: [x, y, -10] })));
}

/** The wall of the hole as a CAD face, told by the distance of its corners from the axis. */
function withFace(model: Model, diameter: number): Model {
  const [shape, ...others] = model.shapes;
  const onWall = (v: number): boolean =>
    Math.abs(Math.hypot(shape.positions[v * 3] - x, shape.positions[v * 3 + 1] - y) - diameter / 2) < 1e-3;
  const faceOfTriangle = Uint32Array.from({ length: shape.triangles.length / 3 }, (_, t) =>
    [0, 1, 2].every((c) => onWall(shape.triangles[t * 3 + c])) ? 1 : 0,
  );
  const cad: CadTopology = {
    faceOfTriangle,
    faces: [
      { kind: 'plane' },
      {
        kind: 'cylinder',
        radius_mm: diameter / 2,
        axis: { origin: [x, y, 0], direction: [0, 0, 1] },
        hollow: true,
      },
    ],
    edges: [],
  };
  return { ...model, shapes: [{ ...shape, cad }, ...others] };
}

test.each([0.5, 1, 2])('a hole of %s mm under columns 2 mm apart', async (diameter) => {
  for (const turn of [0, 23, 41]) {
    const plain = modelOf([
      { id: 'tray', mesh: pierced(diameter) },
      { id: 'far', mesh: box([900, 900, 0], [901, 901, 1]) },
    ]);
    const { total_mL } = await poolsIn(movedModel(withFace(plain, diameter), about(2, turn)));
    expect(total_mL).toBe(0);
  }
});
