import { Label, Radio, RadioGroup } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';
import type { SectionProps } from './brief-page.tsx';
import { SavedWords } from './saved-words.tsx';

/** Use, consumers and surroundings. */
export function PurposeSection({ brief, set }: SectionProps) {
  const surroundings = (change: Partial<typeof brief.environment>) =>
    set({ environment: { ...brief.environment, ...change } });
  return (
    <section>
      <h2>{m.brief.purpose}</h2>
      <SavedWords
        label={m.brief.purpose}
        hint={m.brief.purposeHint}
        value={brief.purpose}
        lines={3}
        onSave={(purpose) => set({ purpose })}
      />
      <RadioGroup
        className="row"
        orientation="horizontal"
        value={brief.consumers}
        onChange={(consumers) => set({ consumers: consumers as typeof brief.consumers })}
      >
        <Label>{m.brief.consumers}</Label>
        {(['general', 'vulnerable'] as const).map((who) => (
          <Radio key={who} value={who}>
            {m.brief.consumerKinds[who]}
          </Radio>
        ))}
      </RadioGroup>
      <h3>{m.brief.environment}</h3>
      <SavedWords
        label={m.brief.surroundings}
        value={brief.environment.description}
        onSave={(description) => surroundings({ description })}
      />
      <div className="pair">
        <QuantityField
          label={m.brief.room}
          value={brief.environment.room_degC}
          unit="degC"
          low={-40}
          high={60}
          onChange={(v) => v !== null && surroundings({ room_degC: v })}
        />
        <QuantityField
          label={m.brief.humidity}
          value={brief.environment.relativeHumidity_percent}
          unit="%"
          low={0}
          high={100}
          onChange={(v) => v !== null && surroundings({ relativeHumidity_percent: v })}
        />
      </div>
    </section>
  );
}
