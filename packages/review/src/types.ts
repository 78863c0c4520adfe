/** What a review says. Pure data, so that the same findings go to the screen, the command line and the file. */
import type { AreaClass, Citation, MeasureKey, Remedy, RequirementKind } from '@coveline/catalogue';
import type { Vec3 } from '@coveline/model';
import type { PartData } from '@coveline/project';
import type { Working } from '@coveline/quantity';
import type { CleaningReview } from './cleaning/programme.ts';
import type { ProofPlan } from './proof/points.ts';
import type { Round } from './round/round.ts';

/** A number of a finding with the way it came about. */
export interface FindingNumber {
  readonly label: string;
  readonly value: number;
  /** Unit as `quantity` writes it. */
  readonly unit: string;
  readonly working: Working;
}

/** Why a finding stands where it stands in the order. Severity first; no product of ordinal scales. */
export interface Consequence {
  /** 1 is the gravest. Findings are ordered by rank, then by kind, then by `weight` within a kind, then by id. */
  readonly rank: 1 | 2 | 3 | 4;
  /** The number that orders within a rank and a kind, such as mL standing or mm of edge, with its name. */
  readonly weight: number;
  readonly weightLabel: string;
  /** One or two sentences: the reason for the order, shown with the finding. */
  readonly reason: string;
}

/** A requirement not met, or not shown to be met, at one or more places or parts. */
export interface Finding {
  /** Stable for the same requirement at the same places. */
  readonly id: string;
  readonly requirement: string;
  readonly status: 'notMet' | 'notShown';
  readonly measure: MeasureKey | null;
  /** Ids of survey places, most grave first. */
  readonly places: readonly string[];
  readonly parts: readonly string[];
  readonly at_mm: Vec3;
  readonly bounds_mm: readonly [Vec3, Vec3];
  readonly height_mm: number;
  readonly areaClass: AreaClass;
  /** A sentence that says what is wrong: "The jar guide plate keeps 38 mL after draining". */
  readonly title: string;
  readonly numbers: readonly FindingNumber[];
  /** Why it matters, in consequences. */
  readonly why: string;
  readonly demand: {
    readonly text: string;
    readonly kind: RequirementKind;
    readonly citations: readonly Citation[];
    readonly limit: string;
  };
  readonly remedies: readonly Remedy[];
  readonly conflict?: { readonly reason: string; readonly control: string };
  readonly consequence: Consequence;
  /** What the measure could not decide or had to assume. */
  readonly caveats: readonly string[];
}

/** Every requirement of the chosen profile gets a line; nothing is silently met. */
export interface RequirementStatus {
  readonly requirement: string;
  readonly status: 'met' | 'notMet' | 'notShown' | 'noSuchElement';
  /** How the status came about: "computed on 64 parts, no pool above 1 mL", "to be inspected". */
  readonly basis: string;
  readonly findings: readonly string[];
}

export interface ReviewResult {
  readonly schema: 'coveline.review/1';
  /** Ordered by consequence. */
  readonly findings: readonly Finding[];
  readonly requirements: readonly RequirementStatus[];
  /** Proposals merged with what people set. */
  readonly parts: readonly PartData[];
  readonly round: Round;
  readonly cleaning: CleaningReview;
  readonly proof: ProofPlan;
  readonly notes: readonly string[];
}
