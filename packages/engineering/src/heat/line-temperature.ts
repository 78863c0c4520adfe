import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { liquidWater } from '../water/properties.ts';

export const lineTemperature = calculation({
  name: 'line-temperature',
  title: 'Temperature at the end of a line that loses heat',
  inputs: {
    inlet_degC: number('T_0', 'temperature at the inlet', 'degC', {
      default: 80,
      min: 1,
      max: 150,
      from: 'an example: give your own',
    }),
    room_degC: number('T_a', 'room temperature', 'degC', {
      default: 20,
      min: -20,
      max: 60,
      from: 'a room, common practice',
    }),
    flow_m3h: number('Q', 'flow', 'm3/h', { min: 1e-4, max: 1e4 }),
    length: number('L', 'length of the line', 'm', { min: 0, max: 1e5 }),
    perKelvin_WmK: number('U', 'heat loss per length and kelvin', 'W/(m K)', {
      default: 1.48,
      min: 0,
      max: 100,
      from: '89 W/m at 60 K, bare 53 mm tube',
    }),
  },
  outputs: {
    outlet_degC: { symbol: 'T_L', label: 'temperature at the end', unit: 'degC' },
    drop: { symbol: 'dT', label: 'temperature drop', unit: 'K' },
    loss_kW: { symbol: 'P', label: 'heat lost', unit: 'kW' },
    decay: { symbol: 'L_e', label: 'length over which the excess falls to 1/e', unit: 'm' },
  },
  equation: ['L_e = rho Q cp / U', 'T_L = T_a + (T_0 - T_a) exp(-L/L_e)', 'P = rho Q cp (T_0 - T_L)'],
  validity: 'Steady state after heating up, constant heat loss coefficient, water.',
  source: 'Energy balance of a pipe (F. P. Incropera, D. P. DeWitt, 8.3)',
  example: {
    inputs: { inlet_degC: 80, room_degC: 20, flow_m3h: 10.6029, length: 60, perKelvin_WmK: 89 / 60 },
    // 5340 W over 971.8 x 2.94525e-3 x 4195.5 = 12 008 W/K is 0.4447 K, less 0.4 % for the falling excess: 0.443 K.
    expected: { drop: 0.443 },
    tolerance: 2e-3,
    source: 'hand calculation with check values P-03-80 and P-30',
  },
  compute({ inlet_degC, room_degC, flow_m3h, length, perKelvin_WmK }) {
    const water = liquidWater(inlet_degC, 500000);
    const capacity = (water.density * water.heatCapacity * flow_m3h) / 3600;
    const outlet = room_degC + (inlet_degC - room_degC) * Math.exp((-perKelvin_WmK * length) / capacity);
    return {
      values: {
        outlet_degC: outlet,
        drop: inlet_degC - outlet,
        loss_kW: (capacity * (inlet_degC - outlet)) / 1000,
        decay: Math.min(1e9, capacity / perKelvin_WmK),
      },
    };
  },
});
