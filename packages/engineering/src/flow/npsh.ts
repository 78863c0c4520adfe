import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { saturationPressure } from '../water/if97.ts';
import { gravity, liquidWater } from '../water/properties.ts';

export const npshAvailable = calculation({
  name: 'npsh-available',
  title: 'Net positive suction head available at a pump',
  inputs: {
    temperature_degC: number('T', 'water temperature', 'degC', { min: 0.01, max: 150 }),
    pressure_kPa: number('p', 'absolute pressure on the liquid in the suction tank', 'kPa', {
      default: 101.325,
      min: 1,
      max: 1000,
      from: 'standard atmosphere, ISO 2533',
    }),
    head: number('z', 'liquid level above the pump', 'm', {
      default: 0,
      min: -10,
      max: 50,
      from: 'none when left empty',
    }),
    loss: number('h_L', 'head loss of the suction line', 'm', {
      default: 0,
      min: 0,
      max: 50,
      from: 'none when left empty',
    }),
    required: number('NPSHr', 'NPSH that the pump requires', 'm', {
      default: 2,
      min: 0,
      max: 50,
      from: 'look it up in the curve of your pump',
    }),
  },
  outputs: {
    available: { symbol: 'NPSHa', label: 'NPSH available', unit: 'm' },
    margin: { symbol: 'dNPSH', label: 'margin over the pump', unit: 'm' },
    atmosphere: { symbol: 'h_p', label: 'pressure head', unit: 'm' },
    vapour: { symbol: 'h_v', label: 'vapour pressure head', unit: 'm' },
  },
  equation: ['NPSHa = (p - p_sat)/(rho g) + z - h_L'],
  validity:
    'Water without dissolved gas; the velocity head in the tank is nil. Foam and air in the return line make it worse.',
  source: 'ISO 17769-1 (definition); water by IAPWS R7-97',
  example: {
    inputs: { temperature_degC: 80, head: 1.5, loss: 0.8 },
    expected: { available: 6.3568, atmosphere: 10.6321, vapour: 4.9752 },
    tolerance: 2e-5,
    source: 'check value P-26',
  },
  compute({ temperature_degC, pressure_kPa, head, loss, required }) {
    const vapourPressure = saturationPressure(temperature_degC + 273.15);
    const { density } = liquidWater(temperature_degC, Math.max(pressure_kPa * 1000, vapourPressure));
    const weight = density * gravity;
    const atmosphere = (pressure_kPa * 1000) / weight;
    const vapour = vapourPressure / weight;
    const available = atmosphere - vapour + head - loss;
    return {
      values: { available, margin: available - required, atmosphere, vapour },
      warnings:
        available - required < 0.5
          ? ['Less than 0.5 m margin: the pump may cavitate (common practice asks for 0.5 m and more).']
          : [],
    };
  },
});
