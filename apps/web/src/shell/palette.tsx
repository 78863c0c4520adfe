import { useState } from 'react';
import {
  Autocomplete,
  Dialog,
  Header,
  Input,
  Menu,
  MenuItem,
  MenuSection,
  Modal,
  ModalOverlay,
  SearchField,
  useFilter,
} from 'react-aria-components';
import { m } from '../messages/index.ts';
import type { Action } from './keys.ts';
import { closeDialog, useOpenDialog } from './open-dialog.ts';
import { usePaletteItems } from './palette-items.tsx';

/** Findings and parts are many: only this many of each are offered at a time. */
const most = 30;

/** Find a finding, a part, a page, or do something: one field for everything. */
export function Palette({ act }: { readonly act: (action: Action) => void }) {
  const open = useOpenDialog() === 'palette';
  return (
    <ModalOverlay className="veil" isDismissable isOpen={open} onOpenChange={(o) => !o && closeDialog()}>
      <Modal className="palette">
        <Dialog aria-label={m.palette.title}>{open ? <Body act={act} /> : null}</Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Body({ act }: { readonly act: (action: Action) => void }) {
  const [text, setText] = useState('');
  const { contains } = useFilter({ sensitivity: 'base' });
  const groups = usePaletteItems(act).map((group) => ({
    ...group,
    items: group.items.filter((item) => text === '' || contains(item.text, text)).slice(0, most),
  }));
  const all = groups.flatMap((g) => g.items);
  return (
    <Autocomplete inputValue={text} onInputChange={setText}>
      <SearchField aria-label={m.palette.label} autoFocus className="palette-field">
        <Input placeholder={m.palette.placeholder} />
      </SearchField>
      <Menu
        className="palette-list"
        aria-label={m.palette.title}
        renderEmptyState={() => m.palette.none}
        onAction={(id) => {
          closeDialog();
          all.find((item) => item.id === id)?.run();
        }}
      >
        {groups
          .filter((g) => g.items.length > 0)
          .map((group) => (
            <MenuSection key={group.title} aria-label={group.title}>
              <Header>{group.title}</Header>
              {group.items.map((item) => (
                <MenuItem key={item.id} id={item.id} textValue={item.text}>
                  {item.icon}
                  <span className="palette-text">{item.text}</span>
                  {item.hint ? <kbd>{item.hint}</kbd> : null}
                </MenuItem>
              ))}
            </MenuSection>
          ))}
      </Menu>
    </Autocomplete>
  );
}
