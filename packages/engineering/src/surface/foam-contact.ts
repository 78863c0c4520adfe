import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { liquidWater } from '../water/properties.ts';
import { evaporateInsulated } from './evaporation.ts';

export const foamContact = calculation({
  name: 'foam-contact-time',
  title: 'How long foam keeps a wall wet with cleaning agent',
  inputs: {
    thickness_mm: number('s', 'thickness of the foam', 'mm', {
      default: 10,
      min: 0.5,
      max: 200,
      from: 'common practice',
    }),
    expansion: number('X', 'volume of foam over volume of liquid', '1', {
      default: 15,
      min: 2,
      max: 200,
      from: 'common practice',
    }),
    halfLife_min: number('t_d', 'time in which half of the liquid drains out', 'min', {
      default: 5,
      min: 0.1,
      max: 600,
      from: 'watch it on the product and machine',
    }),
    slide_mmmin: number('c', 'speed at which the foam slides down', 'mm/min', {
      default: 20,
      min: 0,
      max: 1e4,
      from: 'watch it on the wall',
    }),
    height: number('H', 'height of the foamed wall', 'm', {
      default: 1,
      min: 0.01,
      max: 20,
      from: 'one of its unit',
    }),
    film_um: number('f', 'liquid that must stay on the wall', 'um', {
      default: 50,
      min: 1,
      max: 2000,
      from: 'assumed',
    }),
    asked_min: number('t_a', 'contact time asked for', 'min', {
      default: 10,
      min: 0,
      max: 240,
      from: 'common practice',
    }),
    room_degC: number('T', 'room temperature', 'degC', {
      default: 20,
      min: 1,
      max: 45,
      from: 'a room, common practice',
    }),
    relativeHumidity_pct: number('RH', 'relative humidity', '%', {
      default: 60,
      min: 0,
      max: 99,
      from: 'a room in use, common practice',
    }),
    airSpeed: number('u', 'air speed over the wall', 'm/s', {
      default: 0.2,
      min: 0,
      max: 10,
      from: 'a room without draught, common practice',
    }),
  },
  outputs: {
    contact_min: { symbol: 't_c', label: 'contact time', unit: 'min' },
    margin_min: { symbol: 't_c - t_a', label: 'margin over the time asked for', unit: 'min' },
    liquid_um: { symbol: 'l', label: 'liquid in the foam at the start, as a film', unit: 'um' },
    drained_min: { symbol: 't_1', label: 'until drainage leaves too little', unit: 'min' },
    slid_min: { symbol: 't_2', label: 'until the foam has slid off the top tenth of the wall', unit: 'min' },
    dried_min: { symbol: 't_3', label: 'until drying alone leaves too little', unit: 'min' },
  },
  equation: [
    'l = s/X',
    't_1 = t_d log2(l/f)',
    't_2 = H/(10 c)',
    't_3 = (l - f)/r, r the evaporation of a wet wall',
    't_c = min(t_1, t_2, t_3)',
  ],
  validity:
    'An estimate to plan with: foam is watched on the wall, timed and re-applied. A warm wall dries it far faster.',
  source: 'Mass balance of our own with the evaporation of drying-time; thresholds are assumed',
  example: {
    inputs: {
      thickness_mm: 10,
      expansion: 12.5,
      halfLife_min: 5,
      slide_mmmin: 0,
      film_um: 100,
      relativeHumidity_pct: 60,
    },
    // l = 800 um, log2(8) = 3 half-lives.
    expected: { contact_min: 15, liquid_um: 800, drained_min: 15 },
    tolerance: 1e-9,
    source: 'closed form: three half-lives from 800 to 100 um',
  },
  caution:
    'Foam of lye, acid or chlorine burns: wear what the safety data sheet asks for, and rinse before it dries.',
  compute(x) {
    const liquid = (1000 * x.thickness_mm) / x.expansion;
    const room = {
      temperature: x.room_degC + 273.15,
      relativeHumidity: x.relativeHumidity_pct / 100,
      pressure: 101325,
      airSpeed: x.airSpeed,
    };
    // Film that evaporates in a minute, um.
    const perMinute =
      (evaporateInsulated(room, x.height, true).flux / liquidWater(x.room_degC).density) * 60e6;
    const never = 1e6;
    const drained = liquid <= x.film_um ? 0 : x.halfLife_min * Math.log2(liquid / x.film_um);
    const slid = Math.min(never, (100 * x.height) / x.slide_mmmin);
    const dried = liquid <= x.film_um ? 0 : Math.min(never, (liquid - x.film_um) / perMinute);
    const contact = Math.min(drained, slid, dried);
    return {
      values: {
        contact_min: contact,
        margin_min: contact - x.asked_min,
        liquid_um: liquid,
        drained_min: drained,
        slid_min: slid,
        dried_min: dried,
      },
      warnings: [
        ...(contact < x.asked_min
          ? ['The foam does not stay long enough: apply it again, wetter or more stable.']
          : []),
        ...(contact === dried ? ['Drying comes first: dried cleaning agent is hard to rinse.'] : []),
      ],
    };
  },
});
