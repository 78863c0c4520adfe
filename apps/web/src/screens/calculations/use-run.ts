import type { TypedRun } from '@coveline/engineering';
import { useEffect, useState } from 'react';
import { m } from '../../messages/index.ts';
import { locale } from '../../numbers/show.ts';
import { calculate } from './calculate.ts';
import type { Given } from './given.ts';

/** A pause in typing after which the result is worked out. */
const pause_ms = 150;

export interface RunState {
  /** The last one that was worked out; null before the first. */
  readonly run: TypedRun | null;
  readonly underWay: boolean;
  /** One sentence when the program failed, not the person. */
  readonly fault: string | null;
}

/** The result of what is typed, worked out beside the page whenever it changes. */
export function useRun(name: string, given: Given): RunState {
  const [state, setState] = useState<RunState>({ run: null, underWay: true, fault: null });
  useEffect(() => {
    const moved = new AbortController();
    setState((last) => ({ ...last, underWay: true }));
    const timer = setTimeout(async () => {
      try {
        const run = await calculate({ name, given, locale }, moved.signal);
        if (!moved.signal.aborted) setState({ run, underWay: false, fault: null });
      } catch (error) {
        const fault = `${m.calculations.failed}: ${(error as Error).message}`;
        if (!moved.signal.aborted) setState({ run: null, underWay: false, fault });
      }
    }, pause_ms);
    return () => {
      clearTimeout(timer);
      moved.abort();
    };
  }, [name, given]);
  return state;
}
