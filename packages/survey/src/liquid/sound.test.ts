import type { Shape } from '@coveline/model';
import { expect, test } from 'vitest';
import { tray } from '../../../../validation/shapes/box.ts';
import { modelOf } from '../../../../validation/shapes/mesh.ts';
import { defaultSettings } from '../settings.ts';
import { soundShape } from './sound.ts';
import { measureStandingLiquid } from './standing-liquid.ts';

/** Every triangle with corners of its own, each up to `noise` mm out along every axis. */
function cracked({ positions, triangles }: Pick<Shape, 'positions' | 'triangles'>, noise: number) {
  const own = new Float64Array(triangles.length * 3);
  for (let c = 0; c < triangles.length; c++) {
    for (let k = 0; k < 3; k++)
      own[c * 3 + k] = positions[triangles[c] * 3 + k] + noise * Math.sin(7.3 * (c * 3 + k));
  }
  return { positions: own, triangles: Uint32Array.from(triangles, (_, c) => c) };
}

test.each([1e-4, 4e-3])('cracks of %s mm are no openings: the tray keeps its liquid', (noise) => {
  const mesh = cracked(tray(90, 60, 30, 5), noise);
  const model = modelOf([{ id: 'tray', mesh }]);
  const { measure, notes } = measureStandingLiquid(model, defaultSettings);
  expect(measure.total_mL).toBeGreaterThan(162 * 0.99);
  expect(measure.total_mL).toBeLessThan(162 * 1.01);
  expect(notes.join(' ')).toContain('cracked');
});

test('an opening wider than the contact distance is left open', () => {
  const mesh = cracked(tray(90, 60, 30, 5), 0.1);
  const sound = soundShape({ ...mesh, hash: 'open' });
  expect(sound.zipped).toBe(0);
  expect(sound.sheets + sound.capped).toBeGreaterThan(0);
});
