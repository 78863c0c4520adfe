/** A blade that enters a plate at an acute angle: the wedge beside the joint is a gap as far as it is below the limit. */
import { defaultSettings, measureNarrowGaps } from '@coveline/survey';
import { expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { movedModel, transformed } from '../../shapes/mesh.ts';

const length = 100;
const near = (value: number, exact: number, share: number) =>
  expect(Math.abs(value / exact - 1), `${value} for ${exact}`).toBeLessThan(share);

test.each([25, 40, 52])('at %s degrees', (angle) => {
  // The blade's lower face passes through the y axis, and rises from there at the angle.
  const blade = transformed(
    box([-40, -length / 2, 0], [60, length / 2, 12]),
    motion([0, 0, 0], [0, 1, 0], -angle),
  );
  const plate = box([-150, -120, -60], [150, 120, 0]);
  const model = movedModel(assemble({ blade, plate }), motion([5, 6, 7], [2, 1, 4], 61));
  const { places, joints } = measureNarrowGaps(model, defaultSettings).measure;
  const strip = defaultSettings.gapBelow_mm / Math.tan((angle * Math.PI) / 180);
  expect(places.map((p) => p.parts.join())).toEqual(['blade,plate']);
  const [wedge] = places;
  near(wedge.area_cm2, (strip * length) / 100, 0.02);
  near(wedge.depth_mm, strip, 0.05);
  near(wedge.widest_mm, defaultSettings.gapBelow_mm, 0.01);
  expect(wedge.width_mm).toBeLessThan(0.05);
  // Both faces of the blade and its two ends; the ends cross the plate over its thickness along the plate.
  const across = 12 / Math.sin((angle * Math.PI) / 180);
  near(
    joints.reduce((sum, j) => sum + j.length_mm, 0),
    2 * (length + across),
    0.005,
  );
});
