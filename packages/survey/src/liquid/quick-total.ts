/**
 * How much liquid stands on a machine at one tilt after another, by coarse columns: to find the tilts that are worth
 * measuring in full. Triangles are judged once; only their heights change.
 */
import type { Model, Vec3 } from '@coveline/model';
import type { SurveySettings } from '../result.ts';
import { type Tilt, turnOf } from '../tilt.ts';
import { buildColumns } from './columns.ts';
import { floodFromOutside } from './flood.ts';
import { drainThrough, openPipes } from './pipes.ts';
import { gridFor } from './pitch.ts';
import { regionsOf } from './regions.ts';
import { fromTurned, type Soup, soupOf } from './soup.ts';

export interface QuickTotals {
  /** Distance between the columns. */
  readonly pitch_mm: number;
  /** What stands, mL, in pools of at least the listed volume. `pause` is called now and then, and may throw to stop. */
  readonly totalAt: (tilt: Tilt, pause?: () => void) => number;
}

/** About this many columns over the ground plan. */
const columns = 25_000;
/** Bores narrower than this many columns may slip between them. */
const pipesAcross = 3;

export function quickTotals(model: Model, settings: SurveySettings): QuickTotals {
  const level = soupOf(model);
  const area = (level.high[0] - level.low[0]) * (level.high[1] - level.low[1]);
  const pitch_mm = Math.max(settings.pitch_mm, Math.sqrt(area / columns));
  const pipes = openPipes(model, pipesAcross * pitch_mm);
  const totalAt = (tilt: Tilt, pause?: () => void): number => {
    const soup = tiltedSoup(level, tilt);
    pause?.();
    const { grid } = gridFor(soup, pitch_mm);
    const flood = floodFromOutside(buildColumns(soup, grid, settings.contact_mm, { tick: pause }), pause);
    pause?.();
    drainThrough(flood, pipes, placing(soup, tilt));
    let total = 0;
    for (const { level: height, volume_mm3 } of regionsOf(flood)) {
      if (height < Infinity && volume_mm3 >= settings.leastPool_mL * 1000) total += volume_mm3;
    }
    return total / 1000;
  };
  return { pitch_mm, totalAt };
}

/** From the frame of the level machine to the turned frame of the tilted one. */
function placing({ turn: [cos, sin] }: Soup, tilt: Tilt): (point: Vec3) => Vec3 {
  const turn = turnOf(tilt);
  return (point) => {
    const [x, y, z] = turn(point);
    return [cos * x + sin * y, cos * y - sin * x, z];
  };
}

/** The soup with the machine tilted under the same turn of the grid. */
export function tiltedSoup(level: Soup, tilt: Tilt): Soup {
  const place = placing(level, tilt);
  // The image of an axis of the turned frame: a column of one matrix.
  const image = (u: number, v: number, z: number): Vec3 => place(fromTurned(level, u, v, z));
  const [a, b, c] = image(1, 0, 0);
  const [d, e, f] = image(0, 1, 0);
  const [g, h, k] = image(0, 0, 1);
  const uvz = new Float64Array(level.uvz.length);
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < uvz.length; i += 3) {
    const u = level.uvz[i];
    const v = level.uvz[i + 1];
    const z = level.uvz[i + 2];
    uvz[i] = a * u + d * v + g * z;
    uvz[i + 1] = b * u + e * v + h * z;
    uvz[i + 2] = c * u + f * v + k * z;
    for (let m = 0; m < 3; m++) {
      if (uvz[i + m] < low[m]) low[m] = uvz[i + m];
      if (uvz[i + m] > high[m]) high[m] = uvz[i + m];
    }
  }
  const none: Vec3 = [0, 0, 0];
  return { ...level, uvz, low: uvz.length > 0 ? low : none, high: uvz.length > 0 ? high : none };
}
