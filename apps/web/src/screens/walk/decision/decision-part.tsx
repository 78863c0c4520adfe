import type { Decision } from '@coveline/project';
import type { Finding } from '@coveline/review';
import { useRef, useState } from 'react';
import { m } from '../../../messages/index.ts';
import { announce } from '../../../state/announce.ts';
import { useChange } from '../../../state/changes.ts';
import { useMachineData } from '../../machine/machine-context.ts';
import { ChangeForm } from './change-form.tsx';
import { ConcessionForm } from './concession-form.tsx';
import { DecisionTaken } from './decision-taken.tsx';
import { DoesNotApplyForm } from './does-not-apply-form.tsx';

const kinds = ['change', 'concession', 'doesNotApply'] as const;
type DecisionKind = (typeof kinds)[number];

interface Props {
  readonly finding: Finding;
  /** Remedy that was chosen above. */
  readonly option: string;
  readonly onOption: (option: string) => void;
}

/** What is done about the finding: the decision that was taken, the three that can be, or the form of one. */
export function DecisionPart({ finding, option, onOption }: Props) {
  const { machine, revision, decisions } = useMachineData();
  const change = useChange(machine.id);
  const taken = decisions[finding.id];
  const [form, setForm] = useState<DecisionKind | null>(null);
  const section = useRef<HTMLElement>(null);
  const focusSection = () => requestAnimationFrame(() => section.current?.focus());

  const send = (decision: Decision | null) => {
    setForm(null);
    focusSection();
    change.mutate(
      { do: 'decide', revision: revision!.id, finding: finding.id, decision },
      {
        onSuccess: () =>
          announce(decision ? m.decision.made(m.decision.says[decision.kind]) : m.decision.withdrawn),
      },
    );
  };
  const cancel = () => {
    setForm(null);
    focusSection();
  };
  const before = taken && taken.kind === form ? taken : undefined;

  return (
    <section className="decision" ref={section} tabIndex={-1} aria-label={m.slip.decision}>
      <h2>{m.slip.decision}</h2>
      {form === null && taken ? (
        <DecisionTaken decision={taken} onEdit={() => setForm(taken.kind)} onWithdraw={() => send(null)} />
      ) : null}
      {form !== null || !taken ? (
        <div className="decision-kinds">
          {kinds.map((kind, index) => (
            <button
              key={kind}
              type="button"
              className={form === kind || (form === null && index === 0) ? 'main' : 'outlined'}
              aria-expanded={form === kind}
              onClick={() => setForm(kind)}
            >
              {m.decision[kind]}
            </button>
          ))}
        </div>
      ) : null}
      {form === 'change' ? (
        <ChangeForm
          remedies={finding.remedies.map((r) => r.text)}
          option={option || (before?.kind === 'change' ? before.option : '')}
          onOption={onOption}
          note={before?.kind === 'change' ? before.note : ''}
          onKeep={send}
          onCancel={cancel}
        />
      ) : null}
      {form === 'concession' ? (
        <ConcessionForm
          before={before?.kind === 'concession' ? before : null}
          proposedControl={finding.conflict?.control ?? ''}
          onKeep={send}
          onCancel={cancel}
        />
      ) : null}
      {form === 'doesNotApply' ? (
        <DoesNotApplyForm
          reason={before?.kind === 'doesNotApply' ? before.reason : ''}
          onKeep={send}
          onCancel={cancel}
        />
      ) : null}
    </section>
  );
}
