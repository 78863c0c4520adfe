/** Heat against check values and worked problems. */
import { describe, expect, it } from 'vitest';
import { churchillChuCylinder } from '../../packages/engineering/src/heat/pipe-heat-loss.ts';
import { checkRows } from './check.ts';

describe('heat', () => {
  it('P-30: Churchill-Chu with the air properties stated there', () => {
    // Ra and Pr as printed; Nu 12.4529 with 6 digits.
    expect(Math.abs(churchillChuCylinder(576442, 0.7036) / 12.4529 - 1)).toBeLessThan(1e-5);
  });
  checkRows([
    {
      id: 'P-30',
      calculation: 'bare-pipe-heat-loss',
      inputs: { outside_mm: 53 },
      expected: { loss_Wm: 89.03, nusselt: 12.4529, convection: 6.595 },
      tolerance: 0.05,
      why: 'stated there, air properties',
    },
    {
      id: 'P-31',
      calculation: 'insulated-pipe-heat-loss',
      inputs: { outside_mm: 53 },
      expected: { loss_Wm: 17.833 },
      tolerance: 3e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'N-01',
      calculation: 'heat-water-with-steam',
      inputs: { mass: 1000 },
      expected: { heat_kWh: 75.5224 },
      tolerance: 1e-6,
      why: 'printed with 6 digits',
    },
    {
      id: 'N-04 direct',
      calculation: 'heat-water-with-steam',
      inputs: { mass: 1000, way: 'direct' },
      expected: { steamMass: 113.146 },
      tolerance: 5e-6,
      why: 'printed with 6 digits',
    },
    {
      id: 'N-04 indirect',
      calculation: 'heat-water-with-steam',
      inputs: { mass: 1000, way: 'indirect' },
      expected: { steamMass: 127.444 },
      tolerance: 5e-6,
      why: 'printed with 6 digits',
    },
    {
      id: 'WP2',
      calculation: 'heat-up-circuit',
      inputs: { tank_L: 400, length: 60, tankSteel: 120, cold_degC: 15, hot_degC: 75, loss_Wm: 89 },
      expected: {
        waterMass: 517.39,
        steelMass: 236.05,
        waterHeat_MJ: 129.822,
        steelHeat_MJ: 7.082,
        lossHeat_MJ: 3.204,
        heat_MJ: 140.107,
        steamMass: 65.675,
        fuel_MJ: 164.83,
        carbon: 9.247,
      },
      tolerance: 7e-5,
      why: 'steel heat printed with 4 digits',
    },
  ]);
});
