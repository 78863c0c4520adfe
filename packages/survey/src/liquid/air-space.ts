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
import { lineIndex } from './line-index.ts';
import { narrowBores } from './narrow-bores.ts';
import { gridFor } from './pitch.ts';
import { type Refiner, refineRegion, refineSpills } from './refine.ts';
import { refineBores } from './refine-bores.ts';
import { type Region, regionsOf } from './regions.ts';
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
  const rows = lineIndex(soup, grid, 1);
  const files = lineIndex(soup, grid, 0);
  const columns = buildColumns(soup, grid, rows, files, settings.contact_mm, (done) =>
    step(control, stage, 0.1 + 0.4 * done),
  );
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
  const unsure = refineBores(refiner, flood, narrowBores(model, soup, grid));
  if (unsure > 0) {
    notes.push(
      `${unsure} long or narrow bores beside liquid were followed by columns coarser than a quarter of their width; where they drain, the columns may not see it.`,
    );
  }
  const { pools, regions } = poolsOf(refiner, flood, settings, control);
  const sealed = regions.filter(
    (r) => r.level === Infinity && r.volume_mm3 >= worthALook * settings.leastHollow_mL * 1000,
  );
  const large = largest(sealed);
  const hollows = sealed.flatMap(
    (region) => (large.has(region) && refineRegion(refiner, region)) || [region],
  );
  step(control, stage, 1);
  return { soup, bins, grid, flood, regions, pools, hollows, notes };
}

/** Pools, on grids as fine as they need, and all regions of the flood itself once its levels stand. */
function poolsOf(
  refiner: Refiner,
  flood: Flood,
  settings: SurveySettings,
  control: Control,
): { pools: Pool[]; regions: readonly Region[] } {
  const worth = worthALook * settings.leastPool_mL * 1000;
  const worthy = (all: readonly Region[]): Region[] =>
    all.filter((r) => r.level < Infinity && r.volume_mm3 >= worth);
  let regions = regionsOf(flood);
  for (let round = 0; round < spillRounds; round++) {
    step(control, stage, 0.7 + round * 0.05);
    if (!refineSpills(refiner, flood, worthy(regions))) break;
    regions = regionsOf(flood);
  }
  const coarse = worthy(regions);
  const large = largest(coarse);
  const pools = coarse.flatMap((region) => {
    step(control, stage, 0.85);
    const spill = spillPlace(flood, region.nodes[0], refiner.places) ?? [0, 0];
    const pieces = (large.has(region) && refineRegion(refiner, region)) || [region];
    return pieces.map((piece) => ({
      region: piece,
      spill: (piece === region ? undefined : spillPlace(piece.flood, piece.nodes[0], new Map())) ?? spill,
    }));
  });
  return { pools, regions };
}

function largest(regions: readonly Region[]): ReadonlySet<Region> {
  return new Set([...regions].sort((a, b) => b.volume_mm3 - a.volume_mm3).slice(0, mostRefined));
}
