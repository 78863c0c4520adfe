import {
  type SiteChange,
  type SiteEntry,
  type SiteItem,
  siteEntries,
  siteItem,
  siteOf,
} from '@coveline/project';
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { api } from '../../api/client.ts';
import { m } from '../../messages/index.ts';
import { Notes } from '../../shell/notes.tsx';
import { announce } from '../../state/announce.ts';
import { useChange } from '../../state/changes.ts';
import { acceptJob } from '../../state/live.ts';
import { useJobs, useSite } from '../../state/queries.ts';
import { newId } from '../calculations/new-id.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { AddToSite } from './add-to-site.tsx';
import { sameSite } from './same-site.ts';
import { SiteLine } from './site-line.tsx';
import './site.css';

const added = 'added:';
const kinds = siteItem.options.map((option) => option.shape.what.value);

/** What is proposed of the surroundings of the machine, and what people said of it. */
export function SitePage() {
  const { machine, revision, at } = useMachineData();
  const { data: site, error } = useSite(at);
  const change = useChange(machine.id);
  const [opened, setOpened] = useState<string | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  if (!revision || !site)
    return (
      <div className="page">
        <h1>{m.site.title}</h1>
        <p className="empty">{error?.message ?? m.site.notYet}</p>
      </div>
    );
  const changes = machine.project.site[revision.id] ?? {};
  const entries = siteEntries(changes, site.proposals);
  const set = (item: string, next: SiteChange | null) =>
    change.mutate({ do: 'setSite', revision: revision.id, item, change: next });
  const add = (item: SiteItem) => {
    const id = `${added}${newId()}`;
    set(id, { do: 'set', item });
    setOpened(id);
    announce(m.site.added(m.site.one[item.what]));
  };
  const now = siteOf(changes, site.proposals);
  return (
    <div className="page page-wide">
      <h1 ref={heading} tabIndex={-1}>
        {m.site.title}
      </h1>
      <p className="soft">{m.site.intro}</p>
      <Notes title={m.parts.notes} notes={site.notes} />
      {site.surveyed && sameSite(now, site.surveyed) ? null : <Stale />}
      <AddToSite onAdd={add} />
      {kinds.map((kind) => (
        <Kind
          key={kind}
          kind={kind}
          entries={entries.filter((e) => e.item.what === kind)}
          opened={opened}
          onChange={(id, next) => {
            set(id, next);
            // What was added is gone, and the button that said so with it.
            if (next === null && id.startsWith(added)) heading.current?.focus();
          }}
        />
      ))}
    </div>
  );
}

interface KindProps {
  readonly kind: SiteItem['what'];
  readonly entries: readonly SiteEntry[];
  readonly opened: string | null;
  readonly onChange: (id: string, change: SiteChange | null) => void;
}

function Kind({ kind, entries, opened, onChange }: KindProps) {
  if (entries.length === 0) return null;
  return (
    <section className="site-kind" aria-label={m.site.kinds[kind]}>
      <h2>{m.site.kinds[kind]}</h2>
      <ul className="plain">
        {entries.map((entry) => (
          <li key={entry.id}>
            <SiteLine
              entry={entry}
              isOpen={entry.id === opened}
              onChange={(change) => onChange(entry.id, change)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The results on the other pages were measured with another site. */
function Stale() {
  const { machine, revision } = useMachineData();
  const jobs = useJobs(machine.id).data ?? [];
  const busy = jobs.some((j) => j.kind === 'survey' && (j.state === 'waiting' || j.state === 'running'));
  const again = () =>
    void api.surveyAgain(machine.id, revision!.id).then(acceptJob, (e: Error) => announce(e.message));
  return (
    <p className="site-stale" role="status">
      {m.site.stale}{' '}
      <Button className="outlined" isDisabled={busy} onPress={again}>
        {m.site.again}
      </Button>
    </p>
  );
}
