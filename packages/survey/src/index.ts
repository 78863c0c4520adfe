export { measureInsideCorners } from './corners/inside-corners.ts';
export { measureFlatFaces } from './flat/flat-faces.ts';
export { measureNarrowGaps } from './gaps/narrow-gaps.ts';
export { loadManifoldUnion } from './liquid/exact/manifold-union.ts';
export type { Solid, Union } from './liquid/exact/solid.ts';
export type {
  BlindChannel,
  ClosedHollow,
  Control,
  Drawing,
  FlatFace,
  InsideCorner,
  Joint,
  MeasureName,
  NarrowGap,
  Place,
  Pool,
  SurveyMeasures,
  SurveyOutcome,
  SurveyResult,
  SurveySettings,
} from './result.ts';
export { defaultSettings } from './settings.ts';
export { SurveyStopped } from './stopped.ts';
export { type SurveyRequest, survey } from './survey.ts';
export type { Tilt } from './tilt.ts';
export { closestPoint, type Nearest, newNearest } from './tree/closest.ts';
export { anyHit, firstHit, type Hit, newHit } from './tree/ray.ts';
export { buildTree, type Tree, treeOf } from './tree/tree.ts';
