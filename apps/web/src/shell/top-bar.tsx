import { Button } from 'react-aria-components';
import { m } from '../messages/index.ts';
import { showAgo } from '../numbers/show.ts';
import { Link } from '../routing/link.tsx';
import { useMachineData } from '../screens/machine/machine-context.ts';
import { saysInvented } from '../screens/start/says-invented.ts';
import { dismissChangeFailure, useChangeFailure, useChangesUnderWay, useStepBack } from '../state/changes.ts';
import { useWaiting } from '../state/waiting.ts';
import { openDialog } from './open-dialog.ts';
import { RevisionMenu } from './revision-menu.tsx';

export function TopBar() {
  const { machine, revision, findings, decided, review, route } = useMachineData();
  return (
    <header className="top">
      <Link to={{ at: 'start' }} className="top-home">
        {m.product}
      </Link>
      <strong className="top-name">{machine.name}</strong>
      <span className="top-facts">
        {saysInvented(machine) ? <span>{m.start.invented}</span> : null}
        <RevisionMenu />
        {revision?.parts != null ? <span>{m.top.parts(revision.parts)}</span> : null}
        <span>{revision?.surveyedAt ? m.top.surveyed(showAgo(revision.surveyedAt)) : m.top.notSurveyed}</span>
      </span>
      <span className="top-space" />
      <span className="top-state">
        {review ? <span>{m.top.findings(findings.length, decided)}</span> : null}
        <Kept />
      </span>
      <StepBack machine={machine.id} direction="undo" what={machine.canUndo} />
      <StepBack machine={machine.id} direction="redo" what={machine.canRedo} />
      <Link className="button quiet" to={{ ...route, page: 'history', item: null }}>
        {m.history.title}
      </Link>
      <Link className="button quiet" to={{ ...route, page: 'calculations', item: null }}>
        {m.keep.count(machine.project.calculations.length)}
      </Link>
      <Button className="outlined" onPress={() => openDialog('palette')}>
        {m.top.find} <kbd>Ctrl K</kbd>
      </Button>
      <Button className="quiet" aria-label={m.top.help} onPress={() => openDialog('help')}>
        ?
      </Button>
    </header>
  );
}

/** Whether everything that was changed is kept, and if not, why. */
function Kept() {
  const underWay = useChangesUnderWay();
  const failure = useChangeFailure();
  const waiting = useWaiting();
  if (failure)
    return (
      <span className="top-failed" role="alert">
        {m.kept.failed(failure)}{' '}
        <Button className="quiet" onPress={dismissChangeFailure}>
          {m.problem.dismiss}
        </Button>
      </span>
    );
  if (waiting > 0)
    return (
      <span className="top-waiting" role="status">
        {m.kept.waiting(waiting)}
      </span>
    );
  return <span data-kept={underWay === 0}>{underWay > 0 ? m.kept.underWay : m.kept.all}</span>;
}

interface StepProps {
  readonly machine: string;
  readonly direction: 'undo' | 'redo';
  readonly what: string | null;
}

function StepBack({ machine, direction, what }: StepProps) {
  const step = useStepBack(machine, direction);
  // What waits comes first: until then nobody knows what the last change is.
  const some = useWaiting() > 0;
  return (
    <Button
      className="quiet"
      isDisabled={what === null || step.isPending || some}
      aria-label={m.top[direction](what)}
      onPress={() => step.mutate()}
    >
      {direction === 'undo' ? m.top.undoShort : m.top.redoShort}
    </Button>
  );
}
