/**
 * Product properties and what they mean for the level of care: one small rule each. Growth limits are those of
 * optimum conditions: they warn, and never prove that a recipe is safe.
 */
import type { Citation, HazardKind } from '@coveline/catalogue';
import type { Product } from '@coveline/project';

/** 1 ordinary, 2 raised, 3 high, 4 sterile filling of what could grow. */
export type Level = 1 | 2 | 3 | 4;

export interface HazardRule {
  readonly id: string;
  readonly kind: HazardKind;
  readonly level: Level;
  /** What the property means, one sentence. */
  readonly text: string;
  readonly citation: Citation;
  /** Beyond what this workbench may judge. */
  readonly authority?: true;
  readonly holds: (p: Known) => boolean;
}

/** The product with what is not known taken at its worst. */
export interface Known {
  readonly ph: number;
  readonly aw: number;
  readonly storage_degC: number;
  readonly shelfLife_days: number;
  readonly kind: NonNullable<Product['kind']>;
  readonly heating: NonNullable<Product['heating']> | 'unknown';
  readonly ready: boolean;
  readonly lowOxygen: boolean;
}

const seen = (source: string, clause: string): Citation => ({ source, clause, standing: 'seen' });
const half = (source: string, clause: string): Citation => ({ source, clause, standing: 'partlySeen' });
const memory = (source: string, clause: string): Citation => ({ source, clause, standing: 'fromMemory' });
const practice: Citation = memory('practice', 'no source');

const chilled = (p: Known) => p.storage_degC <= 10;
const ambient = (p: Known) => p.storage_degC > 10;
const dry = (p: Known) => p.aw <= 0.85;
/** Notes to the criteria for Listeria: what cannot support growth. */
const listeriaStays = (p: Known) =>
  p.ph <= 4.4 || p.aw <= 0.92 || (p.ph <= 5 && p.aw <= 0.94) || p.shelfLife_days < 5;
const exposed = (p: Known) => p.ready && p.heating !== 'inPack';

