import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const sprayFlow = calculation({
  name: 'spray-flow-vertical-tank',
  title: 'Spray flow for the wall of a vertical tank',
  inputs: {
    diameter: number('D', 'inner diameter of the tank', 'm', { min: 0.05, max: 20 }),
    perLength_Lminm: number('q', 'flow per circumference', 'L/(min m)', {
      default: 30,
      min: 1,
      max: 200,
      usual: [24.8, 37.3],
      from: 'practice: 2.0 to 3.0 gpm/ft',
    }),
    rinses: number('n', 'number of rinses', '1', {
      default: 3,
      min: 0,
      max: 100,
      whole: true,
      from: 'common practice',
    }),
    rinseTime: number('t', 'time of one rinse', 's', {
      default: 90,
      min: 0,
      max: 3600,
      from: 'common practice',
    }),
  },
  outputs: {
    flow_Lmin: { symbol: 'Q', label: 'spray flow', unit: 'L/min' },
    circumference: { symbol: 'U', label: 'circumference', unit: 'm' },
    rinse_L: { symbol: 'V', label: 'water for the rinses', unit: 'L' },
  },
  equation: ['U = pi D, Q = q U', 'V = n Q t'],
  validity:
    'Smooth vertical wall wetted from a spray ball at the top. Nozzle shadows, agitators and manholes need their own jets.',
  source:
    'Handbook practice 2.0 gpm/ft of circumference (secondary copy); ASME BPE range 2.5 to 3.0 gpm/ft from memory',
  example: {
    inputs: { diameter: 2, perLength_Lminm: 30 },
    expected: { flow_Lmin: 188.5, rinse_L: 848.2 },
    tolerance: 5e-5,
    source: 'worked problem WP3',
  },
  compute({ diameter, perLength_Lminm, rinses, rinseTime }) {
    const circumference = Math.PI * diameter;
    const flow = perLength_Lminm * circumference;
    return { values: { flow_Lmin: flow, circumference, rinse_L: (rinses * flow * rinseTime) / 60 } };
  },
});
