import type { ViewName } from '@coveline/viewer';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { m } from '../messages/index.ts';
import { useViewer } from './viewer-context.ts';

export const sides: readonly ViewName[] = ['front', 'back', 'left', 'right', 'top', 'bottom', 'iso'];

/** The named views as a menu, where the view is too narrow for a row of them. */
export function SideMenu() {
  const viewer = useViewer();
  return (
    <MenuTrigger>
      <Button className="tool tool-side-menu">{m.view.side} ▾</Button>
      <Popover placement="bottom start">
        <Menu onAction={(side) => viewer?.view(side as ViewName)}>
          {sides.map((side) => (
            <MenuItem key={side} id={side}>
              {m.view.views[side]}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
