import type { TypedRun } from '@coveline/engineering';
import { useEffect, useState } from 'react';
import { m } from '../../messages/index.ts';
import { calculate, type Reply } from './calculate.ts';
import type { Given } from './given.ts';

/** A pause in typing after which the result is worked out. */
const pause_ms = 150;

export interface RunState {
  /** The last one that was worked out; null before the first. */
  readonly run: TypedRun | null;
  readonly underWay: boolean;
  /** One sentence when it was not the values that stood in the way. */
  readonly fault: string | null;
}

/** The result of what is typed, worked out beside the page whenever it changes. `locale` is that of the texts. */
export function useRun(name: string, given: Given, locale: string): RunState {
  const [state, setState] = useState<RunState>({ run: null, underWay: true, fault: null });
  useEffect(() => {
    const moved = new AbortController();
    setState((last) => ({ ...last, underWay: true }));
    const timer = setTimeout(async () => {
      const reply = await calculate({ name, given, locale }, moved.signal);
      if (moved.signal.aborted) return;
      const run = reply.kind === 'run' ? reply.run : null;
      setState({ run, underWay: false, fault: faultOf(reply) });
    }, pause_ms);
    return () => {
      clearTimeout(timer);
      moved.abort();
    };
  }, [name, given, locale]);
  return state;
}

function faultOf(reply: Reply): string | null {
  if (reply.kind === 'unreadable') return m.calculations.unreadable(reply.file);
  return reply.kind === 'fault' ? m.calculations.failed(reply.message) : null;
}
