import type { Drawings } from '@coveline/api';
import type { Vec3 } from '@coveline/model';
import type { Finding } from '@coveline/review';
import type { MeasureName } from '@coveline/survey';
import { type Pinned, sheets, type Viewer } from '@coveline/viewer';
import { useEffect } from 'react';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { go } from '../../routing/use-route.ts';
import { kindOf, kindOfMeasure } from '../../signs/kind.ts';
import { signElement } from '../../signs/sign-element.ts';
import { onParts, paintOf } from '../../stage/paint-of.ts';
import { setPainted } from '../../stage/painted.ts';
import { setView, useViewState, viewState } from '../../stage/view-state.ts';
import { announce } from '../../state/announce.ts';
import { sheetNow } from '../../state/preferences.ts';
import { useField } from '../../state/queries.ts';
import type { MachineData } from '../machine/machine-context.ts';
import { useFindingFilter } from './filter.ts';
import { shownFindings } from './shown-findings.ts';

/** Points of a place that are tried for a free line of sight. */
const sightPoints = 10;

/** Signs at the findings, the chosen one's place, its field on the surface, and the flight to it. */
export function useFindingsInView(viewer: Viewer | null, data: MachineData): void {
  const { route, findings, model, drawings, drawing } = data;
  const chosen = route.page === 'walk' ? findings.find((f) => f.id === route.item) : undefined;
  useSigns(viewer, data, chosen);
  usePaint(viewer, data, chosen);

  useEffect(() => {
    if (!viewer || !model || !chosen || drawing) return;
    setView({ chosen: chosen.parts, ghosts: new Set() });
    const inFront = viewer.fly(chosen.bounds_mm, pointsOf(chosen, drawings));
    if (inFront.length === 0) return;
    setView({ ghosts: new Set(inFront) });
    announce(m.view.hiddenBehind);
    // Left behind, the ghosts would puzzle at the next place.
    return () => {
      if (inFront.every((id) => viewState().ghosts.has(id))) setView({ ghosts: new Set() });
    };
  }, [viewer, model, chosen, drawings, drawing]);
}

/** Flies there once more, after the person has looked elsewhere. */
export function flyAgain(viewer: Viewer | null, finding: Finding, drawings: Drawings | undefined): void {
  viewer?.fly(finding.bounds_mm, pointsOf(finding, drawings));
}

function useSigns(viewer: Viewer | null, data: MachineData, chosen: Finding | undefined): void {
  const { route, survey, model } = data;
  const filter = useFindingFilter();
  useEffect(() => {
    if (!viewer || !model) return;
    const shown = route.page === 'walk' ? shownFindings(data, filter) : [];
    const ordered = chosen ? [chosen, ...shown.filter((f) => f !== chosen)] : shown;
    viewer.pin(
      'signs',
      ordered.map((f): Pinned => {
        const element = document.createElement('div');
        const sign = document.createElement('span');
        sign.className = `mark${f === chosen ? ' mark-chosen' : ''}${f.id in data.decisions ? ' mark-decided' : ''}`;
        sign.dataset.pin = f.id;
        sign.title = f.title;
        sign.append(signElement(kindOf(f)));
        sign.addEventListener('click', () => go({ ...route, item: f.id }));
        element.append(sign);
        return { id: f.id, at: f.at_mm, element, yields: true };
      }),
    );
    const places = new Set(chosen?.places ?? []);
    const listed = new Set(shown.flatMap((f) => f.places));
    viewer.showPlaces((id) => places.has(id) || listed.has(id), places);
    const pools = survey?.measures.standingLiquid?.places.filter((pool) => places.has(pool.id)) ?? [];
    viewer.pin(
      'spills',
      pools.slice(0, 3).map((pool) => tag(pool.id, pool.spill_mm, m.view.spills(show(pool.volume_mL, 'mL')))),
    );
  }, [viewer, model, survey, data, filter, chosen, route]);
}

function tag(id: string, at: Vec3, text: string): Pinned {
  const element = document.createElement('div');
  const words = document.createElement('span');
  words.className = 'view-tag';
  words.textContent = text;
  element.append(words);
  return { id: `tag ${id}`, at, element, yields: false };
}

function usePaint(viewer: Viewer | null, data: MachineData, chosen: Finding | undefined): void {
  const { paint } = useViewState();
  const wanted = (chosen?.measure ?? paint) as MeasureName | null;
  // Judged from parts alone, or not measured yet: then there is nothing to paint.
  const measure = wanted !== null && data.survey && wanted in data.survey.measures ? wanted : null;
  const field = useField(data.at, measure).data;
  useEffect(() => {
    if (!viewer || !data.model) return;
    if (!measure || !field) {
      setPainted(null);
      return viewer.paint(null);
    }
    const { kinds, steel } = sheets[sheetNow()];
    const full = kinds[kindOfMeasure(measure)];
    const half = full.map((c, k) => (c + steel[k]) / 2) as unknown as Vec3;
    const everywhere = paintOf(measure, field);
    const { values, scale } =
      chosen && everywhere.scale === null ? onParts(everywhere, data.model, chosen.parts) : everywhere;
    const { name, unit } = m.measures[measure];
    setPainted({ measure: name, unit, scale, pale: css(half), full: css(full) });
    const turned = scale !== null && scale.full < scale.pale;
    viewer.paint({
      values,
      scale: {
        low: scale ? Math.min(scale.pale, scale.full) : 0,
        high: scale ? Math.max(scale.pale, scale.full) : 1,
        stops: turned ? [full, half] : [half, full],
      },
    });
  }, [viewer, data.model, measure, field, chosen]);
}

const css = (color: Vec3) => `rgb(${color.map((c) => Math.round(c * 255)).join(' ')})`;

/** Points that stand for a finding: spread over the drawings of its places, or the one that the review names. */
function pointsOf(finding: Finding, drawings: Drawings | undefined): Vec3[] {
  const flat = finding.places.flatMap((id) => {
    const drawing = drawings?.[id];
    return [...(drawing?.triangles ? [drawing.triangles] : []), ...(drawing?.lines ?? [])];
  });
  const all: Vec3[] = [];
  for (const numbers of flat)
    for (let i = 0; i + 2 < numbers.length; i += 3) all.push([numbers[i], numbers[i + 1], numbers[i + 2]]);
  if (all.length === 0) return [finding.at_mm];
  const stride = Math.max(1, Math.floor(all.length / sightPoints));
  return all.filter((_, i) => i % stride === 0).slice(0, sightPoints);
}
