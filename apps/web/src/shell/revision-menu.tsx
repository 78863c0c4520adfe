import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { go } from '../routing/use-route.ts';
import { useMachineData } from '../screens/machine/machine-context.ts';

/** Names the revision; with several it is a menu. */
export function RevisionMenu() {
  const { machine, revision, route } = useMachineData();
  if (!revision) return null;
  if (machine.revisions.length < 2) return <span>{revision.label}</span>;
  return (
    <MenuTrigger>
      <Button className="quiet">{revision.label} ▾</Button>
      <Popover placement="bottom start">
        <Menu
          selectionMode="single"
          selectedKeys={[revision.id]}
          onAction={(id) => go({ ...route, revision: String(id), item: null })}
        >
          {machine.revisions.map((r) => (
            <MenuItem key={r.id} id={r.id}>
              {r.label}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
