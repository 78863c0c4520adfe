import type { RevisionSummary } from '@coveline/api';
import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import { m } from '../../messages/index.ts';

/** What the reader noticed about the file. */
export function ReaderNotes({ notes }: { readonly notes: RevisionSummary['notes'] }) {
  if (notes.length === 0) return null;
  return (
    <Disclosure className="notes">
      <Heading level={2}>
        <Button slot="trigger" className="quiet">
          {m.parts.notes} ({notes.length})
        </Button>
      </Heading>
      <DisclosurePanel>
        <ul className="plain">
          {notes.map((note) => (
            <li key={`${note.part ?? ''} ${note.text}`}>{note.text}</li>
          ))}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}
