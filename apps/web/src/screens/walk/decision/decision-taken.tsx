import { type Decision, standingOf } from '@coveline/project';
import { Button } from 'react-aria-components';
import { m } from '../../../messages/index.ts';
import { showDay, today } from '../../../numbers/show.ts';

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
          {decision.alternatives ? <p>{m.decision.weighed(decision.alternatives)}</p> : null}
          {decision.evidence ? <p>{m.decision.shownBy(decision.evidence)}</p> : null}
          <p className="soft">{m.decision.grantedUntil(decision.grantedBy, showDay(decision.until))}</p>
          <p className="soft">
            {decision.approvedBy ? m.decision.approved(decision.approvedBy) : m.decision.notApproved}
            {decision.reviewOn ? ` · ${m.decision.review(showDay(decision.reviewOn))}` : null}
          </p>
          {standingOf(decision, today()) === 'ended' ? <p className="missing">{m.decision.ended}</p> : null}
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
