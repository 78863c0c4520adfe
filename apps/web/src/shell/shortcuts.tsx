import { useEffect } from 'react';
import { useMachineData } from '../screens/machine/machine-context.ts';
import { useStepBack } from '../state/changes.ts';
import { preferences } from '../state/preferences.ts';
import { HelpDialog } from './help-dialog.tsx';
import { singleKeys, takesLetters } from './keys.ts';
import { openDialog } from './open-dialog.ts';
import { Palette } from './palette.tsx';
import { useAct } from './use-act.ts';

/** Listens for the keys of a machine's pages, and holds the two dialogs that they open. */
export function Shortcuts() {
  const { machine } = useMachineData();
  const act = useAct();
  const undo = useStepBack(machine.id, 'undo').mutate;
  const redo = useStepBack(machine.id, 'redo').mutate;
  const { canUndo, canRedo } = machine;

  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const typing = takesLetters(event.target);
      const control = event.ctrlKey || event.metaKey;
      const key = event.key.toLowerCase();
      if (control && key === 'k') openDialog('palette');
      else if (control && key === 'z' && !typing) {
        if (event.shiftKey) canRedo !== null && redo();
        else canUndo !== null && undo();
      } else if (!control && !event.altKey && !typing && preferences().singleKeys && singleKeys[key])
        act(singleKeys[key]);
      else return;
      event.preventDefault();
      event.stopPropagation();
    };
    // Before the lists and tables, which would take a letter as the beginning of a name.
    window.addEventListener('keydown', press, { capture: true });
    return () => window.removeEventListener('keydown', press, { capture: true });
  }, [act, undo, redo, canUndo, canRedo]);

  return (
    <>
      <Palette act={act} />
      <HelpDialog />
    </>
  );
}
