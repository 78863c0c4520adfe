import type { Decision } from '@coveline/project';
import { Button } from 'react-aria-components';
import { m } from '../../../messages/index.ts';
import { showDay } from '../../../numbers/show.ts';

interface Props {
  readonly decision: Decision;
  readonly onEdit: () => void;
  readonly onWithdraw: () => void;
}

/** A decision as it was taken, in words. */
export function DecisionTaken({ decision, onEdit, onWithdraw }: Props) {
  return (
    <div className="decision-taken">
      <p>
        <strong>{m.decision.says[decision.kind]}</strong>
        {decision.kind === 'change' && decision.option ? `: ${decision.option}` : null}
      </p>
      {decision.kind === 'change' && decision.note ? <p>{decision.note}</p> : null}
      {decision.kind === 'doesNotApply' ? <p>{decision.reason}</p> : null}
      {decision.kind === 'concession' ? (
        <>
          <p>
            {decision.reason} ({m.decision.becauseOf[decision.because]})
          </p>
          <ul>
            {decision.controlMeasures.map((c) => (
              <li key={`${c.what} ${c.interval}`}>
                {[c.what, c.interval, c.owner].filter(Boolean).join(' · ')}
              </li>
            ))}
          </ul>
          <p className="soft">{m.decision.grantedUntil(decision.grantedBy, showDay(decision.until))}</p>
        </>
      ) : null}
      <div className="decision-after">
        <Button className="outlined" onPress={onEdit}>
          {m.decision.edit}
        </Button>
        <Button className="quiet" onPress={onWithdraw}>
          {m.decision.withdraw}
        </Button>
      </div>
    </div>
  );
}
