import type { Medium } from './types.ts';

/** Pictograms and cautions are those usual for the substance; the data sheet of the product that is bought decides. */
export const media: readonly Medium[] = [
  {
    id: 'none',
    name: 'nothing',
    group: 'none',
    pictograms: [],
    caution: 'Lock out drives and energy before hands go in.',
  },
  {
    id: 'water',
    name: 'drinking water',
    group: 'water',
    pictograms: [],
    caution: 'Wet floors are slippery; keep water off live parts.',
  },
  {
    id: 'recoveredWater',
    name: 'water kept from an earlier rinse',
    group: 'water',
    pictograms: [],
    caution: 'It holds what it rinsed off: for first rinses only.',
  },
  {
    id: 'hotWater',
    name: 'hot water',
    group: 'hotWater',
    chemistry: 'hotWater',
    pictograms: [],
    caution: 'Scalds from 50 °C within minutes and from 60 °C within seconds. Gloves and apron.',
  },
  {
    id: 'steam',
    name: 'saturated steam',
    group: 'steam',
    chemistry: 'steam',
    pictograms: [],
    caution:
      'Scalds at once, also where it leaks unseen. Relieve pressure before opening; vent what cools, or it collapses.',
  },
  {
    id: 'naoh',
    name: 'caustic soda solution',
    group: 'alkali',
    chemistry: 'naoh',
    pictograms: ['GHS05'],
    caution:
      'Burns skin and blinds. Goggles, gloves, apron. Into water, never water into it. Dissolves aluminium with hydrogen.',
  },
  {
    id: 'alkalineFoam',
    name: 'alkaline foam cleaner',
    group: 'alkali',
    chemistry: 'naoh',
    pictograms: ['GHS05'],
    caution: 'Burns skin and eyes. Goggles, gloves, apron; do not breathe the mist.',
  },
  {
    id: 'chlorinatedAlkali',
    name: 'chlorinated alkaline cleaner',
    group: 'chlorinatedAlkali',
    chemistry: 'hypochlorite',
    pictograms: ['GHS05', 'GHS09'],
    caution: 'Burns skin and eyes. With acid it frees poisonous chlorine: rinse between, and never mix.',
  },
  {
    id: 'mildAlkali',
    name: 'mild alkaline cleaner',
    group: 'alkali',
    chemistry: 'naoh',
    pictograms: ['GHS07'],
    caution: 'Irritates skin and eyes. Gloves.',
  },
  {
    id: 'enzyme',
    name: 'enzyme cleaner',
    group: 'enzyme',
    pictograms: ['GHS08'],
    caution: 'Dust and mist can make people allergic for life. Do not spray; gloves and eye protection.',
  },
  {
    id: 'hno3',
    name: 'nitric acid solution',
    group: 'acid',
    chemistry: 'hno3',
    pictograms: ['GHS03', 'GHS05'],
    caution: 'Burns skin and eyes; hot vapour is poisonous. With hypochlorite it frees chlorine.',
  },
  {
    id: 'h3po4',
    name: 'phosphoric acid solution',
    group: 'acid',
    chemistry: 'h3po4',
    pictograms: ['GHS05'],
    caution: 'Burns skin and eyes. With hypochlorite it frees chlorine.',
  },
  {
    id: 'citric',
    name: 'citric acid solution',
    group: 'acid',
    pictograms: ['GHS07'],
    caution: 'Irritates eyes. With hypochlorite it frees chlorine.',
  },
  {
    id: 'hypochlorite',
    name: 'hypochlorite solution',
    group: 'hypochlorite',
    chemistry: 'hypochlorite',
    pictograms: ['GHS05', 'GHS09'],
    caution:
      'With acid it frees poisonous chlorine. Burns eyes, bleaches, pits stainless steel when it stands.',
  },
  {
    id: 'peracetic',
    name: 'peracetic acid solution',
    group: 'peracid',
    chemistry: 'peracetic',
    pictograms: ['GHS03', 'GHS05', 'GHS07', 'GHS09'],
    caution:
      'Burns and feeds fire; vapour attacks eyes and lungs. Vented container, never back into the drum, away from organic matter.',
  },
  {
    id: 'peroxide',
    name: 'hydrogen peroxide solution',
    group: 'peroxide',
    chemistry: 'peroxide',
    pictograms: ['GHS03', 'GHS05', 'GHS07'],
    caution: 'Feeds fire and burns; bursts closed vessels when it decomposes.',
  },
  {
    id: 'quat',
    name: 'quaternary ammonium solution',
    group: 'quat',
    chemistry: 'quat',
    pictograms: ['GHS05', 'GHS09'],
    caution: 'Irritates to burns; leaves residue on faces: rinse where the label says so.',
  },
  {
    id: 'alcohol',
    name: 'alcohol 60 to 70 %',
    group: 'alcohol',
    chemistry: 'alcohol',
    pictograms: ['GHS02', 'GHS07'],
    caution:
      'Burns with an invisible flame. Small amounts on a cloth, off hot faces and drives, with ventilation.',
  },
  {
    id: 'oil',
    name: 'warm cocoa butter or oil',
    group: 'oil',
    chemistry: 'fat',
    pictograms: [],
    caution: 'Hot fat burns; floors get slippery.',
  },
];

export const mediumById: ReadonlyMap<string, Medium> = new Map(media.map((m) => [m.id, m]));
