/** A shallow dish of few triangles: the volume between them is off, and the survey says by how much at most. */
import type { CadTopology, Model } from '@coveline/model';
import { expect, test } from 'vitest';
import { modelOf } from '../../shapes/mesh.ts';
import { arc, revolve } from '../../shapes/revolve.ts';
import { poolsIn } from './pools-in.ts';

const radius = 400;
const half = 10;
const segments = 48;

/** Spherical cap of 10 degrees to each side, pressed into a thick disc. */
function cappedDish(steps: number) {
  const rim = radius * Math.sin((half * Math.PI) / 180);
  const level = -radius * Math.cos((half * Math.PI) / 180);
  return revolve(
    [
      [0, -radius - 10],
      [rim + 20, -radius - 10],
      [rim + 20, level],
      ...arc([0, 0], radius, half - 90, -90, steps),
    ],
    segments,
  );
}

function asCad(model: Model, deviation_mm: number): Model {
  const [shape] = model.shapes;
  const onCap = (v: number) =>
    Math.abs(
      Math.hypot(shape.positions[v * 3], shape.positions[v * 3 + 1], shape.positions[v * 3 + 2]) - radius,
    ) < 1e-3;
  const faceOfTriangle = Uint32Array.from({ length: shape.triangles.length / 3 }, (_, t) =>
    [0, 1, 2].every((c) => onCap(shape.triangles[t * 3 + c])) ? 1 : 0,
  );
  const cad: CadTopology = {
    faceOfTriangle,
    faces: [{ kind: 'plane' }, { kind: 'sphere', radius_mm: radius, hollow: true }],
    edges: [],
  };
  return { ...model, deviation_mm, shapes: [{ ...shape, cad }] };
}

// Height of the cap h = R (1 - cos a), volume pi h^2 (3 R - h) / 3 (closed form).
const h = radius * (1 - Math.cos((half * Math.PI) / 180));
const exact_mL = (Math.PI * h ** 2 * (3 * radius - h)) / 3 / 1000;

test('the error is told and holds', async () => {
  const steps = 3;
  // A chord over an angle w of a circle of radius R stands R (1 - cos(w/2)) off it: along the arc, and round the rim.
  const along = radius * (1 - Math.cos(((half / steps / 2) * Math.PI) / 180));
  const round = radius * Math.sin((half * Math.PI) / 180) * (1 - Math.cos(Math.PI / segments));
  const deviation_mm = along + round;
  const {
    pools: [pool],
  } = await poolsIn(asCad(modelOf([{ id: 'dish', mesh: cappedDish(steps) }]), deviation_mm));
  const said = /off by up to ([\d.]+) mL/.exec(pool.caveats?.join(' ') ?? '');
  expect(said).not.toBeNull();
  const error_mL = Math.abs(pool.volume_mL - exact_mL);
  expect(error_mL).toBeGreaterThan(0.001 * exact_mL);
  expect(error_mL).toBeLessThan(Number(said![1]));
});

test('nothing is said where the triangles are fine', async () => {
  const {
    pools: [fine],
  } = await poolsIn(asCad(modelOf([{ id: 'dish', mesh: cappedDish(40) }]), 0.01));
  expect(Math.abs(fine.volume_mL / exact_mL - 1)).toBeLessThan(0.005);
  expect(fine.caveats).toBeUndefined();
});
