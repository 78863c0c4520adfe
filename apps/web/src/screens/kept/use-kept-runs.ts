import { againstBefore, findCalculation, type RunAgain, runAgain } from '@coveline/engineering';
import type { KeptCalculation } from '@coveline/project';
import { useEffect, useState } from 'react';
import { calculate } from '../calculations/calculate.ts';

/** What each kept calculation gives now, by id, worked out beside the page one after the other. */
export function useKeptRuns(kept: readonly KeptCalculation[]): ReadonlyMap<string, RunAgain> {
  const [runs, setRuns] = useState<ReadonlyMap<string, RunAgain>>(new Map());
  useEffect(() => {
    const left = new AbortController();
    void (async () => {
      for (const one of kept) {
        const again = await workOut(one, left.signal);
        if (left.signal.aborted) return;
        setRuns((before) => new Map(before).set(one.id, again));
      }
    })();
    return () => left.abort();
  }, [kept]);
  return runs;
}

async function workOut(kept: KeptCalculation, signal: AbortSignal): Promise<RunAgain> {
  const entry = findCalculation(kept.calculation);
  // The sentence that there is none takes no time.
  if (entry === undefined) return runAgain(kept);
  const reply = await calculate({ name: entry.name, given: kept.inputs, locale: kept.locale }, signal);
  if (reply.kind === 'run') return againstBefore(entry, reply.run, kept.gave);
  const refusal = reply.kind === 'fault' ? reply.message : reply.file;
  return { entry, run: null, gives: null, refusal, changed: false };
}
