import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { useMachineData } from '../machine/machine-context.ts';

interface Props {
  readonly parts: readonly string[];
  readonly onChange: (parts: string[]) => void;
}

const lastName = (id: string) => id.slice(id.lastIndexOf('/') + 1);

/** The parts that something of the site consists of. */
export function PartsField({ parts, onChange }: Props) {
  const all = useMachineData().model?.parts ?? [];
  const others = all.filter(({ id }) => !parts.includes(id));
  return (
    <div className="site-parts">
      <span className="soft">{m.site.parts}</span>
      <ul className="plain">
        {parts.map((id) => (
          <li key={id}>
            {lastName(id)}
            <Button
              className="quiet"
              aria-label={m.site.removePart(lastName(id))}
              onPress={() => onChange(parts.filter((other) => other !== id))}
            >
              ✕
            </Button>
          </li>
        ))}
      </ul>
      <Choice
        label={m.site.addPart}
        value={null}
        placeholder={m.calculations.choose}
        options={others.map(({ id }) => [id, lastName(id)] as const)}
        onChange={(id) => onChange([...parts, id])}
      />
    </div>
  );
}
