export { measureClearances } from './clearances/clearances.ts';
export { measureInsideCorners } from './corners/inside-corners.ts';
export { measureFlatFaces } from './flat/flat-faces.ts';
export { measureNarrowGaps } from './gaps/narrow-gaps.ts';
export { type FaultKind, healthOf, type ModelFault, type ModelHealth } from './health/health.ts';
export { measureJetReach } from './jets/jet-reach.ts';
export { loadManifoldUnion } from './liquid/exact/manifold-union.ts';
export type { Solid, Union } from './liquid/exact/solid.ts';
export { type LiquidBasis, liquidBasis, type Trial, type TrialPool } from './liquid/trials/basis.ts';
export { type DrainHole, type DrainTrial, tryDrain } from './liquid/trials/drain.ts';
export { type Proposals, proposeFor } from './liquid/trials/propose.ts';
export { type PartTilt, tryTilt } from './liquid/trials/tilt-part.ts';
export type { MeasureOutcome } from './outcome.ts';
export { type Finished, outcomeOf } from './outcome-of.ts';
export { measureOverhead } from './overhead/overhead.ts';
export { handOf, type Limb, toolOf } from './reach/limb.ts';
export { measureReach, type Reach, reachOf } from './reach/reach.ts';
export type {
  BlindChannel,
  Clearance,
  ClosedHollow,
  Control,
  DeadLeg,
  Drawing,
  FastenerHead,
  FlatFace,
  InsideCorner,
  JetNozzle,
  JetShadow,
  Joint,
  MeasureName,
  NarrowGap,
  Opening,
  OpenMember,
  Overhang,
  Place,
  Pool,
  ReachMeasure,
  Recognised,
  SkyView,
  SurveyMeasures,
  SurveyOutcome,
  SurveyResult,
  SurveySettings,
  Thread,
  TiltedTotal,
  TiltRange,
  Unreached,
} from './result.ts';
export { type SealedAir, sealedFrom } from './sealed.ts';
export { defaultSettings } from './settings.ts';
export {
  type AccessSide,
  type Door,
  emptySite,
  type FilterFace,
  type Mouth,
  type Nozzle,
  type Site,
} from './site.ts';
export { measureOpenSky } from './sky/open-sky.ts';
export { SurveyStopped } from './stopped.ts';
export {
  measureOne,
  type Offered,
  offered,
  onSealedAir,
  type Prepared,
  prepareSealed,
  type SharedWork,
  type SurveyRequest,
  sharedWork,
  survey,
} from './survey.ts';
export type { AxisTilt, DoubleTilt, Tilt } from './tilt.ts';
export { liquidOverTilts, type TiltRequest } from './tilt-range.ts';
export { closestPoint, type Nearest, newNearest } from './tree/closest.ts';
export {
  anyHits,
  type ClosestPoints,
  closestPoints,
  type FirstHits,
  firstHits,
  pointLength,
  rayLength,
} from './tree/many.ts';
export { anyHit, firstHit, type Hit, newHit } from './tree/ray.ts';
export { adoptTree, type SharedTree, shareTree } from './tree/share.ts';
export { buildTree, type Tree, treeOf } from './tree/tree.ts';
export { surveyVersion } from './version.ts';
