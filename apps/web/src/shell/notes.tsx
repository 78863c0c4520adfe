import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';

interface Props {
  readonly title: string;
  readonly notes: readonly string[];
}

/** What should be known beside the result: closed at first, with its number. */
export function Notes({ title, notes }: Props) {
  if (notes.length === 0) return null;
  return (
    <Disclosure className="notes">
      <Heading level={2}>
        <Button slot="trigger" className="quiet">
          {title} ({notes.length})
        </Button>
      </Heading>
      <DisclosurePanel>
        <ul>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}
