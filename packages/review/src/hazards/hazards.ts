/** From the brief to hazards and to the level of care that they ask for. */
import type { Citation, HazardKind } from '@coveline/catalogue';
import type { Brief, CareLevel, Product } from '@coveline/project';
import { hazardRules, type Known, type Level } from './rules.ts';

export interface Hazard {
  readonly id: string;
  readonly kind: HazardKind;
  readonly products: readonly string[];
  readonly text: string;
  readonly level: Level;
  readonly citation: Citation;
  /** A process authority or another competent person decides, not this workbench. */
  readonly authority: boolean;
}

export interface HazardReview {
  /** Gravest first. */
  readonly hazards: readonly Hazard[];
  readonly level: Level;
  /** The level that the rules lead to; the brief may ask for more, and for less only with a reason. */
  readonly careLevel: CareLevel;
  /** How that came about, one sentence each. */
  readonly reasons: readonly string[];
  /** What is not known and was taken at its worst, one sentence each. */
  readonly assumptions: readonly string[];
}

const careLevels: Record<Level, CareLevel> = { 1: 'basic', 2: 'raised', 3: 'high', 4: 'high' };
const inOrder: readonly CareLevel[] = ['basic', 'raised', 'high'];

/** Whether the brief asks for less care than the rules lead to. */
export const asksForLess = (brief: Brief, { careLevel }: HazardReview): boolean =>
  inOrder.indexOf(brief.careLevel) < inOrder.indexOf(careLevel);

/** The worst product decides. Without a product nothing is known, and nothing is proposed but ordinary care. */
export function hazardsOf(brief: Brief): HazardReview {
  const hazards = [
    ...hazardRules.flatMap((rule) => {
      const products = brief.products.filter((p) => rule.holds(atWorst(p))).map((p) => p.name);
      if (products.length === 0) return [];
      const { id, kind, text, level, citation, authority } = rule;
      return [{ id, kind, products, text, level, citation, authority: authority === true }];
    }),
    ...allergenChange(brief),
  ].sort((a, b) => b.level - a.level);
  const worst = hazards[0]?.level ?? 1;
  const vulnerable = brief.consumers === 'vulnerable' && hazards.some((h) => h.kind === 'biological');
  const level = vulnerable ? (Math.min(worst + 1, 4) as Level) : worst;
  const reasons =
    brief.products.length === 0
      ? ['No product is named, so no hazard is known.']
      : hazards.filter((h) => h.level === worst).map((h) => `${h.products.join(', ')}: ${h.text}`);
  if (vulnerable && level > worst)
    reasons.push('People who fall ill easily eat it: one level more (Codex CXG 61, partly seen).');
  return {
    hazards,
    level,
    careLevel: careLevels[level],
    reasons,
    assumptions: brief.products.flatMap(assumed),
  };
}

/** An allergen that one product brings and another on the same machine must not have. */
function allergenChange(brief: Brief): readonly Hazard[] {
  const of = (p: Product) => p.allergens.map((a) => a.trim().toLowerCase());
  const all = [...new Set(brief.products.flatMap(of))].sort();
  return all.flatMap((allergen): Hazard[] => {
    const without = brief.products.filter((p) => !of(p).includes(allergen));
    if (without.length === 0) return [];
    const products = brief.products.filter((p) => of(p).includes(allergen)).map((p) => p.name);
    return [
      {
        id: `allergen-${allergen}`,
        kind: 'allergen',
        products,
        text: `${allergen} is in ${products.join(', ')} and not in ${without.map((p) => p.name).join(', ')}: heat does not destroy it, so the change needs a cleaning proven for its protein.`,
        level: 2,
        citation: { source: 'CXC-80', clause: 'introduction', standing: 'seen' },
        authority: false,
      },
    ];
  });
}

function atWorst(p: Product): Known {
  return {
    ph: p.ph ?? 7,
    aw: p.waterActivity ?? 0.99,
    storage_degC: p.storage_degC ?? 20,
    shelfLife_days: p.shelfLife_days ?? 365,
    kind: p.kind ?? 'general',
    heating: p.heating ?? 'unknown',
    ready: p.eaten !== 'cooked',
    lowOxygen: p.lowOxygen ?? false,
  };
}

function assumed(p: Product): string[] {
  const open: string[] = [];
  if (p.ph === undefined) open.push('its pH, taken as 7');
  if (p.waterActivity === undefined) open.push('its water activity, taken as 0.99');
  if (p.storage_degC === undefined) open.push('where it is kept, taken as 20 °C');
  if (p.shelfLife_days === undefined) open.push('its shelf life, taken as a year');
  if (p.heating === undefined) open.push('whether and where it is heated, taken as not in its pack');
  if (p.eaten === undefined) open.push('whether it is cooked before it is eaten, taken as not');
  return open.length === 0 ? [] : [`Not known of ${p.name}: ${open.join('; ')}.`];
}
