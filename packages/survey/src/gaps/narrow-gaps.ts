import type { Model } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, Joint, NarrowGap, SurveySettings } from '../result.ts';
import { nothingSealed, type Sealed } from '../sealed.ts';
import { step } from '../stopped.ts';
import { partAt } from '../tree/inside.ts';
import { materialOf } from '../tree/material.ts';
import { findFacing } from './facing.ts';
import { describeGap } from './gap-place.ts';
import { type FoundJoint, findJoints } from './joints.ts';
import { type Eye, newEye } from './look.ts';
import { pairWalls, type WallPair } from './pair-walls.ts';
import { trueCrossings } from './true-crossings.ts';
import { findWalls } from './walls.ts';

/** Smaller walls than this are not listed: a crossing of two rods, noise of the triangles. */
const leastArea_mm2 = 1;

/**
 * Air between facing surfaces that are nearer than the limit, within one part and between parts, and joints where two
 * parts touch or run into each other (mm, cm2).
 *
 * First all pairs of triangles that face each other within the limit are found, and the lines at which that begins and
 * ends; what faces nothing costs no more than that. The surfaces that remain are meshed, finely along those lines, and
 * from every vertex one look goes out along the normal; the border of a gap is then found by halving. A border where
 * the middle of the gap runs on into the open is a mouth; depth is the way along the wall from there. Widths are taken
 * between the true CAD surfaces of cylinders and tori, and between triangles otherwise. Where parts run into each
 * other the joint is the line in which their triangles cross.
 */
export function measureNarrowGaps(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  sealed: Sealed = nothingSealed,
): MeasureOutcome<'narrowGaps'> {
  const go = (from: number, to: number) => (done: number) =>
    step(control, 'narrow gaps', from + done * (to - from));
  const eye = newEye(model, materialOf(model), settings);
  const edge_mm = settings.gapSpacing_mm;
  const facing = findFacing(model, eye, edge_mm, go(0, 0.4));
  markSunken(model, eye, () => go(0.4, 0.4)(0));
  const { gaps, contacts } = findWalls(model, eye, facing, edge_mm, sealed, go(0.4, 0.8));
  const ending = () => go(0.8, 0.9)(0);
  const crossed = trueCrossings(eye, facing, sealed, ending);
  const joints = findJoints(model, eye, contacts, crossed, edge_mm, sealed, ending);
  const found = pairWalls(gaps, () => go(0.9, 1)(0)).filter(
    ({ walls }) => walls.reduce((sum, w) => sum + w.area_mm2, 0) / 2 >= leastArea_mm2,
  );
  const field = new Float32Array(facing.candidate.length).fill(Number.NaN);
  for (const { walls } of found) {
    for (const { triangles, widths } of walls) {
      for (const [i, t] of triangles.entries()) if (!(field[t] <= widths[i])) field[t] = widths[i];
    }
  }
  return { ...listed(model, found, joints), field, notes: notesOn(model) };
}

/** Parts that no triangle of another one crosses may still lie in its material as a whole: by their first corner. */
function markSunken({ parts }: Model, { material, sunken }: Eye, step: () => void): void {
  const { corners, slotOf, start } = material.tree;
  for (let p = 0; p < parts.length; p++) {
    if (sunken[p] === 1 || start[p] === start[p + 1]) continue;
    step();
    const i = slotOf[start[p]] * 9;
    const holder = partAt(material, corners[i], corners[i + 1], corners[i + 2]);
    if (holder >= 0 && holder !== p) sunken[p] = 1;
  }
}

function listed(model: Model, found: readonly WallPair[], joints: readonly FoundJoint[]) {
  const drawings = new Map<string, Drawing>();
  const nameGap = placeNamer('gap');
  const places = found.map((pair): NarrowGap => {
    const place = describeGap(model, pair);
    const id = nameGap(place.parts, place.at_mm);
    const triangles = new Float32Array(pair.walls.reduce((sum, { outline }) => sum + outline.length, 0));
    let at = 0;
    for (const { outline } of pair.walls) {
      triangles.set(outline, at);
      at += outline.length;
    }
    drawings.set(id, { triangles });
    return { id, ...place };
  });
  const nameJoint = placeNamer('joint');
  const lines = joints.map(({ place, drawing }): Joint => {
    const id = nameJoint(place.parts, place.at_mm);
    drawings.set(id, drawing);
    return { id, ...place };
  });
  places.sort((a, b) => b.area_cm2 - a.area_cm2 || (a.id < b.id ? -1 : 1));
  lines.sort((a, b) => b.length_mm - a.length_mm || (a.id < b.id ? -1 : 1));
  return { measure: { places, joints: lines }, drawings };
}

function notesOn(model: Model): string[] {
  if (model.deviation_mm === 0) return [];
  return [
    `Widths of narrow gaps are exact between planes and between CAD cylinders; beside free-form faces and cones they are off by up to ${2 * model.deviation_mm} mm.`,
  ];
}
