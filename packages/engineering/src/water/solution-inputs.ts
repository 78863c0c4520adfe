import { choice, number } from '../calculation/inputs.ts';

/** Inputs that the calculations of solutions share. */
export const solute = choice(
  'dissolved matter',
  {
    naoh: 'sodium hydroxide',
    hno3: 'nitric acid',
    h3po4: 'phosphoric acid',
    sucrose: 'sucrose',
    nacl: 'sodium chloride',
  },
  { default: 'naoh' },
);
export const concentration = number('w', 'concentration by mass', '%', { min: 0, max: 85 });
export const solutionTemperature = number('T', 'temperature', 'degC', {
  default: 20,
  min: -10,
  max: 154,
  from: 'a room, common practice',
});
export const solutionCaution =
  'Lye and acid burn skin and eyes: wear what the safety data sheet asks for, add concentrate to water, never mix acid with chlorine products.';

/** The sentence against a case that the data of the fit do not cover, or nothing. */
export function beyondFit(
  quantity: string,
  [low, high, most]: readonly [number, number, number],
  temperature_degC: number,
  concentration_pct: number,
): string | undefined {
  return temperature_degC < low || temperature_degC > high || concentration_pct > 100 * most
    ? `The published fit of the ${quantity} reaches from ${low} to ${high} degC and to ${(100 * most).toFixed(0)} %: at ${temperature_degC} degC and ${concentration_pct} % use measured values`
    : undefined;
}
