import type { Citation } from '../types.ts';
import type { DisinfectionPoint, OrderRule } from './types.ts';

const seen = (source: string, clause: string): Citation => ({ source, clause, standing: 'seen' });
const half = (source: string, clause: string): Citation => ({ source, clause, standing: 'partlySeen' });
const memory = (source: string, clause: string): Citation => ({ source, clause, standing: 'fromMemory' });
const practice: Citation = memory('practice', 'no source');

const good = (id: string, text: string, why: string, citation: Citation): OrderRule => ({
  id,
  text,
  why,
  danger: false,
  citation,
});
const danger = (id: string, text: string, why: string, citation: Citation): OrderRule => ({
  id,
  text,
  why,
  danger: true,
  citation,
});

export const orderRules: readonly OrderRule[] = [
  danger(
    'chlorine-gas',
    'Acid and hypochlorite never meet: a rinse lies between them.',
    'Together they free chlorine, which kills.',
    practice,
  ),
  danger(
    'peracid-organic',
    'Peracid and peroxide go onto cleaned faces only.',
    'With organic matter they heat up, burn or burst their vessel.',
    practice,
  ),
  danger(
    'alcohol-hot',
    'Alcohol goes onto faces below 30 °C only, away from foam and jets.',
    'It burns.',
    practice,
  ),
  danger(
    'secured',
    'Energy is locked out and the machine is emptied before it is opened.',
    'Moving, hot or falling parts hurt people.',
    memory('ISO-12100', 'hazards of cleaning'),
  ),
  good(
    'gross-soil-first',
    'Coarse soil is cleared before water flows.',
    'Water spreads it, and it uses up the detergent.',
    seen('PFS', 'steps of sanitation'),
  ),
  good(
    'allergen-dry-first',
    'Allergen and powder are taken up dry, without compressed air.',
    'Dust carries them through the room.',
    half('CXC-80', 'introduction'),
  ),
  good(
    'cool-pre-rinse',
    'Protein and starch are pre-rinsed at 40 °C or below.',
    'They set on the face above it.',
    seen('HHC', '27.1'),
  ),
  good(
    'warm-pre-rinse',
    'Fat is pre-rinsed warm, at 45 °C or above, where neither protein nor starch rules.',
    'It melts and leaves with the water.',
    seen('PFS', 'pre-rinse'),
  ),
  good(
    'clean-before-disinfect',
    'A detergent step comes before disinfection.',
    'Soil shields germs and eats the disinfectant.',
    seen('HHC', '27.2.2'),
  ),
  good(
    'alkali-before-acid',
    'Alkali comes before acid, unless mineral rules.',
    'Acid does not remove protein and can set it.',
    half('HHC', '29'),
  ),
  good(
    'rinse-between',
    'A rinse lies between alkali and acid, and after every chemical before product.',
    'They neutralise each other, attack steel, and end in product.',
    practice,
  ),
  good(
    'foam-stays-wet',
    'Foam stays no longer than 20 minutes, and never dries.',
    'Dried foam is a new residue.',
    seen('PFS', 'foam cleaning'),
  ),
  good(
    'look-before-disinfect',
    'Faces are looked at with light before they are disinfected.',
    'Dirt that is seen then costs minutes, later a batch.',
    practice,
  ),
  good(
    'contact-time',
    'A disinfectant has the strength, temperature and time that its source asks for.',
    'Below them its effect is not known.',
    half('US-CFR', '178.1010'),
  ),
  good(
    'oxidiser-on-steel',
    'Hypochlorite on stainless steel: at most 200 ppm, 40 °C and 30 minutes, then a rinse.',
    'It pits.',
    memory('practice', 'handbooks differ between 100 and 300 ppm'),
  ),
  good(
    'drinking-water',
    'The last water is drinking water or better.',
    'It stays on the face.',
    memory('EU-852', 'Annex II chapter VII'),
  ),
  good(
    'ends-dry',
    'The machine drains and dries before it stands, or is disinfected again before the start.',
    'What stays wet grows.',
    practice,
  ),
  good(
    'no-high-pressure',
    'No jet above 25 bar on open equipment.',
    'Its aerosol carries germs onto clean faces, and it drives water into seals and bearings.',
    practice,
  ),
];

export const orderRuleById: ReadonlyMap<string, OrderRule> = new Map(orderRules.map((r) => [r.id, r]));

export const disinfectionPoints: readonly DisinfectionPoint[] = [
  {
    id: 'hot-water-77-5',
    medium: 'hotWater',
    atLeast_degC: 77,
    atLeast_min: 5,
    text: 'Hot water at the face, dairy ordinance of the US.',
    citation: half('PFS', 'quoting the Grade A ordinance'),
  },
  {
    id: 'hot-water-85-15',
    medium: 'hotWater',
    atLeast_degC: 85,
    atLeast_min: 15,
    text: 'Hot water, dairy federation.',
    citation: seen('PFS', 'hot water'),
  },
  {
    id: 'hot-water-77-15',
    medium: 'hotWater',
    atLeast_degC: 77,
    atLeast_min: 15,
    text: 'Hot water in closed systems, rule for bottled water.',
    citation: half('US-CFR', '129.80'),
  },
  {
    id: 'hot-water-94-5',
    medium: 'hotWater',
    atLeast_degC: 94,
    atLeast_min: 5,
    text: 'Hot water in closed systems, rule for bottled water.',
    citation: half('US-CFR', '129.80'),
  },
  {
    id: 'steam-80-15',
    medium: 'steam',
    atLeast_degC: 80,
    atLeast_min: 15,
    text: 'Steam, condensate leaving at 80 °C or more.',
    citation: seen('PFS', 'steam'),
  },
  {
    id: 'hypochlorite-50',
    medium: 'hypochlorite',
    concentration_pct: [0.005, 0.02],
    atLeast_degC: 24,
    atMost_degC: 40,
    atLeast_min: 1,
    text: 'Hypochlorite of 50 to 200 ppm; the time doubles for each 10 K less.',
    citation: seen('trade', 'a US state milk rule, appendix 6'),
  },
  {
    id: 'peracetic',
    medium: 'peracetic',
    concentration_pct: [0.01, 0.03],
    atMost_degC: 30,
    atLeast_min: 10,
    text: 'Peracetic acid of 100 to 300 ppm on equipment.',
    citation: practice,
  },
  {
    id: 'quat',
    medium: 'quat',
    concentration_pct: [0.02, 0.04],
    atLeast_min: 5,
    text: 'Quaternary ammonium compound of 200 to 400 ppm; above 200 ppm with a rinse.',
    citation: practice,
  },
  {
    id: 'alcohol',
    medium: 'alcohol',
    concentration_pct: [60, 70],
    atMost_degC: 30,
    atLeast_min: 0.5,
    text: 'Alcohol of 60 to 70 % until it has evaporated.',
    citation: practice,
  },
];
