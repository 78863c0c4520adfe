import type { MachineSummary, RevisionSummary } from '@coveline/api';
import { useEffect } from 'react';
import { m } from '../../messages/index.ts';
import { showAgo, showCount } from '../../numbers/show.ts';
import { Link } from '../../routing/link.tsx';
import { useMachines } from '../../state/queries.ts';
import { OpenModel } from './open-model.tsx';
import { saysInvented } from './says-invented.ts';
import './start.css';

/** The machines that there are, and the way to open a new one. */
export function StartScreen() {
  const { data: machines, error } = useMachines();
  useEffect(() => {
    document.title = m.product;
  }, []);
  return (
    <div className="start">
      <header className="start-head">
        <p className="start-name">{m.product}</p>
        <p className="soft">{m.purpose}</p>
        <p>
          <Link to={{ at: 'calculations', name: null, kept: null }}>{m.calculations.title}</Link>
        </p>
      </header>
      <main id="main" tabIndex={-1}>
        <div className="start-title">
          <h1>{m.start.title}</h1>
          <OpenModel machine={null} droppable />
        </div>
        {error ? <p role="alert">{error.message}</p> : null}
        {machines?.length === 0 ? <p className="empty">{m.start.none}</p> : null}
        <ul className="machines">
          {machines?.map((machine) => (
            <MachineRow key={machine.id} machine={machine} />
          ))}
        </ul>
      </main>
      <footer className="soft">{m.decisionSupport}</footer>
    </div>
  );
}

function MachineRow({ machine }: { readonly machine: MachineSummary }) {
  const to = { at: 'machine', machine: machine.id, revision: null, page: 'walk', item: null } as const;
  return (
    <li className="machine-row">
      <h2>
        <Link to={to}>{machine.name}</Link>
        {saysInvented(machine) ? <span className="soft"> · {m.start.invented}</span> : null}
      </h2>
      <p className="soft">{m.start.changed(showAgo(machine.changedAt))}</p>
      <ul>
        {[...machine.revisions].reverse().map((r) => (
          <li key={r.id}>
            <Link to={{ ...to, revision: r.id }}>{r.label}</Link>
            <span>{r.file}</span>
            <span className="figure">
              {r.parts !== null ? m.start.parts(showCount(r.parts)) : ''}
              {r.triangles !== null ? ` · ${m.start.triangles(showCount(r.triangles))}` : ''}
            </span>
            <span className="figure">{stateOf(r)}</span>
          </li>
        ))}
      </ul>
    </li>
  );
}

function stateOf(r: RevisionSummary): string {
  if (r.outdated) return m.start.state.outdated;
  if (r.surveyedAt === null) return r.parts === null ? m.start.state.unread : m.start.state.read;
  const findings = m.start.state.surveyed(r.findings ?? 0, r.decided ?? 0);
  return r.hasFile ? `${findings} · ${m.start.hasFile}` : findings;
}
