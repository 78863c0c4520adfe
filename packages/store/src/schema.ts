/**
 * One schema for both databases. Files of any size lie in the blob folder by SHA-256; rows hold the hash.
 * `json`, not `jsonb`: keys keep their order, so that equal values have equal texts and a diff is a diff.
 */
import type { Command, Project, Revision } from '@coveline/project';
import {
  bigint,
  index,
  integer,
  json,
  pgTable,
  primaryKey,
  real,
  text,
  timestamp,
} from 'drizzle-orm/pg-core';

const time = (name: string) => timestamp(name, { withTimezone: true });

export const machine = pgTable('machine', {
  id: text('id').primaryKey(),
  /** The project when the machine was created; `initial` and the log give `project`. */
  initial: json('initial').$type<Project>().notNull(),
  project: json('project').$type<Project>().notNull(),
  /** Grows with every change that a reader of the machine could see. */
  version: integer('version').notNull(),
  changedAt: time('changed_at').notNull().defaultNow(),
});

export type EntryKind = 'do' | 'undo' | 'redo';

/** The audit trail. Rows are only ever added. */
export const logEntry = pgTable(
  'log_entry',
  {
    machine: text('machine')
      .notNull()
      .references(() => machine.id),
    seq: integer('seq').notNull(),
    at: time('at').notNull().defaultNow(),
    by: text('by').notNull(),
    kind: text('kind').$type<EntryKind>().notNull(),
    what: text('what').notNull(),
    command: json('command').$type<Command>().notNull(),
    /** Absent where the entry cannot be taken back: an upload. */
    inverse: json('inverse').$type<Command>(),
    /** The revision that the entry added. */
    adds: json('adds').$type<Revision>(),
    /** Of an undo or redo: the entry that it takes back or does again. */
    target: integer('target'),
  },
  (t) => [primaryKey({ columns: [t.machine, t.seq] })],
);

export interface StoredNote {
  readonly level: 'info' | 'warning';
  readonly text: string;
  readonly part?: string;
}

/** What the server knows of a revision beside what people decide (that is in the project). */
export const revision = pgTable(
  'revision',
  {
    machine: text('machine')
      .notNull()
      .references(() => machine.id),
    id: text('id').notNull(),
    sha256: text('sha256').notNull(),
    size_bytes: bigint('size_bytes', { mode: 'number' }).notNull(),
    notes: json('notes').$type<readonly StoredNote[]>().notNull().default([]),
    parts: integer('parts'),
    triangles: integer('triangles'),
    /** SHA-256 of the PDF last made. */
    pdf: text('pdf'),
  },
  (t) => [primaryKey({ columns: [t.machine, t.id] })],
);

/** One survey per revision and orientation; surveying again replaces it. Hashes name blobs. */
export const survey = pgTable(
  'survey',
  {
    machine: text('machine').notNull(),
    revision: text('revision').notNull(),
    up: text('up').notNull(),
    at: time('at').notNull().defaultNow(),
    model: text('model').notNull(),
    result: text('result').notNull(),
    fields: text('fields').notNull(),
    drawings: text('drawings').notNull(),
    /** `surveyVersion` of the code that measured; 0: before it was noted. */
    version: integer('version').notNull().default(0),
  },
  (t) => [primaryKey({ columns: [t.machine, t.revision, t.up] })],
);

/** What the last review of each revision found, for the lists; the review itself is computed when it is read. */
export const review = pgTable(
  'review',
  {
    machine: text('machine').notNull(),
    revision: text('revision').notNull(),
    /** Ids. */
    findings: json('findings').$type<readonly string[]>().notNull(),
  },
  (t) => [primaryKey({ columns: [t.machine, t.revision] })],
);

export type JobKind = 'survey' | 'file';
export type JobState = 'waiting' | 'running' | 'done' | 'failed' | 'cancelled';

/** What people see of a job. The engine that runs it keeps its own tables and knows the job by the same id. */
export const job = pgTable(
  'job',
  {
    id: text('id').primaryKey(),
    kind: text('kind').$type<JobKind>().notNull(),
    machine: text('machine')
      .notNull()
      .references(() => machine.id),
    revision: text('revision').notNull(),
    state: text('state').$type<JobState>().notNull(),
    stage: text('stage').notNull().default(''),
    done: real('done').notNull().default(0),
    error: text('error'),
    /** What should be known about the result, one sentence each. */
    notes: json('notes').$type<readonly string[]>().notNull().default([]),
    createdAt: time('created_at').notNull().defaultNow(),
    startedAt: time('started_at'),
    endedAt: time('ended_at'),
  },
  (t) => [index('job_by_machine').on(t.machine, t.createdAt)],
);
