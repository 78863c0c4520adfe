import type { Job } from '@coveline/api';
import { useEffect, useRef, useState } from 'react';
import { Button, ProgressBar } from 'react-aria-components';
import { api } from '../../api/client.ts';
import { m } from '../../messages/index.ts';
import { showDuration } from '../../numbers/show-duration.ts';
import { announce } from '../../state/announce.ts';
import { acceptJob } from '../../state/live.ts';
import { useJobs } from '../../state/queries.ts';
import { useMachineData } from './machine-context.ts';

const active = (job: Job) => job.state === 'waiting' || job.state === 'running';

/** What the server is doing for this machine, or why the last of it failed. Read from the server, so a reload keeps it. */
export function JobStrip() {
  const { machine, revision } = useMachineData();
  const jobs = useJobs(machine.id).data ?? [];
  const [dismissed, setDismissed] = useState<string | null>(null);
  const running = jobs.filter(active);
  const last = jobs.find((job) => job.revision === revision?.id);
  const bad =
    last && (last.state === 'failed' || last.state === 'cancelled') && last.id !== dismissed ? last : null;
  useSpoken(jobs);
  const noted = last?.state === 'done' && last.id !== dismissed ? (last.notes ?? []) : [];
  const outdated = running.length === 0 && !bad && revision?.outdated ? revision.id : null;
  if (running.length === 0 && !bad && noted.length === 0 && outdated === null) return null;
  return (
    <section className="jobs" aria-label={m.job.label}>
      {running.map((job) => (
        <Running key={job.id} job={job} />
      ))}
      {running.length === 0 && noted.length > 0 ? (
        <p className="job">
          <span className="job-words">{noted.join(' ')}</span>
          <Button className="quiet" onPress={() => setDismissed(last?.id ?? null)}>
            {m.problem.dismiss}
          </Button>
        </p>
      ) : null}
      {outdated !== null ? (
        <p className="job">
          <span className="job-words">{m.job.outdated}</span>
          <MeasureAgain machine={machine.id} revision={outdated} />
        </p>
      ) : null}
      {bad && running.length === 0 ? (
        <p className="job">
          <span className="job-words">
            {bad.state === 'cancelled'
              ? m.job.cancelled(m.job[bad.kind])
              : m.job.failed(m.job[bad.kind], bad.error ?? '')}
          </span>
          {bad.kind === 'survey' ? <MeasureAgain machine={bad.machine} revision={bad.revision} /> : null}
          <Button className="quiet" onPress={() => setDismissed(bad.id)}>
            {m.problem.dismiss}
          </Button>
        </p>
      ) : null}
    </section>
  );
}

function MeasureAgain({ machine, revision }: { readonly machine: string; readonly revision: string }) {
  return (
    <Button
      className="quiet"
      onPress={() =>
        void api.surveyAgain(machine, revision).then(acceptJob, (e: Error) => announce(e.message))
      }
    >
      {m.job.again}
    </Button>
  );
}

function Running({ job }: { readonly job: Job }) {
  const seconds = useSeconds(job);
  const percent = Math.round(job.done * 100);
  const stage = job.state === 'waiting' ? m.job.waiting : job.stage;
  return (
    <div className="job">
      <ProgressBar value={percent} aria-label={m.job[job.kind]} className="job-bar">
        <span className="job-words">
          <strong>{m.job[job.kind]}</strong> {m.job.progress(stage, percent, showDuration(seconds))}
        </span>
        <span className="job-track">
          <span style={{ width: `${percent}%` }} />
        </span>
      </ProgressBar>
      <Button
        className="quiet"
        onPress={() => void api.cancelJob(job.id).then(acceptJob, (e: Error) => announce(e.message))}
      >
        {m.job.cancel}
      </Button>
    </div>
  );
}

/** Seconds since the job began; counts on between two reports of the server. */
function useSeconds(job: Job): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (job.state !== 'running') return;
    const timer = window.setInterval(() => setNow(Date.now()), 1000);
    return () => window.clearInterval(timer);
  }, [job.state]);
  if (job.startedAt) return Math.max(job.seconds ?? 0, (now - new Date(job.startedAt).getTime()) / 1000);
  return job.seconds ?? 0;
}

/** Says when a job ends. Its progress is in the bar, which can be read at any time. */
function useSpoken(jobs: readonly Job[]): void {
  const before = useRef(new Map<string, Job['state']>());
  useEffect(() => {
    for (const job of jobs) {
      const was = before.current.get(job.id);
      before.current.set(job.id, job.state);
      if (was === undefined || was === job.state) continue;
      if (job.state === 'done') announce(m.job.done(m.job[job.kind]));
      if (job.state === 'failed') announce(m.job.failed(m.job[job.kind], job.error ?? ''));
      if (job.state === 'cancelled') announce(m.job.cancelled(m.job[job.kind]));
    }
  }, [jobs]);
}
