/**
 * Why a finding stands where it stands. Severity first: whom it can reach (area class and level of care) gives the
 * rank; what the fault does, and how surely it is known, can lower it by one step each. Nothing is multiplied.
 */
import type { AreaClass } from '@coveline/catalogue';
import type { CareLevel } from '@coveline/project';
import type { Draft } from './draft.ts';
import type { Consequence } from './types.ts';

type Rank = Consequence['rank'];

const severity: Record<AreaClass, Record<CareLevel, Rank>> = {
  food: { high: 1, raised: 1, basic: 2 },
  splash: { high: 2, raised: 3, basic: 3 },
  nonFood: { high: 3, raised: 4, basic: 4 },
};

const reach: Record<AreaClass, string> = {
  food: 'Food area: what stays or falls here gets into product',
  splash: 'Splash area: what stays here can reach product by drops, hands and tools',
  nonFood: 'Non-food area: it reaches product only by a detour',
};

const careWords: Record<CareLevel, string> = {
  high: 'high care',
  raised: 'raised care',
  basic: 'basic care',
};

export interface Placed {
  readonly consequence: Consequence;
  /** Reasons that lower it, beyond what the lowest rank can show; orders within a rank. */
  readonly beyond: number;
}

export function consequenceOf(draft: Draft, care: CareLevel): Placed {
  const start = severity[draft.area][care];
  const steps: string[] = [];
  if (draft.harm === 'hinders')
    steps.push('the place is harder to clean, but nothing is kept there by force');
  if (draft.slight) steps.push(draft.slight);
  if (draft.status === 'notShown') steps.push('it is not shown, rather than known');
  const rank = Math.min(4, start + steps.length) as Rank;
  const lowered =
    steps.length === 0
      ? ''
      : ` It stands ${rank > start ? 'lower' : 'last in it'} because ${steps.join(', and because ')}.`;
  return {
    consequence: {
      rank,
      weight: draft.weight,
      weightLabel: draft.weightLabel,
      reason: `${reach[draft.area]}; ${careWords[care]} asks for rank ${start}.${lowered}`,
    },
    beyond: start + steps.length - rank,
  };
}
