/**
 * The air space of a model, flooded: pools and closed hollows, each on a grid fine enough for its size.
 * Standing liquid and closed hollows are both read from it.
 */
import type { Model } from '@coveline/model';
import type { Control, SurveySettings } from '../result.ts';
import { step } from '../stopped.ts';
import { type Bins, TriangleBins } from './bins.ts';
import { buildColumns } from './columns.ts';
import { type Flood, floodFromOutside } from './flood.ts';
import type { Grid } from './grid.ts';
import { narrowBores } from './narrow-bores.ts';
import { gridFor } from './pitch.ts';
import { type Refiner, refineRegion, refineSpills } from './refine.ts';
import { refineBores } from './refine-bores.ts';
import { type Region, regionsOf, sealedIntervals, wetIntervals } from './regions.ts';
import { type Soup, soupOf } from './soup.ts';
import { spillPlace } from './spill.ts';

export interface AirSpace {
  readonly soup: Soup;
  readonly bins: Bins;
  readonly grid: Grid;
  /** Of the whole model; pools and hollows may lie on finer grids. */
  readonly flood: Flood;
  /** Pools and hollows of that flood, however small. */
  readonly regions: readonly Region[];
  readonly pools: readonly Pool[];
  readonly hollows: readonly Region[];
  readonly notes: readonly string[];
}

export interface Pool {
  readonly region: Region;
  /** Where it first runs over, u and v in the turned frame. */
  readonly spill: readonly [number, number];
}

/** Regions below this share of the least volume that is listed are not looked at again. */
const worthALook = 0.3;
/** Pools and hollows, largest first, that may be counted again on a finer grid: time. */
const mostRefined = 400;
/** A lower way out that was found can lead to another spill point, which deserves a look too. */
const spillRounds = 3;
const stage = 'air space';

/**
 * Throws `SurveyStopped` when the signal is aborted. Works in a few hundred bytes per column; see `gridFor` for the bounds.
 * `soup`: the triangles of the model, where they are at hand or are not to be taken as they are.
 */
export function airSpaceOf(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  soup: Soup = soupOf(model),
): AirSpace {
  step(control, stage, 0);
  const { grid, coarsened } = gridFor(soup, settings.pitch_mm);
  const notes = [...soup.notes];
  if (coarsened) {
    notes.push(
      `The columns of the air space stand ${grid.pitch.toPrecision(3)} mm apart instead of ${settings.pitch_mm} mm, to keep within memory; pools and hollows narrower than that may be missed.`,
    );
  }
  const bins = new TriangleBins(soup);
  step(control, stage, 0.1);
  const columns = buildColumns(soup, grid, settings.contact_mm, {
    tick: (done) => step(control, stage, 0.1 + 0.4 * done),
  });
  step(control, stage, 0.5);
  const flood = floodFromOutside(columns, () => step(control, stage, 0.5));
  step(control, stage, 0.7);

  const refiner: Refiner = {
    soup,
    bins,
    contact_mm: settings.contact_mm,
    places: new Map(),
    seen: new Set(),
  };
  const unsure = refineBores(refiner, flood, narrowBores(model, soup, grid), () => step(control, stage, 0.7));
  if (unsure > 0) {
    notes.push(
      `${unsure} long or narrow bores beside liquid were followed by columns coarser than a quarter of their width; where they drain, the columns may not see it.`,
    );
  }
  const worth = worthALook * settings.leastPool_mL * 1000;
  const wet = wetRegions(refiner, flood, worth, control);
  const pools = poolsOf(
    refiner,
    flood,
    wet.filter((r) => r.volume_mm3 >= worth),
    control,
  );
  step(control, stage, 0.9);
  const sealed = regionsOf(flood, sealedIntervals(flood));
  const hollow = sealed.filter((r) => r.volume_mm3 >= worthALook * settings.leastHollow_mL * 1000);
  const large = largest(hollow);
  const hollows = hollow.flatMap((region) =>
    refined(refiner, region, large, () => step(control, stage, 0.9)),
  );
  const regions = [...wet, ...sealed].sort((p, q) => p.nodes[0] - q.nodes[0]);
  step(control, stage, 1);
  return { soup, bins, grid, flood, regions, pools, hollows, notes };
}

/** Pools of a flood, however small, once a finer look at their spill points has lowered what it can. */
function wetRegions(refiner: Refiner, flood: Flood, worth_mm3: number, control: Control): readonly Region[] {
  const wet = (): Region[] => regionsOf(flood, wetIntervals(flood));
  let regions = wet();
  for (let round = 0; round < spillRounds; round++) {
    const worthy = regions.filter((r) => r.volume_mm3 >= worth_mm3);
    const fell = refineSpills(refiner, flood, worthy, () => step(control, stage, 0.7 + round * 0.05));
    if (!fell) break;
    regions = wet();
  }
  return regions;
}

/** Those of them that are worth it, on grids as fine as they need. */
function poolsOf(refiner: Refiner, flood: Flood, coarse: readonly Region[], control: Control): Pool[] {
  const large = largest(coarse);
  return coarse.flatMap((region) => {
    const spill = spillPlace(flood, region.nodes[0], refiner.places) ?? [0, 0];
    const pieces = refined(refiner, region, large, () => step(control, stage, 0.85));
    return pieces.map((piece) => ({
      region: piece,
      spill: (piece === region ? undefined : spillPlace(piece.flood, piece.nodes[0], new Map())) ?? spill,
    }));
  });
}

function refined(
  refiner: Refiner,
  region: Region,
  large: ReadonlySet<Region>,
  pause: () => void,
): readonly Region[] {
  pause();
  return (large.has(region) && refineRegion(refiner, region, pause)) || [region];
}

function largest(regions: readonly Region[]): ReadonlySet<Region> {
  return new Set([...regions].sort((a, b) => b.volume_mm3 - a.volume_mm3).slice(0, mostRefined));
}
