import type { Model, Shape } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, InsideCorner, SurveySettings } from '../result.ts';
import { nothingSealed, type Sealed } from '../sealed.ts';
import { step } from '../stopped.ts';
import { materialOf } from '../tree/material.ts';
import { boundsOf, middleOf } from '../weld/polyline.ts';
import { weldOf } from '../weld/weld.ts';
import type { ShapeCorner } from './corner.ts';
import { exposeLine } from './expose.ts';
import { filletsFromCad } from './fillets-cad.ts';
import { filletsFromTriangles } from './fillets-triangles.ts';
import { sharpFromCad } from './sharp-cad.ts';
import { sharpFromTriangles } from './sharp-triangles.ts';

/** Stands for the distance between true surface and triangles in files that do not say: common practice of exports. */
const assumedDeviation_mm = 0.1;
/** Shorter stretches than this are not listed: below any drawing's tolerance. */
const leastLength_mm = 0.2;

/**
 * Inside corners within one part, open to the air (mm, degrees): sharp concave edges, and fillets with a radius below
 * the limit, both only where the angle through the air is below the limit.
 *
 * Exact from CAD edges and faces where a shape has them, otherwise estimated from triangles; each place says which.
 * What lies in another part's material or before sealed air is not listed. Corners between two parts that touch
 * are listed as joints of the measure of narrow gaps, and not here again.
 */
export function measureInsideCorners(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  sealed: Sealed = nothingSealed,
): MeasureOutcome<'insideCorners'> {
  const material = materialOf(model);
  const { start } = material.tree;
  const field = new Float32Array(start[model.parts.length]).fill(Number.NaN);
  const deviation = model.deviation_mm > 0 ? model.deviation_mm : assumedDeviation_mm;
  const ofShape = new Map<number, ShapeCorner[]>();
  const found: { corner: Omit<InsideCorner, 'id'>; drawing: Drawing }[] = [];
  for (let p = 0; p < model.parts.length; p++) {
    step(control, 'inside corners', p / model.parts.length);
    const part = model.parts[p];
    const corners = ofShape.get(part.shape) ?? shapeCorners(model.shapes[part.shape], settings, deviation);
    ofShape.set(part.shape, corners);
    for (const corner of corners) {
      // The chords of a fillet's triangles stand before the true surface: go well beyond them.
      const lift = Math.max(0.05, 2 * settings.contact_mm, 0.2 * corner.radius_mm);
      const exposed = corner.lines.map((line) => exposeLine(material, part.placement, line, lift, sealed));
      const whole = exposed.reduce((sum, e) => sum + e.whole_mm, 0);
      const open = exposed.reduce((sum, e) => sum + e.length_mm, 0);
      const length_mm = whole > 0 ? (corner.length_mm * open) / whole : 0;
      if (length_mm < leastLength_mm) continue;
      const pieces = exposed.flatMap((e) => e.pieces);
      found.push({ corner: placed(part.id, corner, length_mm, pieces), drawing: drawn(pieces) });
      for (const t of corner.triangles) field[start[p] + t] = corner.radius_mm;
    }
  }
  return { ...listed(found), field, notes: notesOn(model) };
}

function shapeCorners(shape: Shape, settings: SurveySettings, deviation_mm: number): ShapeCorner[] {
  const weld = weldOf(shape);
  const { cornerAngleBelow_deg: angle, cornerRadiusBelow_mm: radius } = settings;
  if (shape.cad && shape.cad.edges.length > 0) {
    return [...sharpFromCad(weld, shape.cad, angle), ...filletsFromCad(weld, shape.cad, radius, angle)];
  }
  return [...sharpFromTriangles(weld, angle, deviation_mm), ...filletsFromTriangles(weld, radius, angle)];
}

function placed(
  part: string,
  { radius_mm, angle_deg, from, couldHideRadius_mm }: ShapeCorner,
  length_mm: number,
  pieces: readonly Float64Array[],
): Omit<InsideCorner, 'id'> {
  const estimated = from === 'triangles' && radius_mm > 0;
  return {
    parts: [part],
    at_mm: middleOf(pieces),
    bounds_mm: boundsOf(pieces),
    length_mm,
    radius_mm,
    angle_deg,
    from,
    ...(couldHideRadius_mm !== undefined && { couldHideRadius_mm }),
    ...(estimated && { caveats: ['The radius is estimated from triangles, within about 2 %.'] }),
  };
}

function drawn(pieces: readonly Float64Array[]): Drawing {
  return { lines: pieces.map((p) => Float32Array.from(p)) };
}

function listed(found: readonly { corner: Omit<InsideCorner, 'id'>; drawing: Drawing }[]) {
  const name = placeNamer('corner');
  const drawings = new Map<string, Drawing>();
  const places = found.map(({ corner, drawing }): InsideCorner => {
    const id = name(corner.parts, corner.at_mm);
    drawings.set(id, drawing);
    return { id, ...corner };
  });
  places.sort((a, b) => a.radius_mm - b.radius_mm || b.length_mm - a.length_mm || (a.id < b.id ? -1 : 1));
  const sharp_mm = places.reduce((sum, c) => sum + (c.radius_mm === 0 ? c.length_mm : 0), 0);
  return { measure: { sharp_mm, places }, drawings };
}

function notesOn(model: Model): string[] {
  const notes = [
    'Inside corners between two parts that touch are listed as joints under narrow gaps, not as inside corners.',
  ];
  const meshes = model.parts.filter((p) => !model.shapes[p.shape].cad?.edges.length).length;
  if (meshes > 0) {
    const from =
      model.deviation_mm > 0
        ? `${model.deviation_mm} mm, as the file says`
        : `${assumedDeviation_mm} mm, which is assumed because the file does not say`;
    notes.push(
      `Inside corners of ${meshes} parts without CAD faces are estimated from triangles; what radius a sharp edge could hide follows from a deviation of ${from}.`,
    );
  }
  return notes;
}
