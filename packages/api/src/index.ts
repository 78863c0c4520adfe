/**
 * What server and workbench say to each other. JSON unless stated; every error is `Problem` with an HTTP status.
 *
 *   GET  /api/machines                                   -> MachineSummary[]
 *   POST /api/machines                { name }           -> MachineSummary
 *   GET  /api/machines/:machine                          -> Machine
 *   POST /api/machines/:machine/revisions                -> UploadAnswer; multipart: file, label?, up?, unit?
 *   POST /api/machines/:machine/commands   Command       -> Changed
 *   POST /api/machines/:machine/undo, /redo              -> Changed; 409 when there is nothing to undo
 *   POST /api/machines/:machine/photographs              -> { sha256, name }; multipart: file, a JPEG or PNG
 *   GET  /api/machines/:machine/photographs/:sha256      -> the picture
 *   GET  /api/machines/:machine/history                  -> HistoryEntry[], newest first
 *
 *   below /api/machines/:machine/revisions/:revision; results are those of the orientation that the project says,
 *   and 404 `not-surveyed` while there are none
 *   GET  /model            -> bytes of `encodeModel`, +Z up, application/octet-stream; immutable by ETag
 *   GET  /survey           -> SurveyResult; 404 while it is not surveyed
 *   GET  /fields/:measure  -> Float32Array bytes, one number per triangle
 *   GET  /drawings         -> Drawings, packed by `packFloats`: of the places that findings name, but for large ones
 *   GET  /drawings?places= -> the same of these places, ids with commas between them, as far as 2 MB go
 *   GET  /review           -> ReviewResult with the decisions taken
 *   GET  /since/:before    -> RevisionComparison: what became of the findings of another revision
 *   GET  /options/:finding -> OptionsAnswer: what could be done, with its computed effect; seconds for a pool
 *   GET  /site             -> SiteAnswer: what is proposed of the site, and what the survey went by
 *   POST /survey           -> Job: survey again
 *   POST /file             -> Job: make the PDF
 *   GET  /file.pdf         -> the PDF last made
 *
 *   GET  /api/jobs?machine=            -> Job[], newest first
 *   POST /api/jobs/:job/cancel         -> Job
 *   GET  /api/events                   -> server-sent events, `Event` as data; on reconnect read again what is shown
 *   GET  /api/materials, /requirements, /sources, /profiles -> rows of the catalogue; ?machine= with its packs
 *   GET  /api/openapi.json
 */
import { command, type decision, project, type SiteProposal } from '@coveline/project';
import type { Option, ReviewResult } from '@coveline/review';
import type { Drawing, Site } from '@coveline/survey';
import * as z from 'zod';

export const jobState = z.enum(['waiting', 'running', 'done', 'failed', 'cancelled']);

export const job = z.object({
  id: z.string(),
  kind: z.enum(['survey', 'file']),
  machine: z.string(),
  revision: z.string(),
  state: jobState,
  /** In words: "Reading bodies 12 of 64". */
  stage: z.string(),
  /** 0 to 1. */
  done: z.number(),
  /** One sentence for a person, when it failed. */
  error: z.string().nullable(),
  /** What should be known about its result, one sentence each. */
  notes: z.array(z.string()).optional(),
  startedAt: z.iso.datetime().nullable(),
  seconds: z.number().nullable(),
});

export const revisionSummary = z.object({
  id: z.string(),
  label: z.string(),
  file: z.string(),
  up: z.string(),
  sha256: z.string(),
  size_bytes: z.number(),
  /** What the reader noticed. Empty until it is read. */
  notes: z.array(
    z.object({ level: z.enum(['info', 'warning']), text: z.string(), part: z.string().optional() }),
  ),
  parts: z.number().nullable(),
  triangles: z.number().nullable(),
  surveyedAt: z.iso.datetime().nullable(),
  /** It was surveyed, but by another version of the program: to be measured again before anything is told. */
  outdated: z.boolean(),
  findings: z.number().nullable(),
  decided: z.number().nullable(),
  hasFile: z.boolean(),
});

export const machineSummary = z.object({
  id: z.string(),
  name: z.string(),
  invented: z.boolean(),
  changedAt: z.iso.datetime(),
  revisions: z.array(revisionSummary),
});

export const machine = machineSummary.extend({
  project,
  /** Grows with every change; a client that holds an older one reads again. */
  version: z.number(),
  canUndo: z.string().nullable().describe('what undo would take back, in words'),
  canRedo: z.string().nullable(),
});

export const changed = machine;
export const uploadAnswer = z.object({ revision: z.string(), job });
export const historyEntry = z.object({
  seq: z.number(),
  at: z.iso.datetime(),
  by: z.string(),
  what: z.string().describe('in words'),
  command,
  kind: z.enum(['do', 'undo', 'redo']),
});

export const problem = z.object({
  /** One sentence: what, where, what to do. */
  message: z.string(),
  code: z.string(),
});

export const event = z.discriminatedUnion('type', [
  z.object({ type: z.literal('job'), job }),
  z.object({ type: z.literal('machine'), machine: z.string(), version: z.number() }),
]);

export type Job = z.infer<typeof job>;
export type RevisionSummary = z.infer<typeof revisionSummary>;
export type MachineSummary = z.infer<typeof machineSummary>;
export type Machine = z.infer<typeof machine>;
export type UploadAnswer = z.infer<typeof uploadAnswer>;
export type HistoryEntry = z.infer<typeof historyEntry>;
export type Problem = z.infer<typeof problem>;
export type Event = z.infer<typeof event>;

/** By place id: free triangles and polylines as flat xyz numbers, mm. */
export type Drawings = Readonly<Record<string, Drawing>>;
/** What people said of the proposals is in the project; `surveyed` is the site that the results go by, if it is known. */
export interface SiteAnswer {
  readonly proposals: readonly SiteProposal[];
  readonly notes: readonly string[];
  readonly surveyed: Site | null;
}
export interface OptionsAnswer {
  readonly options: readonly Option[];
}
export type ReviewAnswer = ReviewResult & { readonly decisions: Record<string, z.infer<typeof decision>> };
