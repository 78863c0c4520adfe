import { Button, Label, ListBox, ListBoxItem, Popover, Select, SelectValue } from 'react-aria-components';

interface Props {
  readonly label: string;
  /** Null shows the placeholder. */
  readonly value: string | null;
  /** Key and words, in order. */
  readonly options: readonly (readonly [string, string])[];
  readonly placeholder?: string;
  readonly onChange: (value: string) => void;
}

/** One of a few. */
export function Choice({ label, value, options, placeholder, onChange }: Props) {
  return (
    <Select
      className="choice"
      value={value}
      placeholder={placeholder ?? ''}
      onChange={(key) => key !== null && onChange(String(key))}
    >
      <Label>{label}</Label>
      <Button className="choice-button">
        <SelectValue />
        <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="react-aria-Popover choice-list">
        <ListBox>
          {options.map(([key, words]) => (
            <ListBoxItem key={key} id={key}>
              {words}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  );
}
