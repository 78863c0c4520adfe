import type { Control, Pool } from '../../result.ts';
import { step } from '../../stopped.ts';
import type { Region } from '../regions.ts';
import type { Soup } from '../soup.ts';
import { type ExactPart, exactPoolsUnder, lowerBound } from './pool-around.ts';
import type { Union } from './solid.ts';

export interface Comparable {
  readonly pool: { readonly volume_mL: number };
  readonly region: Region;
  /** Indices of the parts around it. */
  readonly parts: readonly number[];
}

/** Triangles that go into the union around one pool, and into all of them. Some 2 s for the latter. */
const mostForOne = 300_000;
const mostForAll = 1_000_000;
/** A difference above both of these is told at the pool: 5 %, and 0.5 mL. */
const largeShare = 0.05;
const large_mL = 0.5;

/**
 * Measures pools (largest first) a second time. Returns per pool what is to be added to it, and notes on those that
 * could not be measured so.
 */
export function compareExact(
  soup: Soup,
  found: readonly Comparable[],
  contact_mm: number,
  union: Union,
  control: Control,
): { pools: Partial<Pick<Pool, 'exact_mL' | 'difference' | 'caveats'>>[]; notes: string[] } {
  let spent = 0;
  let tooLarge = 0;
  const broken: string[] = [];
  const exact = found.map(({ region, parts }, k): readonly ExactPart[] | undefined => {
    step(control, 'exact volumes', k / found.length);
    const size = parts.reduce((n, p) => n + lowerBound(soup.part, p + 1) - lowerBound(soup.part, p), 0);
    if (size > mostForOne || spent + size > mostForAll) {
      tooLarge++;
      return undefined;
    }
    spent += size;
    if (parts.some((p) => hasSheet(soup, p))) {
      broken.push('a part is an open sheet');
      return undefined;
    }
    try {
      return exactPoolsUnder(soup, region, parts, contact_mm, union);
    } catch (error) {
      broken.push(error instanceof Error ? error.message : String(error));
      return undefined;
    }
  });
  // One exact pool may reach over a rib that the columns find just as high as the spill point, and so be found from
  // several of theirs: it is shared out by their volumes.
  const claimed = new Map<string, number>();
  exact.forEach((own, k) => {
    for (const { key } of own ?? []) claimed.set(key, (claimed.get(key) ?? 0) + found[k].pool.volume_mL);
  });
  const pools = exact.map((own, k) => {
    if (!own) return {};
    const { volume_mL } = found[k].pool;
    const exact_mL = own.reduce((sum, { key, volume_mm3 }) => {
      return sum + ((volume_mm3 / 1000) * volume_mL) / (claimed.get(key) ?? volume_mL);
    }, 0);
    return compared(volume_mL, exact_mL);
  });
  const notes: string[] = [];
  if (tooLarge > 0) notes.push(`${tooLarge} pools were measured by columns only, to keep within time.`);
  if (broken.length > 0) {
    notes.push(
      `${broken.length} pools were measured by columns only: no exact union of the parts around them (${[...new Set(broken)].slice(0, 3).join('; ')}).`,
    );
  }
  return { pools, notes };
}

function compared(
  volume_mL: number,
  exact_mL: number,
): Partial<Pick<Pool, 'exact_mL' | 'difference' | 'caveats'>> {
  const off_mL = volume_mL - exact_mL;
  const large = Math.abs(off_mL) > Math.max(largeShare * exact_mL, large_mL);
  return {
    exact_mL,
    ...(exact_mL > 0 && { difference: off_mL / exact_mL }),
    ...(large && {
      caveats: [
        `Two methods disagree here: ${volume_mL.toPrecision(3)} mL by columns, ${exact_mL.toPrecision(3)} mL on the union of the parts; look for a crack or a hole that only one of them sees.`,
      ],
    }),
  };
}

function hasSheet({ part, sheet }: Soup, index: number): boolean {
  return sheet.subarray(lowerBound(part, index), lowerBound(part, index + 1)).includes(1);
}
