import type { Model } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, FlatFace, SurveySettings } from '../result.ts';
import { nothingSealed, type Sealed } from '../sealed.ts';
import { step } from '../stopped.ts';
import { boxesMeet, growByTriangle, partBoxes } from '../tree/boxes.ts';
import type { Material } from '../tree/inside.ts';
import { materialOf } from '../tree/material.ts';
import { weldOf } from '../weld/weld.ts';
import { flatRadius_mm, type Level, levelTriangles } from './level.ts';
import { openShare } from './open-share.ts';
import { levelPatches } from './patches.ts';

/** A face of the placed model that lies nearly level, before it is judged by size. */
interface Found {
  readonly face: Omit<FlatFace, 'id'>;
  readonly triangles: Uint32Array;
  readonly part: number;
}

/**
 * Faces that lie nearly level and open to the air (lengths mm, areas cm2, angles degrees; +Z up).
 *
 * A face is a set of connected triangles with a slope below the limit that turn by less than one degree from one to
 * the next. Planes, flat cones and curved faces of large radius count; the crest of a round tube does not. The slope
 * is exact for CAD planes, and that of the triangles otherwise. What lies under another part, in its material, or
 * before air that is sealed off is not open: see `openShare`. `sealed`: knows the closed hollows of several parts.
 */
export function measureFlatFaces(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  sealed: Sealed = nothingSealed,
): MeasureOutcome<'flatFaces'> {
  const material = materialOf(model);
  const { start } = material.tree;
  const boxes = partBoxes(material.tree);
  const field = new Float32Array(start[model.parts.length]).fill(Number.NaN);
  const found: Found[] = [];
  const left = { small_mm2: 0, small: 0, crest_mm2: 0 };
  for (let p = 0; p < model.parts.length; p++) {
    step(control, 'flat faces', p / model.parts.length);
    const shape = model.shapes[model.parts[p].shape];
    const weld = weldOf(shape);
    const level = levelTriangles(shape, model.parts[p], settings.flatBelow_deg);
    left.crest_mm2 += level.crest_mm2;
    for (const triangles of levelPatches(weld, level.slopes)) {
      const one = judge(model, material, boxes, p, triangles, level, settings, sealed);
      if (one.face.area_cm2 >= settings.leastFlat_cm2) {
        found.push(one);
        for (const t of triangles) field[start[p] + t] = level.up[t] ? level.slopes[t] : -level.slopes[t];
      } else if (one.face.area_cm2 > 0) {
        left.small++;
        left.small_mm2 += one.face.area_cm2 * 100;
      }
    }
  }
  return {
    measure: listed(found),
    field,
    drawings: new Map<string, Drawing>(),
    notes: notesOn(left, settings),
  };
}

function judge(
  model: Model,
  material: Material,
  boxes: Float64Array,
  part: number,
  triangles: Uint32Array,
  level: Level,
  { contact_mm }: SurveySettings,
  sealed: Sealed,
): Found {
  const { tree } = material;
  const { areas } = weldOf(model.shapes[model.parts[part].shape]);
  const bounds = new Float64Array([Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity]);
  let area = 0;
  let tilted = 0;
  for (const t of triangles) {
    area += areas[t];
    tilted += areas[t] * level.slopes[t];
    growByTriangle(bounds, 0, tree.corners, tree.slotOf[tree.start[part] + t]);
  }
  let alone = true;
  for (let o = 0; o < model.parts.length && alone; o++) {
    alone = o === part || !boxesMeet(bounds, 0, boxes, o * 6, 2 * contact_mm);
  }
  const { share, at_mm, points } = openShare(
    material,
    part,
    triangles,
    areas,
    area,
    contact_mm,
    alone,
    sealed,
  );
  return {
    face: {
      parts: [model.parts[part].id],
      at_mm,
      bounds_mm: [
        [bounds[0], bounds[1], bounds[2]],
        [bounds[3], bounds[4], bounds[5]],
      ],
      facing: level.up[triangles[0]] ? 'up' : 'down',
      area_cm2: (area * share) / 100,
      slope_deg: tilted / area,
      ...(share < 1 && {
        caveats: [
          `${((1 - share) * 100).toFixed(1)} % of this face is covered by other parts or lies in a closed hollow, and is not counted, by ${points} points.`,
        ],
      }),
    },
    triangles,
    part,
  };
}

function listed(found: readonly Found[]): MeasureOutcome<'flatFaces'>['measure'] {
  const name = placeNamer('flat');
  const places = found.map(({ face }): FlatFace => ({ id: name(face.parts, face.at_mm), ...face }));
  places.sort((a, b) => b.area_cm2 - a.area_cm2 || (a.id < b.id ? -1 : 1));
  const total = (facing: 'up' | 'down') =>
    places.reduce((sum, place) => sum + (place.facing === facing ? place.area_cm2 : 0), 0);
  return { up_cm2: total('up'), down_cm2: total('down'), places };
}

function notesOn(
  left: { small_mm2: number; small: number; crest_mm2: number },
  { leastFlat_cm2, flatBelow_deg }: SurveySettings,
): string[] {
  const notes: string[] = [];
  if (left.small > 0) {
    notes.push(
      `Flat faces: ${left.small} smaller than ${leastFlat_cm2} cm2, ${(left.small_mm2 / 100).toFixed(1)} cm2 together, are not listed.`,
    );
  }
  if (left.crest_mm2 > 0) {
    notes.push(
      `Flat faces: ${(left.crest_mm2 / 100).toFixed(1)} cm2 within ${flatBelow_deg} degrees of level on faces curved to less than ${flatRadius_mm} mm are not counted, because drops run off their sides.`,
    );
  }
  return notes;
}
