import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const payback = calculation({
  name: 'payback',
  title: 'Payback of a design change',
  inputs: {
    cost_money: number('I', 'cost of the change', 'money', { min: 0, max: 1e12 }),
    saving_moneyyr: number('S', 'saving a year', 'money/yr', { min: -1e12, max: 1e12 }),
    life_yr: number('n', 'years of use', 'yr', {
      default: 10,
      min: 0.1,
      max: 100,
      from: 'an example: give your own',
    }),
    interest_pct: number('i', 'interest a year', '%', {
      default: 5,
      min: 0,
      max: 100,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    value_money: { symbol: 'NPV', label: 'net present value over the years of use', unit: 'money' },
    payback_yr: { symbol: 't', label: 'simple payback; 1000 when it never pays back', unit: 'yr' },
    discounted_yr: {
      symbol: 't_d',
      label: 'payback with interest; 1000 when it never pays back',
      unit: 'yr',
    },
    needed_moneyyr: {
      symbol: 'S_0',
      label: 'saving a year that just pays back over the years of use',
      unit: 'money/yr',
    },
  },
  equation: [
    't = I / S',
    'NPV = S (1 - (1+i)^-n)/i - I',
    't_d = -ln(1 - i I/S)/ln(1 + i)',
    'S_0 = I i / (1 - (1+i)^-n)',
  ],
  validity:
    'Equal savings at the end of each year. What cannot be priced, such as a prevented recall, is not in it.',
  source: 'Present value of an annuity',
  example: {
    inputs: { cost_money: 10000, saving_moneyyr: 2500, life_yr: 10, interest_pct: 5 },
    // Annuity factor 7.721735: NPV 9304.34; t_d = -ln(1 - 0.2)/ln 1.05 = 4.5735.
    expected: { value_money: 9304.34, payback_yr: 4, discounted_yr: 4.5735, needed_moneyyr: 1295.05 },
    tolerance: 1e-5,
    source: 'by hand with the printed annuity factor',
  },
  compute({ cost_money, saving_moneyyr, life_yr, interest_pct }) {
    const i = interest_pct / 100;
    const factor = i === 0 ? life_yr : -Math.expm1(-life_yr * Math.log1p(i)) / i;
    const never = 1000;
    const simple = saving_moneyyr > 0 ? Math.min(never, cost_money / saving_moneyyr) : never;
    const rest = 1 - i * simple;
    return {
      values: {
        value_money: saving_moneyyr * factor - cost_money,
        payback_yr: simple,
        discounted_yr: i === 0 ? simple : rest > 0 ? Math.min(never, -Math.log(rest) / Math.log1p(i)) : never,
        needed_moneyyr: cost_money / factor,
      },
      warnings: simple > life_yr ? ['It does not pay back within its years of use.'] : [],
    };
  },
});
