import fc from 'fast-check';
import { Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { boxesAt } from '../box.fixture.ts';
import { partBoxes } from '../geometry/part-boxes.ts';
import { PartPicker } from '../pick/part-picker.ts';
import { Sight } from '../pick/sight.ts';
import { choosePose } from './choose-pose.ts';
import { axes, CameraRig, type Projection } from './rig.ts';
import { views } from './views.ts';

function rigWith(projection: Projection): CameraRig {
  const rig = new CameraRig(() => undefined);
  rig.setReach(new Vector3(), 500);
  rig.setAspect(1.5);
  rig.projection = projection;
  rig.pose = { target: new Vector3(20, -10, 5), azimuth: -1, elevation: 0.4, distance: 900 };
  return rig;
}

const coordinate = fc.double({ min: -120, max: 120, noNaN: true });
const pivot = fc.tuple(coordinate, coordinate, coordinate).map((p) => new Vector3(...p));

describe.each(['perspective', 'parallel'] as const)('in %s', (projection) => {
  test('the point that is zoomed to stays where it is in the picture (seed 7)', () => {
    fc.assert(
      fc.property(pivot, fc.double({ min: 0.5, max: 2, noNaN: true }), (p, factor) => {
        const rig = rigWith(projection);
        const before = p.clone().project(rig.camera);
        rig.zoom(p, factor);
        const after = p.clone().project(rig.camera);
        expect(after.x).toBeCloseTo(before.x, 6);
        expect(after.y).toBeCloseTo(before.y, 6);
      }),
      { seed: 7 },
    );
  });

  test('the point that is turned about stays where it is in the picture (seed 8)', () => {
    fc.assert(
      fc.property(pivot, coordinate, coordinate, (p, a, e) => {
        const rig = rigWith(projection);
        const before = p.clone().project(rig.camera);
        rig.orbit(p, a / 50, e / 100);
        const after = p.clone().project(rig.camera);
        expect(after.x).toBeCloseTo(before.x, 6);
        expect(after.y).toBeCloseTo(before.y, 6);
      }),
      { seed: 8 },
    );
  });

  test('panning by half a picture takes the target to its border', () => {
    const rig = rigWith(projection);
    const target = rig.pose.target.clone();
    rig.pan(0, 0.5, target);
    expect(target.project(rig.camera).y).toBeCloseTo(1, 6);
  });
});

test('named views look along their axes', () => {
  const toEye = (name: keyof typeof views) => axes(views[name]).z.toArray().map(Math.round);
  expect(toEye('front').map((n) => n || 0)).toEqual([0, -1, 0]);
  expect(toEye('right').map((n) => n || 0)).toEqual([1, 0, 0]);
  expect(toEye('top').map((n) => n || 0)).toEqual([0, 0, 1]);
});

describe('a pose for a place', () => {
  const now = { target: new Vector3(), azimuth: -Math.PI / 2, elevation: 0.3, distance: 100 };

  test('looks past what stands in front of it', () => {
    // The point lies before a box that hides it from the front half.
    const model = boxesAt([[-5, -12, -5]]);
    const picker = new PartPicker(model, partBoxes(model), [0, 0, 0]);
    const sight = new Sight(picker, () => true, null);
    const point = new Vector3(0, 0, 0);
    expect(sight.isFree(point, new Vector3(0, -1, 0))).toBe(false);
    expect(sight.inFront([point], new Vector3(0, -1, 0))).toEqual([0]);
    const box = { getCenter: () => new Vector3() } as never;
    const chosen = choosePose([point], box, 100, now, sight);
    expect(chosen.seen).toBe(1);
    expect(sight.isFree(point, axes(chosen.pose).z)).toBe(true);
  });

  test('keeps the side that it is seen from where nothing is in the way', () => {
    const sight = new Sight(new PartPicker(boxesAt([]), new Float64Array(), [0, 0, 0]), () => true, null);
    const box = { getCenter: () => new Vector3() } as never;
    expect(choosePose([new Vector3()], box, 100, now, sight).pose.azimuth).toBe(now.azimuth);
  });
});
