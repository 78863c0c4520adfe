import type { Control, Pool } from '../../result.ts';
import { step } from '../../stopped.ts';
import type { Region } from '../regions.ts';
import type { Soup } from '../soup.ts';
import { exactVolume, lowerBound } from './pool-around.ts';
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
  const pools = found.map(({ pool, region, parts }, k) => {
    step(control, 'exact volumes', k / found.length);
    const size = parts.reduce((n, p) => n + lowerBound(soup.part, p + 1) - lowerBound(soup.part, p), 0);
    if (size > mostForOne || spent + size > mostForAll) {
      tooLarge++;
      return {};
    }
    spent += size;
    if (parts.some((p) => hasSheet(soup, p))) {
      broken.push('a part is an open sheet');
      return {};
    }
    let exact_mL: number;
    try {
      exact_mL = exactVolume(soup, region, parts, contact_mm, union).volume_mm3 / 1000;
    } catch (error) {
      broken.push(error instanceof Error ? error.message : String(error));
      return {};
    }
    const off_mL = pool.volume_mL - exact_mL;
    const large = Math.abs(off_mL) > Math.max(largeShare * exact_mL, large_mL);
    return {
      exact_mL,
      ...(exact_mL > 0 && { difference: off_mL / exact_mL }),
      ...(large && {
        caveats: [
          `Two methods disagree here: ${pool.volume_mL.toPrecision(3)} mL by columns, ${exact_mL.toPrecision(3)} mL on the union of the parts; look for a crack or a hole that only one of them sees.`,
        ],
      }),
    };
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

function hasSheet({ part, sheet }: Soup, index: number): boolean {
  return sheet.subarray(lowerBound(part, index), lowerBound(part, index + 1)).includes(1);
}
