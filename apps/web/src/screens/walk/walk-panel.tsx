import { useMachineData } from '../machine/machine-context.ts';
import { FindingsList } from './findings-list.tsx';
import { Slip } from './slip/slip.tsx';
import './walk.css';

/** Beside the view: the list of findings, or the one that was chosen. */
export function WalkPanel() {
  const { route } = useMachineData();
  return route.item === null ? <FindingsList /> : <Slip key={route.item} finding={route.item} />;
}
