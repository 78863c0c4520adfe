/** Typed calls of the HTTP contract; see `@coveline/api`. Every failure is thrown as `ApiError`. */
import type {
  Drawings,
  HistoryEntry,
  Job,
  Machine,
  MachineSummary,
  OptionsAnswer,
  ReviewAnswer,
  SiteAnswer,
  UploadAnswer,
} from '@coveline/api';
import type { Material, Profile, Requirement, Source } from '@coveline/catalogue';
import { decodeModel, type Model, unpackFloats } from '@coveline/model';
import type { Command, Photograph } from '@coveline/project';
import type { RevisionComparison } from '@coveline/review';
import type { MeasureName, SurveyResult } from '@coveline/survey';
import { answerOf, request } from './request.ts';

const revisionPath = (machine: string, revision: string) =>
  `/api/machines/${encodeURIComponent(machine)}/revisions/${encodeURIComponent(revision)}`;
const machinePath = (machine: string) => `/api/machines/${encodeURIComponent(machine)}`;

const get = <T>(path: string) => request(path).then((r) => r.json() as Promise<T>);
const post = <T>(path: string, body?: unknown) =>
  request(path, {
    method: 'POST',
    ...(body === undefined
      ? {}
      : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
  }).then((r) => r.json() as Promise<T>);

export interface CatalogueRows {
  readonly materials: Material;
  readonly requirements: Requirement;
  readonly sources: Source;
  readonly profiles: Profile;
}

export const api = {
  machines: () => get<MachineSummary[]>('/api/machines'),
  createMachine: (name: string) => post<MachineSummary>('/api/machines', { name }),
  machine: (machine: string) => get<Machine>(machinePath(machine)),
  command: (machine: string, command: Command) => post<Machine>(`${machinePath(machine)}/commands`, command),
  undo: (machine: string) => post<Machine>(`${machinePath(machine)}/undo`),
  redo: (machine: string) => post<Machine>(`${machinePath(machine)}/redo`),
  history: (machine: string) => get<HistoryEntry[]>(`${machinePath(machine)}/history`),

  model: async (machine: string, revision: string): Promise<Model> => {
    const response = await request(`${revisionPath(machine, revision)}/model`);
    return decodeModel(new Uint8Array(await response.arrayBuffer()));
  },
  survey: (machine: string, revision: string) =>
    get<SurveyResult>(`${revisionPath(machine, revision)}/survey`),
  field: async (machine: string, revision: string, measure: MeasureName): Promise<Float32Array> => {
    const response = await request(`${revisionPath(machine, revision)}/fields/${measure}`);
    return new Float32Array(await response.arrayBuffer());
  },
  /** Of the places that findings name, large ones left out. */
  drawings: (machine: string, revision: string) => drawingsAt(`${revisionPath(machine, revision)}/drawings`),
  drawingsOf: (machine: string, revision: string, places: readonly string[]) =>
    drawingsAt(
      `${revisionPath(machine, revision)}/drawings?places=${places.map(encodeURIComponent).join(',')}`,
    ),
  review: (machine: string, revision: string) =>
    get<ReviewAnswer>(`${revisionPath(machine, revision)}/review`),
  since: (machine: string, revision: string, before: string) =>
    get<RevisionComparison>(`${revisionPath(machine, revision)}/since/${encodeURIComponent(before)}`),
  options: (machine: string, revision: string, finding: string) =>
    get<OptionsAnswer>(`${revisionPath(machine, revision)}/options/${encodeURIComponent(finding)}`),
  site: (machine: string, revision: string) => get<SiteAnswer>(`${revisionPath(machine, revision)}/site`),
  surveyAgain: (machine: string, revision: string) => post<Job>(`${revisionPath(machine, revision)}/survey`),
  photographAddress: (machine: string, sha256: string) => `${machinePath(machine)}/photographs/${sha256}`,
  sendPhotograph: (machine: string, file: File) => {
    const body = new FormData();
    body.set('file', file);
    return request(`${machinePath(machine)}/photographs`, { method: 'POST', body }).then(
      (r) => r.json() as Promise<Pick<Photograph, 'sha256' | 'name'>>,
    );
  },
  makeFile: (machine: string, revision: string) => post<Job>(`${revisionPath(machine, revision)}/file`),
  fileAddress: (machine: string, revision: string) => `${revisionPath(machine, revision)}/file.pdf`,

  jobs: (machine: string) => get<Job[]>(`/api/jobs?machine=${encodeURIComponent(machine)}`),
  cancelJob: (job: string) => post<Job>(`/api/jobs/${encodeURIComponent(job)}/cancel`),

  /** Rows of the catalogue with the packs of a machine. */
  catalogue: <K extends keyof CatalogueRows>(list: K, machine: string) =>
    get<CatalogueRows[K][]>(`/api/${list}?machine=${encodeURIComponent(machine)}`),
};

async function drawingsAt(path: string): Promise<Drawings> {
  const response = await request(path);
  return unpackFloats(new Uint8Array(await response.arrayBuffer())) as Drawings;
}

export interface Upload {
  readonly file: File;
  readonly label: string;
  readonly up: string;
  /** Null leaves the unit to the file. */
  readonly unit: string | null;
}

/** Sends a model file and tells how much of it has gone, 0 to 1. Fetch cannot tell that, so it is an XMLHttpRequest. */
export function uploadModel(
  machine: string,
  upload: Upload,
  onProgress: (sent: number) => void,
): Promise<UploadAnswer> {
  const form = new FormData();
  if (upload.label) form.set('label', upload.label);
  form.set('up', upload.up);
  if (upload.unit) form.set('unit', upload.unit);
  form.set('file', upload.file);
  return new Promise((resolve, reject) => {
    const http = new XMLHttpRequest();
    http.open('POST', `${machinePath(machine)}/revisions`);
    http.upload.onprogress = (e) => onProgress(e.total > 0 ? e.loaded / e.total : 0);
    http.onload = () => answerOf<UploadAnswer>(http.status, http.responseText).then(resolve, reject);
    http.onerror = () => answerOf<UploadAnswer>(0, '').then(resolve, reject);
    http.send(form);
  });
}
