/**
 * How rows of the catalogue are written: short words for the parts of a row. The kind of a requirement is the
 * strongest kind among its citations, so that it cannot be claimed to be law where no law is cited.
 */
import { sourceByKey } from './sources.ts';
import type {
  AreaClass,
  CareLevelKey,
  Citation,
  Evidence,
  HazardKind,
  Limit,
  MeasureKey,
  Remedy,
  Requirement,
  RequirementKind,
} from './types.ts';

export const F: readonly AreaClass[] = ['food'];
export const S: readonly AreaClass[] = ['splash'];
export const N: readonly AreaClass[] = ['nonFood'];
export const FS: readonly AreaClass[] = ['food', 'splash'];
export const SN: readonly AreaClass[] = ['splash', 'nonFood'];
export const FN: readonly AreaClass[] = ['food', 'nonFood'];
export const ALL: readonly AreaClass[] = ['food', 'splash', 'nonFood'];

const hazardOf: Record<string, HazardKind> = {
  B: 'biological',
  C: 'chemical',
  P: 'physical',
  A: 'allergen',
  O: 'operatorSafety',
};

/** "BP" stands for biological and physical; O for the safety of people at the machine. */
export type HazardLetters = string;

/** The measure settles the matter. */
export const decides = (measure: MeasureKey): Evidence => ({ by: 'measure', measure, strength: 'decides' });
/** The measure finds places at which somebody has to look. */
export const finds = (measure: MeasureKey): Evidence => ({
  by: 'measure',
  measure,
  strength: 'findsCandidates',
});
export const calculated: Evidence = { by: 'calculation' };
export const byHand: Evidence = { by: 'hand' };
export const inspected: Evidence = { by: 'inspection' };
export const documented: Evidence = { by: 'documents' };

export const seen = (source: string, clause: string): Citation => ({ source, clause, standing: 'seen' });
export const half = (source: string, clause: string): Citation => ({
  source,
  clause,
  standing: 'partlySeen',
});
export const memory = (source: string, clause: string): Citation => ({
  source,
  clause,
  standing: 'fromMemory',
});
/** Common practice without a source that could be cited. */
export const practice: Citation = { source: 'practice', clause: 'no source', standing: 'fromMemory' };

/**
 * The hygiene clause of the machine law, old and new: the Directive's text was read; the Regulation's letters are
 * taken to be the same until they have been compared.
 */
export const machineLaw = (letter: 'a' | 'b' | 'c' | 'd' | 'e'): readonly [Citation, Citation] => [
  seen('EU-MD', `Annex I 2.1.1(${letter})`),
  half('EU-MR', `Annex III 2.1.1(${letter})`),
];

export const free = (text: string): Remedy => ({ text, cost: 'none' });
export const cheap = (text: string): Remedy => ({ text, cost: 'low' });
export const some = (text: string): Remedy => ({ text, cost: 'some' });
export const dear = (text: string): Remedy => ({ text, cost: 'high' });

interface LimitDetails {
  readonly areas: readonly AreaClass[];
  readonly from: Citation;
  readonly datum?: string;
  readonly angle_deg?: readonly [number, number];
  readonly profiles?: readonly string[];
}

export const atLeast = (quantity: string, value: number, unit: string, d: LimitDetails): Limit => ({
  quantity,
  atLeast: value,
  unit,
  ...details(d),
});

export const atMost = (quantity: string, value: number, unit: string, d: LimitDetails): Limit => ({
  quantity,
  atMost: value,
  unit,
  ...details(d),
});

export const between = (
  quantity: string,
  low: number,
  high: number,
  unit: string,
  d: LimitDetails,
): Limit => ({ quantity, atLeast: low, atMost: high, unit, ...details(d) });

function details({ areas, from, datum, angle_deg, profiles }: LimitDetails) {
  return {
    ...(datum === undefined ? {} : { datum }),
    ...(angle_deg === undefined ? {} : { angle_deg }),
    areas,
    profiles: profiles ?? [],
    kind: kindOf(from),
    citation: from,
  };
}

export interface Row {
  readonly id: string;
  readonly text: string;
  readonly areas: readonly AreaClass[];
  readonly hazards: HazardLetters;
  readonly shown: readonly Evidence[];
  readonly from: readonly Citation[];
  readonly limits?: readonly Limit[];
  readonly remedies: readonly Remedy[];
  /** Why the fault is kept, and what then keeps it under control. */
  readonly kept?: readonly [reason: string, control: string];
  readonly specialises?: string;
  readonly careLevels?: readonly CareLevelKey[];
}

/** The requirements of one machine element. */
export function requirementsOf(element: string, rows: readonly Row[]): readonly Requirement[] {
  return rows.map((row) => ({
    id: row.id,
    text: row.text,
    element,
    areas: row.areas,
    hazards: [...row.hazards].map((letter) => hazardOf[letter]),
    evidence: row.shown,
    kind: strongest(row.from.map(kindOf)),
    citations: row.from,
    limits: row.limits ?? [],
    remedies: row.remedies,
    ...(row.kept ? { conflict: { reason: row.kept[0], control: row.kept[1] } } : {}),
    ...(row.specialises === undefined ? {} : { specialises: row.specialises }),
    ...(row.careLevels === undefined ? {} : { careLevels: row.careLevels }),
  }));
}

const byStrength: readonly RequirementKind[] = ['law', 'standard', 'guidance', 'commonPractice'];

/** Law before standard before guidance before common practice. */
export function strongest(kinds: readonly RequirementKind[]): RequirementKind {
  return byStrength.find((kind) => kinds.includes(kind)) ?? 'commonPractice';
}

function kindOf(citation: Citation): RequirementKind {
  const source = sourceByKey.get(citation.source);
  if (!source) throw new Error(`The catalogue cites "${citation.source}", which is not among its sources.`);
  return source.kind;
}
