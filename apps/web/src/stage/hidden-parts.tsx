import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { m } from '../messages/index.ts';
import { showAllParts, showParts, useViewState } from './view-state.ts';

/** What is hidden or ghosted, in words; opens the list from which each part can be brought back. */
export function HiddenParts({ names }: { readonly names: ReadonlyMap<string, string> }) {
  const { hidden, ghosts } = useViewState();
  if (hidden.size + ghosts.size === 0) return <span>{m.view.nothingHidden}</span>;
  const words = [
    ...(hidden.size > 0 ? [m.view.hidden(hidden.size)] : []),
    ...(ghosts.size > 0 ? [m.view.ghosts(ghosts.size)] : []),
  ].join(', ');
  return (
    <DialogTrigger>
      <Button className="quiet">{words} ▴</Button>
      <Popover placement="top">
        <Dialog className="hidden-parts" aria-label={m.view.hiddenList}>
          <ul className="plain">
            {[...new Set([...hidden, ...ghosts])].map((id) => (
              <li key={id}>
                <span>{names.get(id) ?? id}</span>
                <Button className="quiet" onPress={() => showParts([id])}>
                  {m.view.show}
                </Button>
              </li>
            ))}
          </ul>
          <Button className="outlined" slot="close" onPress={showAllParts}>
            {m.view.showAll}
          </Button>
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
