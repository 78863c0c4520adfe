/**
 * Standing liquid over tilts of the whole machine: the worst within a range that an installation may be off by, and the
 * tilt that leaves least. Coarse columns look at many tilts; the ones that count are then measured in full.
 */
import type { Model } from '@coveline/model';
import type { Union } from './liquid/exact/solid.ts';
import { quickTotals } from './liquid/quick-total.ts';
import { measureStandingLiquid } from './liquid/standing-liquid.ts';
import type { Control, SurveySettings, TiltedTotal, TiltRange } from './result.ts';
import { step } from './stopped.ts';
import { type DoubleTilt, isLevel, tilted } from './tilt.ts';

export interface TiltRequest {
  /** Installation may be off by this much about either horizontal axis, degrees. */
  readonly range_deg: number;
  /** Tilts looked at along each axis within the range, an odd number of at least 3. */
  readonly steps?: number;
  /** The best tilt is sought within this much about either axis, degrees. */
  readonly bestWithin_deg?: number;
  /** The best tilt is found to within this, degrees. */
  readonly bestStep_deg?: number;
  readonly union?: Union;
}

const defaults = { steps: 5, bestWithin_deg: 5, bestStep_deg: 0.25 } as const;
const stage = 'tilts';
/** What a degree more must save to be worth it: this share of what stands, and this much. */
const shareForDegree = 0.005;
const forDegree_mL = 0.2;
/** Looks of the search for the best tilt: a grid, and steps that are halved four or five times. */
const bestGrid = 5;

/**
 * Seams are left as open as they are drawn. Throws RangeError where range or steps make no sense, `SurveyStopped` when the signal is aborted. The same input gives
 * the same output.
 */
export function liquidOverTilts(
  model: Model,
  settings: SurveySettings,
  request: TiltRequest,
  control: Control = {},
): TiltRange {
  const { range_deg, steps, bestWithin_deg, bestStep_deg, union } = { ...defaults, ...request };
  if (!(range_deg > 0 && range_deg <= 45)) {
    throw new RangeError(`A range of tilts is above 0 and at most 45 degrees; got ${range_deg}.`);
  }
  if (!(Number.isInteger(steps) && steps >= 3 && steps % 2 === 1)) {
    throw new RangeError(`Tilts along an axis are an odd number of at least 3; got ${steps}.`);
  }
  const asDrawn = { ...settings, sealedBelow_mm: 0 };
  const { pitch_mm, totalAt } = quickTotals(model, asDrawn);
  const known = new Map<string, TiltedTotal>();
  const about = steps * steps + bestGrid * bestGrid + 24;
  const look = (tilt: DoubleTilt): TiltedTotal => {
    const x_deg = round(tilt.x_deg);
    const y_deg = round(tilt.y_deg);
    const key = `${x_deg} ${y_deg}`;
    let total = known.get(key);
    if (!total) {
      const pause = (): void => step(control, stage, Math.min(0.9, known.size / about));
      pause();
      total = { x_deg, y_deg, total_mL: totalAt({ x_deg, y_deg }, pause) };
      known.set(key, total);
    }
    return total;
  };

  const samples = lattice(range_deg, steps).map(look);
  const worst = samples.reduce((a, b) => (b.total_mL > a.total_mL ? b : a));
  const best = bestOf(look, bestWithin_deg, bestStep_deg);
  const inFull = ({ x_deg, y_deg }: DoubleTilt): TiltedTotal => {
    const tilt = { x_deg, y_deg };
    const standing = isLevel(tilt) ? model : tilted(model, tilt);
    const { measure } = measureStandingLiquid(standing, asDrawn, control, undefined, union);
    return { ...tilt, total_mL: measure.total_mL };
  };
  step(control, stage, 0.9);
  return {
    range_deg,
    resolution_mm: pitch_mm,
    samples,
    level: inFull({ x_deg: 0, y_deg: 0 }),
    worst: inFull(worst),
    best: inFull(best),
    bestWithin_deg,
  };
}

/** Tilts evenly over a square, row by row. */
function lattice(range_deg: number, steps: number): DoubleTilt[] {
  const at = (k: number): number => range_deg * ((2 * k) / (steps - 1) - 1);
  return Array.from({ length: steps * steps }, (_, k) => ({
    x_deg: at(k % steps),
    y_deg: at(Math.floor(k / steps)),
  }));
}

/** From the best of a lattice by steps to the best neighbour, halved where there is none (pattern search). */
function bestOf(
  look: (tilt: DoubleTilt) => TiltedTotal,
  within_deg: number,
  finest_deg: number,
): TiltedTotal {
  const cost = (at: TiltedTotal): number =>
    at.total_mL * (1 + shareForDegree * size(at)) + forDegree_mL * size(at);
  const pick = (a: TiltedTotal, b: TiltedTotal): TiltedTotal => (cost(b) < cost(a) ? b : a);
  let best = lattice(within_deg, bestGrid)
    .map(look)
    .reduce(pick, look({ x_deg: 0, y_deg: 0 }));
  let stride = within_deg / (bestGrid - 1);
  while (stride >= finest_deg) {
    const around = neighbours.map(([i, j]) => ({
      x_deg: best.x_deg + i * stride,
      y_deg: best.y_deg + j * stride,
    }));
    const inside = around.filter(
      ({ x_deg, y_deg }) => Math.max(Math.abs(x_deg), Math.abs(y_deg)) <= within_deg,
    );
    const found = inside.map(look).reduce(pick, best);
    if (found === best) stride /= 2;
    else best = found;
  }
  return best;
}

const neighbours = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const;

function size({ x_deg, y_deg }: DoubleTilt): number {
  return Math.hypot(x_deg, y_deg);
}

/** To a thousandth of a degree, without a negative zero: tilts that are one have one name. */
function round(deg: number): number {
  return Math.round(deg * 1000) / 1000 + 0;
}
