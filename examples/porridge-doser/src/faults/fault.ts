/** One fault that was planted on purpose, with the numbers that a measure should find. */

export type FaultKind =
  | 'standingLiquid'
  | 'levelFace'
  | 'deadLeg'
  | 'narrowGap'
  | 'closedHollow'
  | 'openHollow'
  | 'exposedThread'
  | 'sharpCorner'
  | 'smallRadius'
  | 'cables'
  | 'controls'
  | 'lowLegs'
  | 'overhead'
  | 'blindHole'
  | 'hinge';

export interface ExpectedNumber {
  readonly name: string;
  readonly value: number;
  /** "mm", "mL", "cm2", "deg", or "1". */
  readonly unit: string;
  /** The closed form, in words or symbols. */
  readonly from: string;
}

export interface PlantedFault {
  readonly id: string;
  readonly kind: FaultKind;
  readonly parts: readonly string[];
  readonly what: string;
  readonly expected: readonly ExpectedNumber[];
}

export const number = (name: string, value: number, unit: string, from: string): ExpectedNumber => ({
  name,
  value,
  unit,
  from,
});
