/** The vocabulary of cleaning programmes. */
import type { Citation } from '../types.ts';

/** In the order in which a programme takes them; not every programme has all, and some come twice. */
export type StepKind =
  | 'clear'
  | 'dismantle'
  | 'dryClean'
  | 'preRinse'
  | 'detergent'
  | 'rinse'
  | 'acid'
  | 'inspect'
  | 'disinfect'
  | 'finalRinse'
  | 'drain'
  | 'dry'
  | 'reassemble';

export type Soil =
  | 'fat'
  | 'proteinCold'
  | 'proteinHeated'
  | 'starch'
  | 'sugar'
  | 'fruit'
  | 'mineral'
  | 'biofilm'
  | 'allergen'
  | 'powder'
  | 'fatDry'
  | 'rust';

/** What does the work in a step. */
export type MediumGroup =
  | 'none'
  | 'water'
  | 'alkali'
  | 'chlorinatedAlkali'
  | 'enzyme'
  | 'acid'
  | 'hypochlorite'
  | 'peracid'
  | 'peroxide'
  | 'quat'
  | 'alcohol'
  | 'hotWater'
  | 'steam'
  | 'oil';

/** Hazard pictograms of the Globally Harmonized System. */
export type Pictogram = 'GHS02' | 'GHS03' | 'GHS05' | 'GHS06' | 'GHS07' | 'GHS08' | 'GHS09';

export interface Medium {
  readonly id: string;
  readonly name: string;
  readonly group: MediumGroup;
  /** Name by which compatibility of seals and jackets is looked up in the engineering core; none where it has none. */
  readonly chemistry?: string;
  /** As usual at the strength at which it is bought; the safety data sheet of the product decides. */
  readonly pictograms: readonly Pictogram[];
  /** What can hurt, and what to wear, in one or two sentences. */
  readonly caution: string;
}

/** Mechanical action, one of the four that clean beside chemistry, temperature and time. */
export type Action = 'none' | 'flow' | 'spray' | 'foam' | 'soak' | 'brush' | 'wipe' | 'vacuum' | 'scrape';

export type Range = readonly [low: number, high: number];

export interface TemplateStep {
  readonly kind: StepKind;
  readonly medium: string;
  readonly action: Action;
  /** Percent by mass of the active substance, or of the product where the note says so. */
  readonly concentration_pct?: Range;
  readonly temperature_degC?: Range;
  readonly time_min?: Range;
  /** One sentence for the cleaner. */
  readonly how: string;
}

export interface Template {
  readonly id: string;
  readonly name: string;
  readonly soil: Soil;
  /** `cleaningWay`s of the project for which it is meant. */
  readonly ways: readonly ('inPlace' | 'outOfPlace' | 'foamAndRinse' | 'byHand' | 'dry')[];
  readonly steps: readonly TemplateStep[];
  readonly note: string;
  readonly citation: Citation;
}

/** A rule on the order and the conditions of steps; `review` checks it. */
export interface OrderRule {
  readonly id: string;
  readonly text: string;
  readonly why: string;
  /** People are hurt, or material is ruined; the others are good practice. */
  readonly danger: boolean;
  readonly citation: Citation;
}

/** What a disinfectant needs, as published. */
export interface DisinfectionPoint {
  readonly id: string;
  readonly medium: string;
  readonly concentration_pct?: Range;
  readonly atLeast_degC?: number;
  readonly atMost_degC?: number;
  readonly atLeast_min: number;
  readonly text: string;
  readonly citation: Citation;
}
