import type { Drawings } from '@coveline/api';
import type { Model } from '@coveline/model';
import type { PartData } from '@coveline/project';
import type { SurveyResult } from '@coveline/survey';
import { type PlaceDrawing, type PlaceKind, sheets, type Viewer } from '@coveline/viewer';
import { useEffect } from 'react';
import { onSheetChange, sheetNow } from '../state/preferences.ts';
import { useViewState } from './view-state.ts';

/** Shows the model, as far as it is here, in the state that the person chose. */
export function useModelInView(viewer: Viewer | null, model: Model | undefined): void {
  const { hidden, ghosts, chosen, section, measuring, projection } = useViewState();
  useEffect(() => {
    if (viewer && model) viewer.load(model);
  }, [viewer, model]);
  useEffect(() => {
    if (viewer && model)
      viewer.setPartStates((id) => (hidden.has(id) ? 'hidden' : ghosts.has(id) ? 'ghost' : 'shown'));
  }, [viewer, model, hidden, ghosts]);
  useEffect(() => {
    if (viewer && model) viewer.selectParts(chosen);
  }, [viewer, model, chosen]);
  useEffect(() => {
    if (viewer && model) viewer.section(section);
  }, [viewer, model, section]);
  useEffect(() => {
    if (viewer && model) viewer.setMeasuring(measuring);
  }, [viewer, model, measuring]);
  useEffect(() => {
    if (viewer) viewer.projection = projection;
  }, [viewer, projection]);
}

/** Kind of every place by its id, from the survey's own lists. */
export function kindsOfPlaces(survey: SurveyResult): Map<string, PlaceKind> {
  const { standingLiquid, flatFaces, insideCorners, narrowGaps, hollows } = survey.measures;
  const { fasteners, handReach, toolReach, jetReach, openSky, overhead, clearances } = survey.measures;
  const lists: [PlaceKind, readonly { readonly id: string }[] | undefined][] = [
    ['liquid', standingLiquid?.places],
    ['flat', flatFaces?.places],
    ['corner', insideCorners?.places],
    ['gap', narrowGaps?.places],
    ['gap', narrowGaps?.joints],
    ['hollow', hollows?.closed],
    ['hollow', hollows?.blind],
    ['hollow', hollows?.deadLegs],
    ['hollow', hollows?.openMembers],
    ['fastener', fasteners?.heads],
    ['fastener', fasteners?.threads],
    ['reach', handReach?.openings],
    ['reach', handReach?.places],
    ['reach', toolReach?.openings],
    ['reach', toolReach?.places],
    ['reach', jetReach?.places],
    ['reach', clearances?.places],
    ['air', openSky?.places],
    ['air', overhead?.places],
  ];
  return new Map(lists.flatMap(([kind, places]) => (places ?? []).map((p) => [p.id, kind] as const)));
}

/** Hands the drawings of all places to the view, once they are here. */
export function usePlacesInView(
  viewer: Viewer | null,
  model: Model | undefined,
  survey: SurveyResult | undefined,
  drawings: Drawings | undefined,
): void {
  useEffect(() => {
    if (!viewer || !model || !survey || !drawings) return;
    const kinds = kindsOfPlaces(survey);
    const places: PlaceDrawing[] = Object.entries(drawings).map(([id, drawing]) => ({
      id,
      kind: kinds.get(id) ?? 'hollow',
      ...drawing,
    }));
    viewer.setPlaces(places);
  }, [viewer, model, survey, drawings]);
}

/** Colours parts by area class where that is asked for. */
export function usePartColors(
  viewer: Viewer | null,
  model: Model | undefined,
  parts: readonly PartData[],
): void {
  const { colorBy } = useViewState();
  useEffect(() => {
    if (!viewer || !model) return;
    const apply = () => {
      if (colorBy === 'model') return viewer.setPartColors(() => null);
      const { areas } = sheets[sheetNow()];
      const area = new Map(parts.map((p) => [p.partId, p.areaClass]));
      viewer.setPartColors((id) => areas[area.get(id) ?? 'nonFood']);
    };
    apply();
    return onSheetChange(apply);
  }, [viewer, model, parts, colorBy]);
}
