/** Which of two numbers counts for a pool: the exact one where there is one, else that of the columns. */

import type { SurveySettings } from '../result.ts';
import type { Candidate } from './candidates.ts';
import { type Exact, isLarge, volumeOf } from './exact/compare.ts';
import type { ExactPiece } from './exact/pool-around.ts';
import { rounded } from './rounded.ts';

/** A pool as it will be listed: a candidate, or a piece of one that the exact method has divided or lowered. */
export interface Settled {
  readonly candidate: Candidate;
  readonly columns_mL: number;
  /** Absent where only the columns have measured it. */
  readonly exact?: ExactPiece & { readonly volume_mL: number };
  readonly caveats: readonly string[];
}

export interface Verdict {
  readonly pools: readonly Settled[];
  /** Candidates that the exact method shows to hold less than is listed: their volumes by columns, largest first. */
  readonly drained_mL: readonly number[];
}

/** `exact`: what the second method says, one per candidate. */
export function settle(
  candidates: readonly Candidate[],
  exact: readonly Exact[],
  { leastPool_mL, sealedBelow_mm }: Pick<SurveySettings, 'leastPool_mL' | 'sealedBelow_mm'>,
): Verdict {
  // One exact pool may reach over a rib that the columns find just as high as the spill point, and so be found from
  // several of theirs: it is shared out by their volumes.
  const claimed = new Map<string, number>();
  candidates.forEach(({ volume_mL }, k) => {
    const said = exact[k];
    if (!('pieces' in said)) return;
    for (const { key } of said.pieces) claimed.set(key, (claimed.get(key) ?? 0) + volume_mL);
  });
  const pools: Settled[] = [];
  const drained_mL: number[] = [];
  candidates.forEach((candidate, k) => {
    const said = exact[k];
    if (!('pieces' in said)) {
      pools.push(byColumns(candidate, said.because));
      return;
    }
    const share = (key: string): number => candidate.volume_mL / (claimed.get(key) ?? candidate.volume_mL);
    const kept = said.pieces
      .map((piece) => ({ ...piece, volume_mL: (piece.volume_mm3 / 1000) * share(piece.key) }))
      .filter(({ volume_mL }) => volume_mL >= leastPool_mL);
    const all_mL = kept.reduce((sum, { volume_mL }) => sum + volume_mL, 0);
    if (sealedBelow_mm > 0 && isLarge(candidate.volume_mL, all_mL)) {
      pools.push(byColumns(candidate, narrowOfOne));
      return;
    }
    if (kept.length === 0) drained_mL.push(candidate.volume_mL);
    const caveats = isLarge(candidate.volume_mL, all_mL)
      ? [disagreement(candidate.volume_mL, said.pieces)]
      : [];
    for (const piece of kept) {
      pools.push({
        candidate,
        // Where one is divided, the columns' number is shared out by what the pieces hold.
        columns_mL: (candidate.volume_mL * piece.volume_mL) / all_mL,
        exact: piece,
        caveats,
      });
    }
  });
  return { pools, drained_mL };
}

/** A shell made thicker closes seams to others; its own narrow places turn inside out, which only the columns can read. */
const narrowOfOne = 'narrow places within one part cannot be closed in the exact method';

export function byColumns(candidate: Candidate, because?: string): Settled {
  return {
    candidate,
    columns_mL: candidate.volume_mL,
    caveats: because === undefined ? [] : [`Measured by columns only: ${because}.`],
  };
}

function disagreement(columns_mL: number, pieces: readonly ExactPiece[]): string {
  return `Two methods disagree here: ${rounded(columns_mL)} mL by columns, ${rounded(volumeOf(pieces))} mL exactly on the union of the parts. The exact number counts; look for a crack or a hole that the columns do not see.`;
}
