import type { SurfaceGroup } from '@coveline/project';
import { useState } from 'react';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { useChange } from '../../state/changes.ts';
import { useMachineData } from '../machine/machine-context.ts';

interface Props {
  readonly group: SurfaceGroup;
  readonly all: readonly SurfaceGroup[];
}

/** The parts of a group; each can be moved to another one. */
export function PartMover({ group, all }: Props) {
  const [open, setOpen] = useState(false);
  const { machine, revision, model } = useMachineData();
  const change = useChange(machine.id);
  const words = m.cleaning;
  const nameOf = (id: string) => model?.parts.find((p) => p.id === id)?.name ?? id;
  const move = (part: string, to: string) => {
    const target = all.find((g) => g.id === to);
    if (!revision || !target || target.id === group.id) return;
    const keep = ({ id, ...set }: SurfaceGroup) =>
      change.mutate({ do: 'setGroup', revision: revision.id, group: id, set });
    keep({ ...target, parts: [...target.parts, part] });
    keep({ ...group, parts: group.parts.filter((p) => p !== part) });
  };
  return (
    <details open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>
        {words.parts(group.parts.length)}
        <span className="unseen">{`: ${group.name}`}</span>
      </summary>
      {open ? (
        <ul className="plain group-parts">
          {group.parts.map((id) => (
            <li key={id}>
              <span>{nameOf(id)}</span>
              <Choice
                label={words.move}
                value={group.id}
                options={all.map((g) => [g.id, g.name] as const)}
                onChange={(to) => move(id, to)}
              />
            </li>
          ))}
        </ul>
      ) : null}
    </details>
  );
}
