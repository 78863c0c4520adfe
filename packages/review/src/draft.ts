/** What a rule hands over; `findingOf` makes a finding of it. */
import type { AreaClass, Demand, Limit, MeasureKey } from '@coveline/catalogue';
import type { Place } from '@coveline/survey';
import type { FindingNumber } from './types.ts';

/** What the fault does, gravest first. */
export type Harm =
  /** Soil, liquid or germs stay and nobody gets at them. */
  | 'keeps'
  /** Something drops or is carried into product. */
  | 'falls'
  /** The place is harder to clean than it need be. */
  | 'hinders';

export interface Draft {
  readonly demand: Demand;
  readonly limit: Limit | null;
  readonly status: 'notMet' | 'notShown';
  /** Null: seen by people on the round. */
  readonly measure: MeasureKey | null;
  /** What the id is made from beside the requirement: a place for single places, a part or a shape for groups. */
  readonly anchor: string;
  /** Gravest first. */
  readonly places: readonly Place[];
  /** Indices into the model's parts, the one that the title names first. */
  readonly parts: readonly number[];
  readonly area: AreaClass;
  readonly title: string;
  readonly numbers: readonly FindingNumber[];
  readonly why: string;
  readonly harm: Harm;
  /** Why it counts for less than others of its kind: "Nearly met". One sentence without a full stop. */
  readonly slight?: string;
  readonly weight: number;
  readonly weightLabel: string;
  readonly caveats: readonly string[];
}

export interface RuleResult {
  readonly drafts: readonly Draft[];
  /** Ids of the requirements on which this rule has the last word. */
  readonly settles: readonly string[];
  /** What was looked at, for requirements without a finding: "64 parts, no pool above 1 mL". */
  readonly basis: string;
  readonly notes: readonly string[];
  /** Requirements that ask nothing of this machine, each with the reason. */
  readonly idle?: Readonly<Record<string, string>>;
}
