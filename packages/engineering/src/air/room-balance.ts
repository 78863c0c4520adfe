import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { settling } from './settling.ts';

export const roomBalance = calculation({
  name: 'room-balance',
  title: 'Airborne contamination of a mixed room with people',
  inputs: {
    volume: number('V', 'volume of the room', 'm3', { min: 1, max: 1e6 }),
    airChanges_1h: number('n', 'air changes', '1/h', { min: 0, max: 1000 }),
    people: number('k', 'number of people', '1', { default: 1, min: 0, max: 1000, from: 'one person' }),
    perPerson_1min: number('G', 'emission of one person', '1/min', {
      default: 177,
      min: 0,
      max: 1e9,
      from: 'microbe-carrying particles, cleanroom clothing; 2400 in indoor clothing (published)',
    }),
    supply_1m3: number('C_s', 'count of the supply air', '1/m3', {
      default: 0,
      min: 0,
      max: 1e12,
      from: 'none when left empty',
    }),
    floor: number('A', 'floor on which particles settle; 0 leaves settling out', 'm2', {
      default: 0,
      min: 0,
      max: 1e5,
      from: 'none when left empty',
    }),
    diameter_um: number('d', 'diameter of the particles', 'um', {
      default: 14,
      min: 0.1,
      max: 100,
      from: 'mean of microbe-carrying particles after W. Whyte, from memory',
    }),
    effectiveness: number('eta', 'effectiveness of the ventilation', '1', {
      default: 1,
      min: 0.1,
      max: 5,
      from: 'ideal mixing',
    }),
  },
  outputs: {
    concentration_1m3: { symbol: 'C', label: 'count in steady state', unit: '1/m3' },
    flow_m3h: { symbol: 'Q', label: 'air flow', unit: 'm3/h' },
    emission_1h: { symbol: 'k G', label: 'emission', unit: '1/h' },
    settled_pct: { symbol: 's', label: 'share that settles instead of leaving with the air', unit: '%' },
  },
  equation: [
    'Q = n V',
    'C = (k G + Q C_s) / (eta Q + v A), v the settling speed by Stokes',
    's = v A / (eta Q + v A)',
  ],
  validity:
    'Ideal mixing in steady state, after several air changes. Near a person the count is many times higher.',
  source: 'Mass balance; emission after W. Whyte and M. Hejab (secondary copy)',
  example: {
    inputs: { volume: 60, airChanges_1h: 20, people: 2, perPerson_1min: 177 },
    expected: { concentration_1m3: 17.7, flow_m3h: 1200 },
    tolerance: 1e-9,
    source: 'worked problem WP8, step 2',
  },
  compute(x) {
    const flow = x.airChanges_1h * x.volume;
    const loss = settling(x.diameter_um * 1e-6, 1000, 293.15, 101325).stokes * 3600 * x.floor;
    const removal = x.effectiveness * flow + loss;
    if (removal === 0)
      return refuse(
        'Without air change and without floor nothing leaves the air: the count grows without end',
      );
    const emission = x.people * x.perPerson_1min * 60;
    return {
      values: {
        concentration_1m3: (emission + flow * x.supply_1m3) / removal,
        flow_m3h: flow,
        emission_1h: emission,
        settled_pct: (100 * loss) / removal,
      },
    };
  },
});
