import { cleaningWay } from '@coveline/project';
import { Checkbox, CheckboxGroup, Label } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';
import type { SectionProps } from './brief-page.tsx';
import { SavedWords } from './saved-words.tsx';
import { wordList } from './word-list.ts';

export function CleaningSection({ brief, set }: SectionProps) {
  const { cleaning } = brief;
  const change = (part: Partial<typeof cleaning>) => set({ cleaning: { ...cleaning, ...part } });
  return (
    <section>
      <h2>{m.brief.cleaning}</h2>
      <CheckboxGroup
        value={cleaning.ways}
        onChange={(ways) => change({ ways: ways as typeof cleaning.ways })}
      >
        <Label>{m.brief.ways}</Label>
        {cleaningWay.options.map((way) => (
          <Checkbox key={way} value={way}>
            <span className="check" /> {m.brief.wayNames[way]}
          </Checkbox>
        ))}
      </CheckboxGroup>
      <div className="pair">
        <QuantityField
          label={m.brief.interval}
          value={cleaning.interval_h}
          unit="h"
          low={0.01}
          high={10_000}
          onChange={(v) => v !== null && change({ interval_h: v })}
        />
        <QuantityField
          label={m.brief.rinse}
          value={cleaning.rinse_degC}
          unit="degC"
          low={0}
          high={100}
          onChange={(v) => v !== null && change({ rinse_degC: v })}
        />
      </div>
      <SavedWords
        label={m.brief.agents}
        value={cleaning.agents.join(', ')}
        onSave={(text) => change({ agents: wordList(text) })}
      />
    </section>
  );
}
