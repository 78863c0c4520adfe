import type { Finding } from '@coveline/review';
import type { MeasureName } from '@coveline/survey';
import type { PlaceKind } from '@coveline/viewer';

/** The kind of a finding: that of its places, or `asked` where no geometry shows it. */
export type Kind = PlaceKind | 'asked';

const ofMeasure: Readonly<Record<MeasureName, PlaceKind>> = {
  standingLiquid: 'liquid',
  flatFaces: 'flat',
  insideCorners: 'corner',
  narrowGaps: 'gap',
  hollows: 'hollow',
  fasteners: 'fastener',
  handReach: 'reach',
  toolReach: 'reach',
  jetReach: 'reach',
  clearances: 'reach',
  openSky: 'air',
  overhead: 'air',
};

export const kindOfMeasure = (measure: MeasureName): PlaceKind => ofMeasure[measure];

export const kindOf = (finding: Pick<Finding, 'measure'>): Kind =>
  finding.measure === null ? 'asked' : ofMeasure[finding.measure];

export const kinds: readonly Kind[] = [
  'liquid',
  'flat',
  'gap',
  'corner',
  'hollow',
  'fastener',
  'reach',
  'air',
  'asked',
];
