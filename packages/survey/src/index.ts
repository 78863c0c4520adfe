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
export { survey } from './survey.ts';
