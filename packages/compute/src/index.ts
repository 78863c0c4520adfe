export { ChildFault, InputError, LimitError, type LimitKind, TaskError } from './errors.ts';
export type { Task, TaskContext } from './messages.ts';
export {
  decodeDrawings,
  decodeFields,
  type Fields,
  outcomeFiles,
  readDrawings,
  readOutcome,
  type SiteSurveyOutcome,
  writeOutcome,
} from './outcome-files.ts';
export { type ProjectFolder, readProjectFolder } from './project-folder.ts';
export {
  type FileSurveyRequest,
  type FileSurveySummary,
  modelFile,
  type SiteSurveyResult,
  summaryFile,
} from './request.ts';
export {
  type ChildControl,
  type ChildResult,
  defaultLimits,
  type Limits,
  runInChild,
} from './run-in-child.ts';
export {
  type FileSurvey,
  type SurveyControl,
  SurveyLimitError,
  surveyFile,
  surveyFileInto,
} from './survey-file.ts';
