/** The second method on every pool that the columns have found, largest first, within bounds of time. */
import type { Control, SurveySettings } from '../../result.ts';
import { SurveyStopped, step } from '../../stopped.ts';
import type { Bins } from '../bins.ts';
import { extentOf, heightsOf, type Region } from '../regions.ts';
import type { Soup } from '../soup.ts';
import { lowerBound, type OuterShell, outerShells } from './outer-shells.ts';
import { type ExactPiece, exactPoolsUnder } from './pool-around.ts';
import type { Union } from './solid.ts';

export interface Comparable {
  /** By columns. */
  readonly volume_mL: number;
  readonly region: Region;
  /** Indices of the parts around it. */
  readonly parts: readonly number[];
}

/** What the exact method says of a region: pools, none where it drains; or why it says nothing. */
export type Exact = { readonly pieces: readonly ExactPiece[] } | { readonly because: string };

/** Triangles that go into the union around one pool, and into all of them: time. */
const mostForOne = 300_000;
const mostForAll = 1_000_000;
/** What a shell without a union costs, as a share of one. */
const aloneShare = 0.2;
/** A difference above both of these is large: 5 %, and 0.5 mL. */
const largeShare = 0.05;
const large_mL = 0.5;
/** Before a large difference is believed, parts this near the pool, which the columns saw beside it, are added, mm. */
const around_mm = 50;
/** Surface above this over the level of a pool has no bearing on it, mm. */
const headroom_mm = 1;

export function isLarge(columns_mL: number, exact_mL: number): boolean {
  return Math.abs(columns_mL - exact_mL) > Math.max(largeShare * exact_mL, large_mL);
}

export function measureExactly(
  soup: Soup,
  bins: Bins,
  found: readonly Comparable[],
  { contact_mm, sealedBelow_mm }: Pick<SurveySettings, 'contact_mm' | 'sealedBelow_mm'>,
  union: Union,
  control: Control,
): Exact[] {
  let spent = 0;
  const known = new Map<number, readonly OuterShell[]>();
  const shellsOf = (part: number): readonly OuterShell[] => {
    const shells = known.get(part) ?? outerShells(soup, part);
    known.set(part, shells);
    return shells;
  };
  const measure = (region: Region, parts: readonly number[], margin_mm: number, pause: () => void): Exact => {
    if (parts.some((p) => hasSheet(soup, p))) return { because: 'a part beside it is an open sheet' };
    const shells = parts.flatMap(shellsOf).filter((shell) => concerns(shell, region, margin_mm));
    const size = shells.reduce((n, { triangles }) => n + triangles.length / 3, 0);
    // A single shell needs no union, unless its own seams are to be closed.
    const closed_mm = Math.max(shells.length > 1 ? contact_mm : 0, sealedBelow_mm);
    const cost = closed_mm > 0 ? size : size * aloneShare;
    if (shells.length === 0) return { because: 'no closed shell bounds it' };
    if (cost > mostForOne || spent + cost > mostForAll) return { because: tooLarge };
    spent += cost;
    try {
      return { pieces: exactPoolsUnder(region, shells, closed_mm / 2, union, pause) };
    } catch (error) {
      if (error instanceof SurveyStopped) throw error;
      const why = error instanceof Error ? error.message : String(error);
      return { because: `there is no exact union of the parts beside it (${why})` };
    }
  };
  return found.map(({ region, parts, volume_mL }, k) => {
    const pause = (): void => step(control, 'exact volumes', k / found.length);
    pause();
    const first = measure(region, parts, region.flood.columns.grid.pitch, pause);
    if (!('pieces' in first) || !isLarge(volume_mL, volumeOf(first.pieces))) return first;
    const more = partsAround(soup, bins, region, parts);
    if (more.length === parts.length) return first;
    const second = measure(region, more, around_mm, pause);
    // A sheet or a faulty shell near by cannot be asked: then the parts that bound the pool are what there is.
    return 'pieces' in second ? second : first;
  });
}

const tooLarge = 'that would take too long';

export function volumeOf(pieces: readonly ExactPiece[]): number {
  return pieces.reduce((sum, { volume_mm3 }) => sum + volume_mm3, 0) / 1000;
}

/** Whether a shell stands over or under the region's ground plan, or within the margin of it, and not wholly above it. */
function concerns({ low, high }: OuterShell, region: Region, margin_mm: number): boolean {
  const { u0, v0, pitch } = region.flood.columns.grid;
  const { i0, i1, j0, j1 } = extentOf(region);
  return (
    low[2] <= region.level + headroom_mm &&
    low[0] <= u0 + i1 * pitch + margin_mm &&
    high[0] >= u0 + i0 * pitch - margin_mm &&
    low[1] <= v0 + j1 * pitch + margin_mm &&
    high[1] >= v0 + j0 * pitch - margin_mm
  );
}

/** The given parts, and all others with surface near the region. Ascending. */
function partsAround(soup: Soup, bins: Bins, region: Region, parts: readonly number[]): number[] {
  const { grid } = region.flood.columns;
  const box = extentOf(region);
  const { low, high } = heightsOf(region);
  const near = bins.over(
    {
      u0: grid.u0 + box.i0 * grid.pitch - around_mm,
      v0: grid.v0 + box.j0 * grid.pitch - around_mm,
      pitch: 1,
      nu: Math.ceil((box.i1 - box.i0) * grid.pitch + 2 * around_mm) + 1,
      nv: Math.ceil((box.j1 - box.j0) * grid.pitch + 2 * around_mm) + 1,
    },
    low - around_mm,
    high + headroom_mm,
  );
  const all = new Set(parts);
  for (const t of near) if (!soup.sheet[t]) all.add(soup.part[t]);
  return [...all].sort((a, b) => a - b);
}

function hasSheet({ part, sheet }: Soup, index: number): boolean {
  return sheet.subarray(lowerBound(part, index), lowerBound(part, index + 1)).includes(1);
}
