import type { RevisionSummary } from '@coveline/api';
import type { MeasureName } from '@coveline/survey';
import { keepPreviousData, QueryClient, useQuery } from '@tanstack/react-query';
import { api, type CatalogueRows } from '../api/client.ts';
import { ApiError } from '../api/request.ts';
import { withWaiting } from './waiting.ts';

/** The server pushes what changed, so nothing is read again merely because time passed. */
export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: Number.POSITIVE_INFINITY,
      refetchOnWindowFocus: false,
      retry: (count, error) =>
        count < 2 && error instanceof ApiError && (error.status === 0 || error.status >= 500),
    },
  },
});

export const keys = {
  machines: ['machines'] as const,
  machine: (machine: string) => ['machine', machine] as const,
  history: (machine: string) => ['history', machine] as const,
  jobs: (machine: string) => ['jobs', machine] as const,
  /** All that was computed on a revision; changes when it is surveyed again. */
  revision: (machine: string, revision: string) => ['revision', machine, revision] as const,
};

/** What was judged depends on the brief, the parts and the geometry; the geometry itself does not. */
export const invalidateReviews = (machine: string) =>
  queryClient.invalidateQueries({
    queryKey: ['revision', machine],
    predicate: (query) => query.queryKey.some((key) => String(key).startsWith('review')),
  });

export const useMachines = () => useQuery({ queryKey: keys.machines, queryFn: api.machines });

export const useMachine = (machine: string) =>
  useQuery({ queryKey: keys.machine(machine), queryFn: () => api.machine(machine).then(withWaiting) });

export const useHistory = (machine: string) =>
  useQuery({ queryKey: keys.history(machine), queryFn: () => api.history(machine), staleTime: 0 });

export const useJobs = (machine: string) =>
  useQuery({ queryKey: keys.jobs(machine), queryFn: () => api.jobs(machine) });

/** A revision of a machine, named; null while there is none to read. */
export interface RevisionAt {
  readonly machine: string;
  readonly revision: RevisionSummary;
}

function useOfRevision<T>(
  what: string,
  at: RevisionAt | null,
  ready: boolean,
  read: (m: string, r: string) => Promise<T>,
) {
  const machine = at?.machine ?? '';
  const id = at?.revision.id ?? '';
  return useQuery({
    queryKey: [...keys.revision(machine, id), what, at?.revision.up, at?.revision.surveyedAt],
    queryFn: () => read(machine, id),
    enabled: at !== null && ready,
    placeholderData: keepPreviousData,
  });
}

const isRead = (at: RevisionAt | null) => at?.revision.parts != null;
const isSurveyed = (at: RevisionAt | null) => at?.revision.surveyedAt != null;

export const useModel = (at: RevisionAt | null) => useOfRevision('model', at, isRead(at), api.model);
export const useSurvey = (at: RevisionAt | null) => useOfRevision('survey', at, isSurveyed(at), api.survey);
export const useDrawings = (at: RevisionAt | null) =>
  useOfRevision('drawings', at, isSurveyed(at), api.drawings);
/** Of one finding's places: asked for when it is looked at. */
export const useDrawingsOf = (at: RevisionAt | null, finding: string, places: readonly string[]) =>
  useOfRevision(`drawings of ${finding}`, at, isSurveyed(at) && places.length > 0, (m, r) =>
    api.drawingsOf(m, r, places),
  );
export const useReview = (at: RevisionAt | null) => useOfRevision('review', at, isSurveyed(at), api.review);
export const useSince = (at: RevisionAt | null, before: string | null) =>
  useOfRevision(`review since ${before}`, at, isSurveyed(at) && before !== null, (m, r) =>
    api.since(m, r, before!),
  );
export const useOptions = (at: RevisionAt | null, finding: string) =>
  useOfRevision(`review options ${finding}`, at, isSurveyed(at), (m, r) => api.options(m, r, finding));
export const useSite = (at: RevisionAt | null) => useOfRevision('site', at, isSurveyed(at), api.site);
export const useField = (at: RevisionAt | null, measure: MeasureName | null) =>
  useOfRevision(`field ${measure}`, at, isSurveyed(at) && measure !== null, (m, r) =>
    api.field(m, r, measure!),
  );

/** Rows of the catalogue with the packs of a machine; they are read again with what is judged by them. */
const useCatalogue = <K extends keyof CatalogueRows>(list: K, machine: string) =>
  useQuery({
    queryKey: ['revision', machine, `review by ${list}`],
    queryFn: () => api.catalogue(list, machine),
  });

export const useMaterials = (machine: string) => useCatalogue('materials', machine);
export const useRequirements = (machine: string) => useCatalogue('requirements', machine);
export const useSources = (machine: string) => useCatalogue('sources', machine);
export const useProfiles = (machine: string) => useCatalogue('profiles', machine);
