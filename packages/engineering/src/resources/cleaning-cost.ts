import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const cleaningCost = calculation({
  name: 'cleaning-cost',
  title: 'Water, energy, chemicals, hours and money of a cleaning programme',
  inputs: {
    water_L: number('V', 'water of a run', 'L', { min: 0, max: 1e7 }),
    heat_kWh: number('Q', 'heat of a run', 'kWh', {
      default: 0,
      min: 0,
      max: 1e6,
      from: 'none when left empty',
    }),
    electricity_kWh: number('E', 'electricity of a run', 'kWh', {
      default: 0,
      min: 0,
      max: 1e6,
      from: 'none when left empty',
    }),
    chemicals: number('m', 'concentrate of a run', 'kg', {
      default: 0,
      min: 0,
      max: 1e5,
      from: 'none when left empty',
    }),
    labour_h: number('t_l', 'hours of work of a run', 'h', {
      default: 0,
      min: 0,
      max: 1000,
      from: 'none when left empty',
    }),
    downtime_h: number('t_d', 'hours without production of a run', 'h', {
      default: 0,
      min: 0,
      max: 1000,
      from: 'none when left empty',
    }),
    runs_1yr: number('n', 'runs a year', '1/yr', {
      default: 250,
      min: 0,
      max: 1e5,
      from: 'a run each working day',
    }),
    oxygenDemand_kgm3: number('COD', 'oxygen demand of the waste water', 'kg/m3', {
      default: 2,
      min: 0,
      max: 200,
      from: 'assumed',
    }),
    waterPrice_moneym3: number('p_w', 'price of water and waste water', 'money/m3', {
      default: 4,
      min: 0,
      max: 1000,
      from: 'assumed',
    }),
    heatPrice_moneykWh: number('p_q', 'price of heat', 'money/kWh', {
      default: 0.08,
      min: 0,
      max: 10,
      from: 'assumed',
    }),
    electricityPrice_moneykWh: number('p_e', 'price of electricity', 'money/kWh', {
      default: 0.2,
      min: 0,
      max: 10,
      from: 'assumed',
    }),
    chemicalPrice_moneykg: number('p_c', 'price of concentrate', 'money/kg', {
      default: 2,
      min: 0,
      max: 1000,
      from: 'assumed',
    }),
    labourPrice_moneyh: number('p_l', 'cost of an hour of work', 'money/h', {
      default: 35,
      min: 0,
      max: 1000,
      from: 'assumed',
    }),
    downtimePrice_moneyh: number('p_d', 'loss of an hour without production', 'money/h', {
      default: 100,
      min: 0,
      max: 1e6,
      from: 'assumed',
    }),
    heatCarbon_kgkWh: number('e_q', 'CO2 of heat', 'kg/kWh', {
      default: 0.2376,
      min: 0,
      max: 2,
      from: 'natural gas and 85 % boiler, from memory',
    }),
    electricityCarbon_kgkWh: number('e_e', 'CO2 of electricity: give region, year and source', 'kg/kWh', {
      default: 0,
      min: 0,
      max: 2,
      from: 'not given',
    }),
  },
  outputs: {
    perRun_money: { symbol: 'M', label: 'cost of a run', unit: 'money' },
    perYear_moneyyr: { symbol: 'M_y', label: 'cost a year', unit: 'money/yr' },
    water_m3yr: { symbol: 'V_y', label: 'water a year', unit: 'm3/yr' },
    energy_kWhyr: { symbol: 'E_y', label: 'heat and electricity a year', unit: 'kWh/yr' },
    chemicals_kgyr: { symbol: 'm_y', label: 'concentrate a year', unit: 'kg/yr' },
    oxygenDemand_kgyr: { symbol: 'COD_y', label: 'oxygen demand of the waste water a year', unit: 'kg/yr' },
    carbon_kgyr: { symbol: 'CO2_y', label: 'CO2 a year', unit: 'kg/yr' },
    hours_hyr: { symbol: 't_y', label: 'hours of work a year', unit: 'h/yr' },
  },
  equation: [
    'M = p_w V + p_q Q + p_e E + p_c m + p_l t_l + p_d t_d',
    'a year: n times a run; COD_y = COD V_y; CO2_y = n (e_q Q + e_e E)',
  ],
  validity: 'Sums what is given; prices and factors are yours. One currency throughout.',
  source: 'Bookkeeping; every factor is an input with its origin',
  example: {
    inputs: {
      water_L: 1000,
      heat_kWh: 50,
      electricity_kWh: 2,
      chemicals: 5,
      labour_h: 1,
      downtime_h: 1.5,
      runs_1yr: 100,
    },
    expected: {
      perRun_money: 4 + 4 + 0.4 + 10 + 35 + 150,
      perYear_moneyyr: 20340,
      water_m3yr: 100,
      oxygenDemand_kgyr: 200,
    },
    tolerance: 1e-12,
    source: 'by hand',
  },
  compute(x) {
    const parts = [
      ['water and waste water', (x.water_L / 1000) * x.waterPrice_moneym3],
      ['heat', x.heat_kWh * x.heatPrice_moneykWh],
      ['electricity', x.electricity_kWh * x.electricityPrice_moneykWh],
      ['chemicals', x.chemicals * x.chemicalPrice_moneykg],
      ['work', x.labour_h * x.labourPrice_moneyh],
      ['downtime', x.downtime_h * x.downtimePrice_moneyh],
    ] as const;
    const perRun = parts.reduce((sum, [, cost]) => sum + cost, 0);
    const n = x.runs_1yr;
    const water = (n * x.water_L) / 1000;
    return {
      values: {
        perRun_money: perRun,
        perYear_moneyyr: n * perRun,
        water_m3yr: water,
        energy_kWhyr: n * (x.heat_kWh + x.electricity_kWh),
        chemicals_kgyr: n * x.chemicals,
        oxygenDemand_kgyr: x.oxygenDemand_kgm3 * water,
        carbon_kgyr: n * (x.heatCarbon_kgkWh * x.heat_kWh + x.electricityCarbon_kgkWh * x.electricity_kWh),
        hours_hyr: n * x.labour_h,
      },
      tables: [
        {
          title: 'Shares and sensitivity',
          columns: [
            { name: 'item', unit: '' },
            { name: 'cost of a run', unit: 'money' },
            { name: 'share', unit: '%' },
            { name: 'change of the yearly cost when it grows by a tenth', unit: 'money/yr' },
          ],
          rows: parts.map(([name, cost]) => [
            name,
            cost,
            perRun === 0 ? 0 : (100 * cost) / perRun,
            0.1 * n * cost,
          ]),
        },
      ],
      warnings:
        x.electricityCarbon_kgkWh === 0 && x.electricity_kWh > 0
          ? ['No CO2 is counted for electricity: give a factor with region, year and source.']
          : [],
    };
  },
});
