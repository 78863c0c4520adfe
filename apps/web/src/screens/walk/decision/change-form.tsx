import type { Decision } from '@coveline/project';
import { useState } from 'react';
import { m } from '../../../messages/index.ts';
import { Choice } from '../../../shell/choice.tsx';
import { WordsField } from '../../../shell/words-field.tsx';
import { DecisionForm } from './decision-form.tsx';

interface Props {
  readonly remedies: readonly string[];
  readonly option: string;
  readonly onOption: (option: string) => void;
  readonly note: string;
  readonly onKeep: (decision: Decision) => void;
  readonly onCancel: () => void;
}

export function ChangeForm({ remedies, option, onOption, note: noteBefore, onKeep, onCancel }: Props) {
  const choices = option === '' || remedies.includes(option) ? remedies : [option, ...remedies];
  const [note, setNote] = useState(noteBefore);
  return (
    <DecisionForm
      hint={m.decision.changeHint}
      missing={[]}
      tried={false}
      onSubmit={() => onKeep({ kind: 'change', note, option })}
      onCancel={onCancel}
    >
      <Choice
        label={m.decision.chosenOption}
        value={option || 'none'}
        options={[['none', m.decision.noOption], ...choices.map((r) => [r, r] as const)]}
        onChange={(key) => onOption(key === 'none' ? '' : key)}
      />
      <WordsField label={m.decision.note} value={note} onChange={setNote} lines={3} />
    </DecisionForm>
  );
}
