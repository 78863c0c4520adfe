/** Water, heat, chemicals, hours and money of all groups together, as far as the steps say what they take. */
import { mediumById } from '@coveline/catalogue';
import { cleaningCost } from '@coveline/engineering';
import type { Brief, CleaningStep, SurfaceGroup } from '@coveline/project';
import type { FindingNumber } from '../types.ts';

export interface Resources {
  readonly numbers: readonly FindingNumber[];
  readonly runs_1yr: number;
  /** What could not be counted, one sentence each. */
  readonly open: readonly string[];
}

/** A gentle rinse from a hose, and a foam lance. Common practice. */
const spray_Lmin = 12;
const foam_Lmin = 3;
/** Water as it comes. Common practice. */
const cold_degC = 12;
/** Water: 4.186 kJ/(kg K) at 15 °C, so many kWh a litre and kelvin (CODATA calorie, handbooks). */
const heat_kWhPerLK = 4.186 / 3600;
/** Boiler and pipes give this share of the fuel to the water. Common practice. */
const efficiency = 0.85;

export const runsPerYear = ({ cleaning }: Brief): number => 8760 / cleaning.interval_h;

/** Null without any step. */
export function resourcesOf(groups: readonly SurfaceGroup[], brief: Brief): Resources | null {
  const steps = groups.flatMap((g) => g.steps.map((step) => ({ g, step })));
  if (steps.length === 0) return null;
  let water = 0;
  let heat = 0;
  let chemicals = 0;
  const open: string[] = [];
  for (const { g, step } of steps) {
    const L = waterOf(step);
    if (L === null) {
      if (isWet(step)) open.push(`${g.name}, ${step.kind}: how much it takes is not said.`);
      continue;
    }
    water += L;
    heat += (Math.max(0, (step.temperature_degC ?? cold_degC) - cold_degC) * L * heat_kWhPerLK) / efficiency;
    // A litre of solution weighs about a kilogram.
    chemicals += (L * (step.concentration_pct ?? 0)) / 100;
  }
  const byHand = groups.filter((g) => g.way !== 'inPlace').reduce((sum, g) => sum + minutes(g), 0);
  const longest = Math.max(byHand, ...groups.map(minutes));
  const runs_1yr = runsPerYear(brief);
  const cost = cleaningCost.run(
    {
      water_L: water,
      heat_kWh: heat,
      chemicals,
      labour_h: byHand / 60,
      downtime_h: longest / 60,
      runs_1yr,
    },
    {
      water_L: 'steps of all groups; hose 12 L/min and foam 3 L/min where nothing is said, common practice',
      heat_kWh: 'from 12 °C, 85 % of the fuel, common practice',
      chemicals: 'active substance in the solutions of the steps',
      labour_h: 'steps of all groups but the circuit, one person',
      downtime_h: 'work one after the other; a circuit runs beside it',
      runs_1yr: 'interval of the brief, all year round',
    },
  );
  if (cost.kind === 'refused') return { numbers: [], runs_1yr, open: [...open, `${cost.reason}.`] };
  const share = longest / (brief.cleaning.interval_h * 60);
  if (share > 0.25)
    open.push(
      `All groups one after the other take ${Math.round(longest)} min, ${Math.round(100 * share)} % of the time between two cleanings: see which of them need it each time.`,
    );
  const number = (label: string, value: number, unit: string): FindingNumber => ({
    label,
    value,
    unit,
    working: cost.working,
  });
  const v = cost.values;
  return {
    numbers: [
      number('Water of a run', water, 'L'),
      number('Heat of a run', heat, 'kWh'),
      number('Chemicals of a run', chemicals, 'kg'),
      number('Work of a run', byHand, 'min'),
      number('Cost of a run', v.perRun_money, 'money'),
      number('Cost a year', v.perYear_moneyyr, 'money/yr'),
      number('Water a year', v.water_m3yr, 'm3/yr'),
      number('Energy a year', v.energy_kWhyr, 'kWh/yr'),
      number('Chemicals a year', v.chemicals_kgyr, 'kg/yr'),
      number('CO2 a year', v.carbon_kgyr, 'kg/yr'),
    ],
    runs_1yr,
    open,
  };
}

export const minutes = ({ steps }: SurfaceGroup): number =>
  steps.reduce((sum, s) => sum + (s.time_min ?? 0), 0);

const isWet = ({ medium }: CleaningStep) => {
  const group = mediumById.get(medium)?.group ?? 'none';
  return group !== 'none' && group !== 'alcohol';
};

/** Null where it is not said and cannot be told from the action. */
function waterOf(step: CleaningStep): number | null {
  if (!isWet(step)) return null;
  if (step.water_L !== undefined) return step.water_L;
  const min = step.time_min ?? 0;
  if (step.action === 'foam') return foam_Lmin * Math.min(min, 5);
  // A disinfectant is sprayed on once and then stays.
  if (step.action === 'spray') return spray_Lmin * (step.kind === 'disinfect' ? Math.min(min, 2) : min);
  return null;
}
