import type { ControlMeasure } from '@coveline/project';
import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../../messages/index.ts';
import { WordsField } from '../../../shell/words-field.tsx';

interface Props {
  readonly measures: readonly ControlMeasure[];
  readonly onChange: (measures: ControlMeasure[]) => void;
  readonly invalid: boolean;
}

/** What keeps the concession under control: at least one measure, each with interval and owner. */
export function ControlMeasures({ measures, onChange, invalid }: Props) {
  const box = useRef<HTMLFieldSetElement>(null);
  const set = (index: number, change: Partial<ControlMeasure>) =>
    onChange(measures.map((c, i) => (i === index ? { ...c, ...change } : c)));
  const add = () => {
    onChange([...measures, { what: '', interval: '', owner: '' }]);
    requestAnimationFrame(() => {
      const fields = box.current?.querySelectorAll<HTMLElement>('textarea');
      fields?.[fields.length - 1]?.focus();
    });
  };
  return (
    <fieldset className="control-measures" ref={box}>
      <legend>{m.decision.controlMeasures}</legend>
      {measures.map((measure, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a measure has no other identity while it is written.
        <fieldset key={index} className="control-measure" aria-label={m.decision.measureN(index + 1)}>
          <WordsField
            label={m.decision.what}
            value={measure.what}
            onChange={(what) => set(index, { what })}
            lines={2}
            invalid={invalid && index === 0}
          />
          <div className="pair">
            <WordsField
              label={m.decision.interval}
              value={measure.interval}
              onChange={(interval) => set(index, { interval })}
            />
            <WordsField
              label={m.decision.owner}
              value={measure.owner}
              onChange={(owner) => set(index, { owner })}
            />
            {measures.length > 1 ? (
              <Button
                className="quiet"
                aria-label={m.decision.removeMeasure(index + 1)}
                onPress={() => onChange(measures.filter((_, i) => i !== index))}
              >
                ✕
              </Button>
            ) : null}
          </div>
        </fieldset>
      ))}
      <Button className="quiet" onPress={add}>
        + {m.decision.addMeasure}
      </Button>
    </fieldset>
  );
}
