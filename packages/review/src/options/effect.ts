import type { WorkingValue } from '@coveline/quantity';
import type { Effect } from './option.ts';

/** An effect with its working. `inputs` hold what the number before came from, too. */
export function effect(
  label: string,
  unit: string,
  [before, after]: readonly [number, number],
  how: {
    readonly formula: string;
    readonly inputs: readonly WorkingValue[];
    readonly source: string;
    readonly validity: string;
  },
): Effect {
  const { formula, inputs, source, validity } = how;
  return {
    label,
    unit,
    before,
    after,
    working: {
      title: `${label}, afterwards`,
      inputs,
      formula: [formula],
      steps: [],
      result: { symbol: 'x', name: `${label}, afterwards`, value: after, unit },
      source,
      validity,
      warnings: [],
    },
  };
}
