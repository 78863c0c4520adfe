import { media } from '@coveline/catalogue';
import { type CleaningStep, cleaningStep, stepKind } from '@coveline/project';
import { useState } from 'react';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';
import { Choice } from '../../shell/choice.tsx';
import { SavedWords } from '../brief/saved-words.tsx';

interface Props {
  readonly name: string;
  readonly steps: readonly CleaningStep[];
  readonly onChange: (steps: CleaningStep[]) => void;
}

/** Steps can be changed, moved, added and removed; each change is kept at once. */
export function StepEditor({ name, steps, onChange }: Props) {
  const [open, setOpen] = useState(false);
  const words = m.cleaning;
  const set = (at: number, step: CleaningStep) => onChange(steps.map((s, i) => (i === at ? step : s)));
  return (
    <details open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>
        {words.change}
        <span className="unseen">{`: ${name}`}</span>
      </summary>
      {open ? (
        <>
          {steps.map((step, at) => (
            <StepFields
              // biome-ignore lint/suspicious/noArrayIndexKey: steps have no other identity; one may come twice.
              key={at}
              step={step}
              label={`${at + 1} ${words.kinds[step.kind]}`}
              onChange={(next) => set(at, next)}
              onMove={(by) => onChange(moved(steps, at, by))}
              onRemove={() => onChange(steps.filter((_, i) => i !== at))}
            />
          ))}
          <button
            type="button"
            className="outlined"
            onClick={() =>
              onChange([
                ...steps,
                cleaningStep.parse({ kind: 'rinse', medium: 'water', action: 'spray', time_min: 3 }),
              ])
            }
          >
            + {words.addStep}
          </button>
        </>
      ) : null}
    </details>
  );
}

/** Its place among the others changed by one, where there is room. */
export function moved(steps: readonly CleaningStep[], at: number, by: -1 | 1): CleaningStep[] {
  const to = at + by;
  if (to < 0 || to >= steps.length) return [...steps];
  return steps.map((s, i) => (i === at ? steps[to] : i === to ? steps[at] : s));
}

type NumberKey = 'concentration_pct' | 'temperature_degC' | 'time_min' | 'pressure_bar' | 'water_L';
const numbers: readonly (readonly [NumberKey, string, string, number, number])[] = [
  ['concentration_pct', m.cleaning.columns.strength, '%', 0, 100],
  ['temperature_degC', m.cleaning.columns.heat, 'degC', -20, 200],
  ['time_min', m.cleaning.columns.time, 'min', 0, 10_000],
  ['pressure_bar', m.cleaning.pressure, 'bar', 0, 1000],
  ['water_L', m.cleaning.water, 'L', 0, 1e6],
];

interface FieldsProps {
  readonly step: CleaningStep;
  readonly label: string;
  readonly onChange: (step: CleaningStep) => void;
  readonly onMove: (by: -1 | 1) => void;
  readonly onRemove: () => void;
}

function StepFields({ step, label, onChange, onMove, onRemove }: FieldsProps) {
  const words = m.cleaning;
  const setNumber = (key: NumberKey, value: number | null) => {
    const { [key]: _, ...rest } = step;
    onChange(value === null ? rest : { ...rest, [key]: value });
  };
  return (
    <fieldset className="step-fields">
      <legend>{label}</legend>
      <div className="group-choices">
        <Choice
          label={words.kind}
          value={step.kind}
          options={stepKind.options.map((k) => [k, words.kinds[k]] as const)}
          onChange={(kind) => onChange({ ...step, kind: stepKind.parse(kind) })}
        />
        <Choice
          label={words.columns.medium}
          value={step.medium}
          options={media.map((x) => [x.id, x.name] as const)}
          onChange={(medium) => onChange({ ...step, medium })}
        />
        <Choice
          label={words.columns.action}
          value={step.action}
          options={cleaningStep.shape.action.options.map((a) => [a, words.actions[a]] as const)}
          onChange={(action) => onChange({ ...step, action: cleaningStep.shape.action.parse(action) })}
        />
        {numbers.map(([key, name, unit, low, high]) => (
          <QuantityField
            key={key}
            label={name}
            value={step[key] ?? null}
            unit={unit}
            low={low}
            high={high}
            optional
            onChange={(value) => setNumber(key, value)}
          />
        ))}
      </div>
      <SavedWords label={words.words} value={step.how} onSave={(how) => onChange({ ...step, how })} />
      <div className="step-acts">
        <button
          type="button"
          className="quiet"
          aria-label={words.earlierNamed(label)}
          onClick={() => onMove(-1)}
        >
          {words.earlier}
        </button>
        <button
          type="button"
          className="quiet"
          aria-label={words.laterNamed(label)}
          onClick={() => onMove(1)}
        >
          {words.later}
        </button>
        <button type="button" className="quiet" aria-label={words.removeNamed(label)} onClick={onRemove}>
          {words.removeStep}
        </button>
      </div>
    </fieldset>
  );
}
