import { useMutation } from '@tanstack/react-query';
import { Button } from 'react-aria-components';
import { api } from '../../api/client.ts';
import { m } from '../../messages/index.ts';
import { acceptJob } from '../../state/live.ts';
import { useJobs } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';

/** Makes the file that is handed over, and opens it. */
export function FilePage() {
  const { machine, revision, review, findings, decisions, decided } = useMachineData();
  const jobs = useJobs(machine.id).data ?? [];
  const make = useMutation({
    mutationFn: () => api.makeFile(machine.id, revision!.id),
    onSuccess: acceptJob,
  });
  const busy = jobs.some((j) => j.kind === 'file' && (j.state === 'waiting' || j.state === 'running'));
  const count = (kind: string) => findings.filter((f) => decisions[f.id]?.kind === kind).length;
  return (
    <div className="page">
      <h1>{m.file.title}</h1>
      <p>{m.file.intro}</p>
      {!revision || !review ? (
        <p className="empty">{m.file.notSurveyed}</p>
      ) : (
        <>
          <h2>{m.file.summary}</h2>
          <dl className="sums">
            {(
              [
                [findings.length, m.file.findings],
                [count('change'), m.file.changes],
                [count('concession'), m.file.concessions],
                [count('doesNotApply'), m.file.doesNotApply],
                [findings.length - decided, m.file.openOnes],
              ] as const
            ).map(([n, words]) => (
              <div key={words}>
                <dt>{words}</dt>
                <dd>{n}</dd>
              </div>
            ))}
          </dl>
          <p>{m.file.open_findings(findings.length - decided)}</p>
          <p role="status">{revision.hasFile ? m.file.there : m.file.none}</p>
          <div className="file-do">
            <Button className="main" isDisabled={busy || make.isPending} onPress={() => make.mutate()}>
              {revision.hasFile ? m.file.makeAgain : m.file.make}
            </Button>
            {revision.hasFile ? (
              <a
                className="button outlined"
                href={api.fileAddress(machine.id, revision.id)}
                target="_blank"
                rel="noreferrer"
              >
                {m.file.open}
              </a>
            ) : null}
          </div>
          {make.error ? <p role="alert">{make.error.message}</p> : null}
          <p className="soft">{m.decisionSupport}</p>
        </>
      )}
    </div>
  );
}
