export { type Answer, answer, type Mark, mark, type Photograph, photograph } from './answer.ts';
export {
  type CleaningStep,
  type CleaningWay,
  cleaningStep,
  cleaningWay,
  type SoilName,
  type SurfaceGroup,
  soil,
  stepKind,
  surfaceGroup,
} from './cleaning.ts';
export { applyCommand, type Command, command } from './command.ts';
export { describeCommand } from './describe.ts';
export { type KeptCalculation, keptCalculation, longestInput } from './kept-calculation.ts';
export { type ParsedProject, parseProject } from './parse.ts';
export { type SampleResult, sampleResult } from './sample-result.ts';
export * from './schema.ts';
export { type SiteChange, type SiteItem, siteChange, siteItem } from './site.ts';
export {
  type Confidence,
  type SiteChanges,
  type SiteEntry,
  type SiteProposal,
  siteEntries,
  siteOf,
} from './site-of.ts';
export { isDecided, type Standing, standingOf } from './standing.ts';
export { type Yardstick, yardstickOf } from './yardstick.ts';
