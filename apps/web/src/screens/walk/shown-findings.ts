import { isDecided, standingOf } from '@coveline/project';
import type { Finding } from '@coveline/review';
import { today } from '../../numbers/show.ts';
import { kindOf } from '../../signs/kind.ts';
import type { MachineData } from '../machine/machine-context.ts';
import type { Filter } from './filter.ts';

/** The findings that pass the filter, in the order of the review. */
export function shownFindings(
  { findings, decisions }: Pick<MachineData, 'findings' | 'decisions'>,
  { kind, area, state }: Filter,
): Finding[] {
  return findings.filter(
    (f) =>
      (kind === 'all' || kindOf(f) === kind) &&
      (area === 'all' || f.areaClass === area) &&
      (state === 'all' || isDecided(standingOf(decisions[f.id], today())) === (state === 'decided')),
  );
}
