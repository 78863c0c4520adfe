import type { ControlMeasure, Decision } from '@coveline/project';
import { useState } from 'react';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { m } from '../../../messages/index.ts';
import { WordsField } from '../../../shell/words-field.tsx';
import { ControlMeasures } from './control-measures.tsx';
import { DecisionForm } from './decision-form.tsx';

type Concession = Extract<Decision, { kind: 'concession' }>;

interface Props {
  readonly before: Concession | null;
  /** What the catalogue offers as a control measure for this conflict. */
  readonly proposedControl: string;
  readonly onKeep: (decision: Decision) => void;
  readonly onCancel: () => void;
}

const because = ['function', 'safety', 'cost', 'availability'] as const;

const samePerson = (a: string, b: string) =>
  a.trim() !== '' && a.trim().toLowerCase() === b.trim().toLowerCase();

/** Without the fields that were left empty. */
function filled<K extends string>(fields: Record<K, string | undefined>): Partial<Record<K, string>> {
  const kept = Object.entries<string | undefined>(fields).filter(
    ([, v]) => v !== undefined && v.trim() !== '',
  );
  return Object.fromEntries(kept) as Partial<Record<K, string>>;
}

export function ConcessionForm({ before, proposedControl, onKeep, onCancel }: Props) {
  const [draft, setDraft] = useState<Omit<Concession, 'kind'>>(
    before ?? {
      reason: '',
      because: 'function',
      controlMeasures: [{ what: proposedControl, interval: '', owner: '' }],
      grantedBy: '',
      until: '',
    },
  );
  const [tried, setTried] = useState(false);
  const set = (change: Partial<typeof draft>) => setDraft({ ...draft, ...change });
  const measures = draft.controlMeasures.filter((c) => c.what.trim() !== '');
  const empty = (text: string) => text.trim() === '';
  const own = samePerson(draft.approvedBy ?? '', draft.grantedBy);
  const missing = [
    ...(empty(draft.reason) ? [m.decision.required(m.decision.reason)] : []),
    ...(measures.length === 0 ? [m.decision.required(m.decision.what)] : []),
    ...(empty(draft.grantedBy) ? [m.decision.required(m.decision.grantedBy)] : []),
    ...(empty(draft.until) ? [m.decision.badDate] : []),
    ...(own ? [m.decision.ownApproval] : []),
  ];
  const submit = () => {
    setTried(true);
    if (missing.length > 0) return;
    const { alternatives, evidence, approvedBy, reviewOn, ...needed } = draft;
    onKeep({
      ...needed,
      ...filled({ alternatives, evidence, approvedBy, reviewOn }),
      kind: 'concession',
      reason: draft.reason.trim(),
      grantedBy: draft.grantedBy.trim(),
      controlMeasures: measures,
    });
  };

  return (
    <DecisionForm
      hint={m.decision.concessionHint}
      missing={missing}
      tried={tried}
      onSubmit={submit}
      onCancel={onCancel}
    >
      <WordsField
        label={m.decision.reason}
        value={draft.reason}
        onChange={(reason) => set({ reason })}
        lines={3}
        invalid={tried && empty(draft.reason)}
      />
      <RadioGroup
        className="row"
        orientation="horizontal"
        value={draft.because}
        onChange={(value) => set({ because: value as Concession['because'] })}
      >
        <Label>{m.decision.because}</Label>
        {because.map((key) => (
          <Radio key={key} value={key}>
            {m.decision.becauseOf[key]}
          </Radio>
        ))}
      </RadioGroup>
      <ControlMeasures
        measures={draft.controlMeasures}
        onChange={(controlMeasures: ControlMeasure[]) => set({ controlMeasures })}
        invalid={tried && measures.length === 0}
      />
      <WordsField
        label={m.decision.alternatives}
        value={draft.alternatives ?? ''}
        onChange={(alternatives) => set({ alternatives })}
        lines={2}
      />
      <WordsField
        label={m.decision.evidence}
        value={draft.evidence ?? ''}
        onChange={(evidence) => set({ evidence })}
        lines={2}
      />
      <div className="pair">
        <WordsField
          label={m.decision.grantedBy}
          value={draft.grantedBy}
          onChange={(grantedBy) => set({ grantedBy })}
          invalid={tried && empty(draft.grantedBy)}
        />
        <WordsField
          label={m.decision.until}
          value={draft.until}
          onChange={(until) => set({ until })}
          type="date"
          invalid={tried && empty(draft.until)}
        />
        <WordsField
          label={m.decision.approvedBy}
          value={draft.approvedBy ?? ''}
          onChange={(approvedBy) => set({ approvedBy })}
          invalid={tried && own}
        />
        <WordsField
          label={m.decision.reviewOn}
          value={draft.reviewOn ?? ''}
          onChange={(reviewOn) => set({ reviewOn })}
          type="date"
        />
      </div>
    </DecisionForm>
  );
}
