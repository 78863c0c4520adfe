/** The vocabulary of the catalogue. Everything in it is our wording; the source itself decides. */

/** EN 1672-2. */
export type AreaClass = 'food' | 'splash' | 'nonFood';

export type HazardKind = 'biological' | 'chemical' | 'physical' | 'allergen' | 'operatorSafety';

export type RequirementKind = 'law' | 'standard' | 'guidance' | 'commonPractice';

/** How much depends on the machine being clean. `review` checks at compile time that these are the project's own. */
export type CareLevelKey = 'basic' | 'raised' | 'high';

/** Where a law, or a standard written for one market, applies. */
export type Jurisdiction = 'eu' | 'us';

/** How far the source was seen: the substance was read, only the principle, or all from memory. */
export type Standing = 'seen' | 'partlySeen' | 'fromMemory';

/** Keys of the survey's JSON. `review` checks at compile time that they are the survey's own. */
export type MeasureKey =
  | 'standingLiquid'
  | 'flatFaces'
  | 'insideCorners'
  | 'narrowGaps'
  | 'hollows'
  | 'fasteners'
  | 'handReach'
  | 'toolReach'
  | 'jetReach'
  | 'openSky'
  | 'overhead'
  | 'clearances';

/** How a requirement is shown to be met. A hint from a name or a material only raises a question. */
export type Evidence =
  | { readonly by: 'measure'; readonly measure: MeasureKey; readonly strength: 'decides' | 'findsCandidates' }
  | { readonly by: 'calculation' | 'hand' | 'inspection' | 'documents' };

export interface Source {
  readonly key: string;
  readonly title: string;
  readonly edition: string;
  readonly kind: RequirementKind;
  /** What of it was seen, in one line. */
  readonly seen: string;
  /** Absent: applies in every market. */
  readonly jurisdiction?: Jurisdiction;
  /** ISO dates between which it applies, where law changes over. */
  readonly from?: string;
  readonly until?: string;
}

export interface Citation {
  readonly source: string;
  readonly clause: string;
  readonly standing: Standing;
}

/** One limit of a requirement. Several may stand side by side; the profile chosen in the brief picks. */
export interface Limit {
  /** Name of the quantity that is compared, such as `radius`, `slope`, `volume`, `width`. */
  readonly quantity: string;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** Unit of both numbers, as `quantity` writes it: "mm", "deg", "mL", "um", "1". */
  readonly unit: string;
  /** From where it is measured, such as "inner wall of the main". */
  readonly datum?: string;
  /** Included angle through the air for which it holds, degrees. */
  readonly angle_deg?: readonly [number, number];
  readonly areas: readonly AreaClass[];
  /** Empty: holds in every profile. */
  readonly profiles: readonly string[];
  readonly kind: RequirementKind;
  readonly citation: Citation;
}

export interface Remedy {
  readonly text: string;
  readonly cost: 'none' | 'low' | 'some' | 'high';
}

export interface Requirement {
  readonly id: string;
  /** One sentence, our words. */
  readonly text: string;
  /** Machine element, a key of `elements`. */
  readonly element: string;
  readonly areas: readonly AreaClass[];
  readonly hazards: readonly HazardKind[];
  readonly evidence: readonly Evidence[];
  readonly kind: RequirementKind;
  readonly citations: readonly Citation[];
  readonly limits: readonly Limit[];
  readonly remedies: readonly Remedy[];
  /** Why people keep the fault, and the measure that then keeps it under control. */
  readonly conflict?: { readonly reason: string; readonly control: string };
  /** Id of the more general requirement of which this is the case for one element. */
  readonly specialises?: string;
  /** Care levels at which it is asked; absent: at all. */
  readonly careLevels?: readonly CareLevelKey[];
}

/** A choice where sources disagree. Figures of different profiles are never mixed or averaged. */
export interface Profile {
  readonly id: string;
  readonly name: string;
  /** Which figures it takes, in one or two sentences. */
  readonly summary: string;
  readonly jurisdiction: Jurisdiction;
  /** Profile of whose figures it also takes; a profile of a pack names one, so that no built-in limit is lost. */
  readonly basedOn?: string;
}

/** A part of the machine, or a matter of the whole, to which requirements belong. */
export interface MachineElement {
  readonly id: string;
  /** As in "the feet", for headings and lists. */
  readonly name: string;
  /** Whether every machine has it (joints, surfaces, documents), or only machines with such a part. */
  readonly always: boolean;
}

export type MaterialFamily =
  | 'stainless steel'
  | 'other metal'
  | 'elastomer'
  | 'plastic'
  | 'cable jacket'
  | 'glass'
  | 'lubricant';

export interface Material {
  readonly id: string;
  readonly name: string;
  readonly family: MaterialFamily;
  /** Standard designations: EN number, UNS, ISO 1629 letters. */
  readonly designations: readonly string[];
  /** Words in part names that suggest it, lower case. A hint, never a finding. */
  readonly nameHints: readonly string[];
  readonly density_kg_m3?: number;
  readonly foodContact: 'usual' | 'withProof' | 'unsuitable';
  readonly maxTemperature_degC?: number;
  readonly remarks: string;
  readonly citation: Citation;
}