export const hazardRules: readonly HazardRule[] = [
  {
    id: 'acid',
    kind: 'biological',
    level: 2,
    text: 'At pH 4.6 or below spores of Clostridium botulinum do not grow, as long as nothing dilutes the acid: yeasts, moulds and acid-loving germs remain.',
    citation: seen('US-CFR', '114.3'),
    holds: (p) => p.ph <= 4.6 && !dry(p),
  },
  {
    id: 'low-acid-ambient',
    kind: 'biological',
    level: 4,
    text: 'Above pH 4.6 and a water activity of 0.85, sealed and kept warm, Clostridium botulinum can grow: commercial sterility or sterile filling.',
    citation: half('US-CFR', '113, 114.3'),
    authority: true,
    holds: (p) => p.ph > 4.6 && !dry(p) && ambient(p) && p.heating !== 'inPack',
  },
  {
    id: 'dry-food',
    kind: 'biological',
    level: 1,
    text: 'At a water activity of 0.85 or below no pathogen grows, but Salmonella survives: keep it dry, and clean it dry.',
    citation: half('US-CFR', '114.3'),
    holds: (p) => dry(p) && p.kind !== 'dryForInfants',
  },
  {
    id: 'listeria-no-growth',
    kind: 'biological',
    level: 2,
    text: 'Eaten as it is, but by pH, water activity or shelf life counted among foods in which Listeria does not grow.',
    citation: half('EU-2073', 'Annex I 1.3 with its notes'),
    holds: (p) => exposed(p) && !dry(p) && listeriaStays(p),
  },
  {
    id: 'listeria-growth',
    kind: 'biological',
    level: 3,
    text: 'Eaten as it is, and Listeria grows in it even when it is chilled: not detected in 25 g, unless the maker shows that it stays below 100 cfu/g to the end of shelf life.',
    citation: seen('EU-2073', 'Annex I 1.2 as amended by Regulation (EU) 2024/2895'),
    holds: (p) => exposed(p) && !dry(p) && !listeriaStays(p),
  },
  {
    id: 'chilled-low-oxygen',
    kind: 'biological',
    level: 3,
    text: 'Chilled without oxygen for more than ten days above pH 5 and a water activity of 0.97: non-proteolytic Clostridium botulinum grows from 3.3 °C.',
    citation: half('PFS', 'growth factors; the ten-day rule from memory'),
    authority: true,
    holds: (p) => p.lowOxygen && chilled(p) && p.shelfLife_days > 10 && p.ph > 5 && p.aw > 0.97,
  },
  {
    id: 'long-chilled-life',
    kind: 'biological',
    level: 3,
    text: 'A chilled shelf life of more than 21 days asks for filling with few germs: filtered air and decontaminated packs.',
    citation: memory('filling-classes', 'classes III and IV'),
    holds: (p) => chilled(p) && p.shelfLife_days > 21 && !dry(p) && p.heating !== 'inPack',
  },
  {
    id: 'heated-then-open',
    kind: 'biological',
    level: 3,
    text: 'Heated, then filled in the open: what gets in after the heating stays, with no rivals.',
    citation: practice,
    holds: (p) => p.heating === 'beforeFilling' && p.ready && !dry(p) && p.ph > 4.6,
  },
  {
    id: 'toxin-from-hands',
    kind: 'biological',
    level: 2,
    text: 'Staphylococcus aureus grows down to a water activity of about 0.86: contact with hands raises the level.',
    citation: seen('PFS', 'growth factors'),
    holds: (p) => p.aw >= 0.86 && p.ph > 4.6 && p.ready,
  },
  {
    id: 'bacillus',
    kind: 'biological',
    level: 2,
    text: 'Bacillus cereus grows from pH 4.9 and a water activity of 0.92, some strains from 4 °C: no warm residues over hours.',
    citation: seen('PFS', 'growth factors'),
    holds: (p) => p.ph >= 4.9 && p.aw >= 0.92,
  },
  {
    id: 'dry-for-infants',
    kind: 'biological',
    level: 3,
    text: 'Dried food for infants: Cronobacter and Salmonella; the law asks for samples of the surroundings; clean dry.',
    citation: seen('EU-2073', 'Article 5'),
    holds: (p) => p.kind === 'dryForInfants',
  },
  {
    id: 'fat-and-dry',
    kind: 'biological',
    level: 2,
    text: 'Fat protects Salmonella, so that few germs are enough: no water, and high hygiene without it.',
    citation: memory('practice', 'literature on food of low moisture'),
    holds: (p) => p.kind === 'fatAndDry',
  },
  {
    id: 'raw-animal',
    kind: 'biological',
    level: 2,
    text: 'Raw meat, fish or poultry brings Salmonella, Campylobacter and Listeria: keep it and its aerosol apart from what is eaten as it is.',
    citation: memory('EU-2073', 'Annex I 2'),
    holds: (p) => p.kind === 'rawAnimal',
  },
  {
    id: 'fresh-cut',
    kind: 'biological',
    level: 3,
    text: 'Cut and eaten raw: Listeria and Escherichia coli from wash water and contact faces.',
    citation: half('CXG-61', 'introduction'),
    holds: (p) => p.kind === 'freshCut',
  },
  {
    id: 'fermented',
    kind: 'biological',
    level: 2,
    text: 'Live cultures: spoilage and phages; keep it closed.',
    citation: practice,
    holds: (p) => p.kind === 'fermented',
  },
  {
    id: 'scombroid',
    kind: 'chemical',
    level: 2,
    text: 'Fish that forms histamine, which heat does not destroy: residues and time above 4 °C count.',
    citation: memory('practice', 'guides on fish and fishery products'),
    holds: (p) => p.kind === 'scombroidFish',
  },
  {
    id: 'heated-in-pack',
    kind: 'biological',
    level: 1,
    text: 'Heated in its final pack: what gets in before is killed, if the heating does what it should.',
    citation: half('EU-2073', 'Annex I 1.3, notes'),
    holds: (p) => p.heating === 'inPack',
  },
];
