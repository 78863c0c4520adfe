export type { Blobs } from './blobs.ts';
export { type Change, doCommand, redo, undo } from './commands.ts';
export type { Tx } from './database.ts';
export type { Engine, Handler } from './engine.ts';
export { StoreError, type StoreErrorCode } from './errors.ts';
export {
  beginJob,
  cancelJob,
  completeJob,
  failJob,
  getJob,
  type JobOrder,
  type JobRow,
  listJobs,
  orderJob,
  reportJob,
  returnJob,
} from './jobs.ts';
export { history, type LogEntry, nextUndoRedo } from './log.ts';
export {
  createMachine,
  getMachine,
  listMachines,
  lockMachine,
  type MachineRow,
  touchMachine,
} from './machines.ts';
export type { Message } from './notify.ts';
export { openInMemory } from './open-embedded.ts';
export { assemble, openStore, type Store, type StoreOptions } from './open-store.ts';
export {
  addRevision,
  getRevision,
  listRevisions,
  type RevisionRow,
  type StoredFile,
  storeRevisionFile,
  updateRevision,
} from './revisions.ts';
export type { JobKind, JobState, StoredNote } from './schema.ts';
export {
  findSurvey,
  listReviews,
  listSurveys,
  type ReviewRow,
  type SurveyRow,
  storeReview,
  storeSurvey,
} from './surveys.ts';
