import { calculation } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

/** kg CO2 per GJ, net calorific value: IPCC 2006 defaults, from memory. */
const factors = { naturalGas: 56.1, diesel: 74.1, lpg: 63.1, heavyOil: 77.4 } as const;

export const fuelCarbon = calculation({
  name: 'fuel-carbon',
  title: 'CO2 of heat from a fuel',
  inputs: {
    fuel: choice(
      'fuel',
      {
        naturalGas: 'natural gas, 56.1 kg/GJ (from memory)',
        diesel: 'diesel, 74.1 kg/GJ (from memory)',
        lpg: 'liquefied petroleum gas, 63.1 kg/GJ (from memory)',
        heavyOil: 'heavy fuel oil, 77.4 kg/GJ (from memory)',
      },
      { default: 'naturalGas' },
    ),
    heat_kWh: number('Q', 'useful heat', 'kWh', { min: 0, max: 1e9 }),
    boiler_pct: number('eta', 'efficiency of the boiler, net calorific value', '%', {
      default: 85,
      min: 10,
      max: 110,
      from: 'common practice',
    }),
  },
  outputs: {
    carbon: { symbol: 'CO2', label: 'CO2', unit: 'kg' },
    perFuel_kgkWh: { symbol: 'e', label: 'CO2 per net energy of the fuel', unit: 'kg/kWh' },
    fuel_kWh: { symbol: 'F', label: 'fuel, net calorific value', unit: 'kWh' },
  },
  equation: ['F = Q / eta, e = factor x 3.6/1000, CO2 = e F'],
  validity:
    'Combustion only, CO2 only, net calorific value. Electricity has no default here: its factor needs region, year and source.',
  source: 'IPCC 2006 guidelines, default factors from memory; replace them by those of your reporting',
  example: {
    inputs: { fuel: 'naturalGas', heat_kWh: 100, boiler_pct: 100 },
    expected: { perFuel_kgkWh: 0.20196, carbon: 20.196 },
    tolerance: 1e-9,
    source: 'check value N-05, conversion recomputed',
  },
  compute({ fuel, heat_kWh, boiler_pct }) {
    const perFuel = (factors[fuel] * 3.6) / 1000;
    const input = heat_kWh / (boiler_pct / 100);
    return {
      values: { carbon: perFuel * input, perFuel_kgkWh: perFuel, fuel_kWh: input },
      warnings: ['The emission factor is from memory: check it against your reporting standard.'],
    };
  },
});
