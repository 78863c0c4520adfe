import type { Decision } from '@coveline/project';
import { useState } from 'react';
import { m } from '../../../messages/index.ts';
import { WordsField } from '../../../shell/words-field.tsx';
import { DecisionForm } from './decision-form.tsx';

interface Props {
  readonly reason: string;
  readonly onKeep: (decision: Decision) => void;
  readonly onCancel: () => void;
}

export function DoesNotApplyForm({ reason: reasonBefore, onKeep, onCancel }: Props) {
  const [reason, setReason] = useState(reasonBefore);
  const [tried, setTried] = useState(false);
  const missing = reason.trim() === '' ? [m.decision.required(m.decision.doesNotApplyReason)] : [];
  return (
    <DecisionForm
      hint=""
      missing={missing}
      tried={tried}
      onSubmit={() => {
        setTried(true);
        if (missing.length === 0) onKeep({ kind: 'doesNotApply', reason: reason.trim() });
      }}
      onCancel={onCancel}
    >
      <WordsField
        label={m.decision.doesNotApplyReason}
        value={reason}
        onChange={setReason}
        lines={3}
        invalid={tried && missing.length > 0}
      />
    </DecisionForm>
  );
}
