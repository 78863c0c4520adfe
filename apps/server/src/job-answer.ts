import type { Job } from '@coveline/api';
import type { JobRow } from '@coveline/store';

/** A job as the API shows it. */
export function jobAnswer(row: JobRow): Job {
  const { id, kind, machine, revision, state, stage, done, error, notes, startedAt, endedAt } = row;
  return {
    id,
    kind,
    machine,
    revision,
    state,
    stage,
    done,
    error,
    notes: [...notes],
    startedAt: startedAt?.toISOString() ?? null,
    seconds: startedAt && ((endedAt ?? new Date()).getTime() - startedAt.getTime()) / 1000,
  };
}
