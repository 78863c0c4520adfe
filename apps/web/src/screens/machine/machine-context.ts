import type { Drawings, Machine, RevisionSummary } from '@coveline/api';
import type { Model } from '@coveline/model';
import type { Decision, PartData } from '@coveline/project';
import type { Finding, ReviewResult } from '@coveline/review';
import type { SurveyResult } from '@coveline/survey';
import { createContext, useContext } from 'react';
import type { MachineRoute } from '../../routing/route.ts';
import type { RevisionAt } from '../../state/queries.ts';

/** What the pages of one machine share. Fields are undefined while they are on their way. */
export interface MachineData {
  readonly route: MachineRoute;
  readonly machine: Machine;
  /** Null while the machine has no model. */
  readonly revision: RevisionSummary | null;
  readonly at: RevisionAt | null;
  readonly model: Model | undefined;
  readonly survey: SurveyResult | undefined;
  /** Of the places that findings name, with all of the chosen finding's. */
  readonly drawings: Drawings | undefined;
  /** The drawings of the chosen finding are still on their way. */
  readonly drawing: boolean;
  readonly review: ReviewResult | undefined;
  readonly findings: readonly Finding[];
  readonly parts: readonly PartData[];
  readonly decisions: Readonly<Record<string, Decision>>;
  /** Findings that carry a decision. */
  readonly decided: number;
}

export const MachineContext = createContext<MachineData | null>(null);

export function useMachineData(): MachineData {
  const data = useContext(MachineContext);
  if (!data) throw new Error('This part of the screen belongs inside a machine.');
  return data;
}
