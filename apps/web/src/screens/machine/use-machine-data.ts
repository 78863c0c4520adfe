import type { Machine } from '@coveline/api';
import { type Decision, isDecided, type PartData, standingOf } from '@coveline/project';
import type { Finding } from '@coveline/review';
import { useMemo } from 'react';
import { today } from '../../numbers/show.ts';
import type { MachineRoute } from '../../routing/route.ts';
import { useDrawings, useDrawingsOf, useModel, useReview, useSurvey } from '../../state/queries.ts';
import type { MachineData } from './machine-context.ts';

/** Places whose drawings are asked for in one address. */
const mostAsked = 300;

const noFindings: readonly Finding[] = [];
const noParts: readonly PartData[] = [];
const noDecisions: Readonly<Record<string, Decision>> = {};

/** Gathers what the pages of a machine show, for the revision that the address names. */
export function useMachineDataFor(machine: Machine, route: MachineRoute): MachineData {
  const revision =
    route.revision === null
      ? (machine.revisions.at(-1) ?? null)
      : (machine.revisions.find((r) => r.id === route.revision) ?? null);
  const at = useMemo(() => (revision ? { machine: machine.id, revision } : null), [machine.id, revision]);
  const model = useModel(at).data;
  const survey = useSurvey(at).data;
  const review = useReview(at).data;
  const light = useDrawings(at).data;
  const chosen = route.page === 'walk' ? review?.findings.find((f) => f.id === route.item) : undefined;
  const missing = useMemo(
    () => (light && chosen ? chosen.places.filter((id) => !(id in light)).slice(0, mostAsked) : []),
    [light, chosen],
  );
  const full = useDrawingsOf(at, chosen?.id ?? '', missing);
  const rest = full.isPlaceholderData ? undefined : full.data;
  const drawings = useMemo(() => (light && rest ? { ...light, ...rest } : light), [light, rest]);
  const drawing = full.isFetching;
  const decisions = (revision && machine.project.decisions[revision.id]) ?? noDecisions;
  return useMemo(() => {
    const findings = review?.findings ?? noFindings;
    return {
      route,
      machine,
      revision,
      at,
      model,
      survey,
      drawings,
      drawing,
      review,
      findings,
      parts: review?.parts ?? noParts,
      decisions,
      decided: findings.filter((f) => isDecided(standingOf(decisions[f.id], today()))).length,
    };
  }, [route, machine, revision, at, model, survey, drawings, drawing, review, decisions]);
}
