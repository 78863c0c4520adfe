import type { SampleResult } from '@coveline/project';
import { type SamplingPoint, trendsOf } from '@coveline/review';
import { useMemo } from 'react';
import { m } from '../../messages/index.ts';
import { useChange } from '../../state/changes.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { PasteResults } from './paste-results.tsx';
import { ResultForm } from './result-form.tsx';
import { TrendView } from './trend-view.tsx';

const none: Readonly<Record<string, Omit<SampleResult, 'id'>>> = {};

/** Results are noted or pasted, judged, and watched. */
export function ResultsSection({ points }: { readonly points: readonly SamplingPoint[] }) {
  const { machine, revision } = useMachineData();
  const change = useChange(machine.id);
  const kept = (revision && machine.project.results[revision.id]) ?? none;
  const trends = useMemo(() => trendsOf(Object.entries(kept).map(([id, r]) => ({ id, ...r }))), [kept]);
  const set = (result: string, value: Omit<SampleResult, 'id'> | null) =>
    revision && change.mutate({ do: 'setResult', revision: revision.id, result, set: value });
  const keep = (result: Omit<SampleResult, 'id'>) => set(crypto.randomUUID(), result);
  return (
    <section>
      <h2>{m.proof.results}</h2>
      <ResultForm points={points} onKeep={keep} />
      <PasteResults points={points} onKeep={(results) => results.forEach(keep)} />
      {trends.length === 0 ? <p className="empty">{m.proof.noResults}</p> : null}
      {trends.map((t) => (
        <TrendView key={`${t.point}${t.of}`} trend={t} points={points} onRemove={(id) => set(id, null)} />
      ))}
    </section>
  );
}
