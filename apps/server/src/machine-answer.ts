import type { Machine, MachineSummary, RevisionSummary } from '@coveline/api';
import type { Project, Revision } from '@coveline/project';
import {
  getMachine,
  listMachines,
  listReviews,
  listRevisions,
  listSurveys,
  type MachineRow,
  nextUndoRedo,
  type ReviewRow,
  type RevisionRow,
  type SurveyRow,
  type Tx,
} from '@coveline/store';
import { isOutdated } from './surveyed.ts';

/** Everything that summaries are made from. */
interface Rows {
  readonly revisions: readonly RevisionRow[];
  readonly surveys: readonly SurveyRow[];
  readonly reviews: readonly ReviewRow[];
}

/** All machines, latest change first. */
export async function machineList(tx: Tx): Promise<MachineSummary[]> {
  const machines = await listMachines(tx);
  const rows = await readRows(tx);
  return machines.map((machine) => summary(machine, rows));
}

/** One machine with its project. */
export async function machineAnswer(tx: Tx, id: string): Promise<Machine> {
  const machine = await getMachine(tx, id);
  const { undo, redo } = await nextUndoRedo(tx, id);
  return {
    ...summary(machine, await readRows(tx, id)),
    project: machine.project,
    version: machine.version,
    canUndo: undo?.what ?? null,
    canRedo: redo?.what ?? null,
  };
}

async function readRows(tx: Tx, machine?: string): Promise<Rows> {
  return {
    revisions: await listRevisions(tx, machine),
    surveys: await listSurveys(tx, machine),
    reviews: await listReviews(tx, machine),
  };
}

function summary({ id, project, changedAt }: MachineRow, rows: Rows): MachineSummary {
  return {
    id,
    name: project.name,
    invented: project.invented,
    changedAt: changedAt.toISOString(),
    revisions: project.revisions.map((revision) => revisionSummary(id, project, revision, rows)),
  };
}

function revisionSummary(machine: string, project: Project, revision: Revision, rows: Rows): RevisionSummary {
  const { id, label, file, up } = revision;
  const here = (row: { machine: string; revision: string }) => row.machine === machine && row.revision === id;
  const stored = rows.revisions.find((r) => r.machine === machine && r.id === id);
  if (!stored) throw new Error(`The file of revision ${id} of ${machine} is not in the store.`);
  const made = rows.surveys.find((s) => here(s) && s.up === up);
  const survey = made && !isOutdated(made) ? made : undefined;
  const findings = survey && rows.reviews.find(here)?.findings;
  const decisions = project.decisions[id] ?? {};
  return {
    id,
    label,
    file,
    up,
    sha256: stored.sha256,
    size_bytes: stored.size_bytes,
    notes: [...stored.notes],
    parts: stored.parts,
    triangles: stored.triangles,
    surveyedAt: survey?.at.toISOString() ?? null,
    outdated: made !== undefined && survey === undefined,
    findings: findings?.length ?? null,
    decided: findings?.filter((finding) => Object.hasOwn(decisions, finding)).length ?? null,
    hasFile: stored.pdf !== null,
  };
}
