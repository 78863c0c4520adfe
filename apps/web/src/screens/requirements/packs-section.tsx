import { type Pack, readPack } from '@coveline/catalogue';
import { yardstickOf } from '@coveline/project';
import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { announce } from '../../state/announce.ts';
import { useChange } from '../../state/changes.ts';
import { useMachineData } from '../machine/machine-context.ts';

/** Text only: what the server takes as one change, with room to spare. */
const mostBytes = 500_000;

interface Refusal {
  readonly file: string;
  readonly problems: readonly string[];
}

/** What a user or a company added to the catalogue of this machine. */
export function PacksSection() {
  const { machine, route } = useMachineData();
  const change = useChange(machine.id);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const words = m.packs;
  const { packs } = machine.project;
  const { notes } = yardstickOf(machine.project);

  const take = async (file: File) => {
    const refuse = (problems: readonly string[]) => setRefusal({ file: file.name, problems });
    if (file.size > mostBytes) return refuse([words.tooLarge]);
    let json: unknown;
    try {
      json = JSON.parse(await file.text());
    } catch (error) {
      return refuse([words.notJson((error as Error).message)]);
    }
    const name = (json as { readonly name?: unknown } | null)?.name;
    const others = packs.filter((p) => p.name !== name);
    const read = readPack(json, yardstickOf({ ...machine.project, packs: others }).catalogue);
    if ('problems' in read) return refuse(read.problems);
    setRefusal(null);
    change.mutate({ do: 'setPack', name: read.pack.name, pack: read.pack });
    announce(words.added(read.pack.name));
  };

  return (
    <section className="packs">
      <h2>{words.title}</h2>
      <p className="soft">{words.intro}</p>
      {packs.length === 0 ? <p className="empty">{words.none}</p> : null}
      <ul className="plain">
        {packs.map((pack) => (
          <li key={pack.name}>
            <strong>{pack.name}</strong> <span className="soft">{holdsOf(pack)}</span>{' '}
            <button
              type="button"
              className="quiet"
              aria-label={words.removeNamed(pack.name)}
              onClick={() => change.mutate({ do: 'setPack', name: pack.name, pack: null })}
            >
              {words.remove}
            </button>
          </li>
        ))}
      </ul>
      {packs.some((p) => p.profiles.length > 0) ? (
        <p>
          {words.profile} <Link to={{ ...route, page: 'brief', item: null }}>{words.toBrief}</Link>
        </p>
      ) : null}
      {notes.map((note) => (
        <p key={note} className="missing">
          {note}
        </p>
      ))}
      <FileTrigger
        acceptedFileTypes={['application/json', '.json']}
        onSelect={(list) => {
          const file = list?.[0];
          if (file) void take(file);
        }}
      >
        <Button className="outlined">{words.choose}</Button>
      </FileTrigger>
      {refusal ? (
        <div role="alert" className="missing">
          <p>{words.refused(refusal.file)}</p>
          <ul>
            {refusal.problems.map((p) => (
              <li key={p}>{p}</li>
            ))}
          </ul>
        </div>
      ) : null}
    </section>
  );
}

const holdsOf = ({ requirements, materials, profiles }: Pack) =>
  m.packs.holds(requirements.length, materials.length, profiles.length);
