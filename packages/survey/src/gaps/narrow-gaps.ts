import type { Model } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, Joint, NarrowGap, SurveySettings } from '../result.ts';
import { nothingSealed, type Sealed } from '../sealed.ts';
import { step } from '../stopped.ts';
import { materialOf } from '../tree/material.ts';
import { weldOf } from '../weld/weld.ts';
import { describeGap, type FoundGap } from './gap-place.ts';
import { type FoundJoint, findJoints } from './joints.ts';
import { type Eye, newEye } from './look.ts';
import { isMarked, markTriangle, newMarks } from './marks.ts';
import { pairWalls, type WallPair } from './pair-walls.ts';
import { findSeeds } from './seeds.ts';
import { findGapWalls, findWalls } from './walls.ts';

/** Smaller walls than this are not listed: a crossing of two rods, noise of the triangles. */
const leastArea_mm2 = 1;
/** A gap is looked at again when its depth spans fewer edges of its wall meshes than this. */
const edgesDeep = 8;
/** Finest edges, and most triangles of a second look. */
const leastEdge_mm = 0.05;
const mostTriangles = 3000;
/** About as many triangles as all wall meshes of the first look may have, to keep within seconds. */
const mostWallTriangles = 600_000;

/**
 * Air between facing surfaces that are nearer than the limit, within one part and between parts, and joints where two
 * parts touch or run into each other (mm, cm2).
 *
 * From points of every surface one look goes out along the normal. What faces it within the limit is a wall of a gap;
 * walls are meshed finely there, and the border of the gap is found by halving. A border where the middle of the gap
 * runs on into the open is a mouth; depth is the way along the wall from there. Widths are taken between the true
 * CAD surfaces of cylinders and tori, and between triangles otherwise.
 */
export function measureNarrowGaps(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
  sealed: Sealed = nothingSealed,
): MeasureOutcome<'narrowGaps'> {
  const material = materialOf(model);
  const eye = newEye(model, material, settings);
  const seeds = findSeeds(model, eye, settings.gapSpacing_mm, control);
  const triangles: number[] = [];
  for (let t = 0; t < seeds.candidate.length; t++) if (seeds.candidate[t]) triangles.push(t);
  const edge_mm = edgeFor(model, eye, triangles, settings.gapSpacing_mm);
  const progress = (done: number) => () => step(control, 'narrow gaps', done);
  const first = { triangles, marks: seeds.marks, edge_mm };
  const { gaps, contacts } = findWalls(model, eye, first, progress(0.5));
  progress(0.8)();
  const joints = findJoints(model, eye, contacts, edge_mm, sealed);
  const found: FoundGap[] = [];
  for (const pair of pairWalls(gaps, edge_mm)) {
    if (areaOf(pair) < leastArea_mm2) continue;
    found.push(...lookAgain(model, eye, describeGap(model, eye, pair), edge_mm, progress(0.9)));
  }
  const field = new Float32Array(seeds.candidate.length).fill(Number.NaN);
  for (const { pair } of found) paint(field, pair);
  return { ...listed(found, joints), field, notes: notesOn(model, settings, edge_mm) };
}

/** Edge length of wall meshes: as asked, or so long that all walls together keep to a number of triangles. */
function edgeFor(
  model: Model,
  { material: { tree } }: Eye,
  triangles: readonly number[],
  asked_mm: number,
): number {
  let area = 0;
  for (const t of triangles) {
    const part = tree.part[tree.slotOf[t]];
    area += weldOf(model.shapes[model.parts[part].shape]).areas[t - tree.start[part]];
  }
  return Math.max(asked_mm, Math.sqrt((3 * area) / mostWallTriangles));
}

/** Walls of a shallow gap once more, on a mesh that suits its depth. */
function lookAgain(model: Model, eye: Eye, gap: FoundGap, edge_mm: number, progress: () => void): FoundGap[] {
  const area = gap.pair.walls.reduce((sum, w) => sum + w.area_mm2, 0);
  const wanted = Math.max(
    gap.place.depth_mm / edgesDeep,
    leastEdge_mm,
    Math.sqrt((2 * area) / mostTriangles),
  );
  const vertices = gap.pair.walls.reduce((sum, w) => sum + w.vertices.length, 0);
  const present = Math.min(edge_mm, Math.sqrt(area / vertices));
  if (gap.settled || wanted > 0.8 * present) return [gap];
  const marks = newMarks(2 * wanted);
  const triangles = new Set<number>();
  for (const { mesh, vertices, views, outlineTriangles } of gap.pair.walls) {
    const within = new Set(vertices);
    for (let i = 0; i < outlineTriangles.length; i += 9) markTriangle(marks, outlineTriangles, i);
    for (const v of vertices) if (views.triangle[v] >= 0) triangles.add(views.triangle[v]);
    for (let h = 0; h < mesh.triangles.length; h++) {
      if (within.has(mesh.triangles[h])) triangles.add(mesh.source[(h / 3) | 0]);
    }
  }
  // The whole gap is meshed finely now, not only its border.
  const closer = { triangles, marks: { seen: marks, unseen: marks }, edge_mm: wanted };
  const walls = findGapWalls(model, eye, closer, progress).filter(({ mesh, vertices }) =>
    vertices.every((v) =>
      isMarked(marks, mesh.xyz[3 * v], mesh.xyz[3 * v + 1], mesh.xyz[3 * v + 2], edge_mm),
    ),
  );
  const again = pairWalls(walls, wanted)
    .filter((pair) => areaOf(pair) >= leastArea_mm2)
    .map((pair) => describeGap(model, eye, pair));
  return again.length > 0 ? again : [gap];
}

function areaOf({ walls }: WallPair): number {
  return walls.reduce((sum, w) => sum + w.area_mm2, 0) / 2;
}

/** Narrowest width seen from each triangle. */
function paint(field: Float32Array, { walls }: WallPair): void {
  for (const { mesh, vertices, views } of walls) {
    const within = new Set(vertices);
    for (let h = 0; h < mesh.triangles.length; h++) {
      const v = mesh.triangles[h];
      if (!within.has(v)) continue;
      const t = mesh.source[(h / 3) | 0];
      if (!(field[t] <= views.width_mm[v])) field[t] = views.width_mm[v];
    }
  }
}

function listed(found: readonly FoundGap[], joints: readonly FoundJoint[]) {
  const drawings = new Map<string, Drawing>();
  const nameGap = placeNamer('gap');
  const places = found.map(({ pair, place }): NarrowGap => {
    const id = nameGap(place.parts, place.at_mm);
    drawings.set(id, { triangles: Float32Array.from(pair.walls.flatMap((w) => w.outlineTriangles)) });
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

function notesOn(model: Model, { gapSpacing_mm }: SurveySettings, edge_mm: number): string[] {
  const notes: string[] = [];
  if (edge_mm > gapSpacing_mm) {
    notes.push(
      `Narrow gaps: walls are meshed at ${edge_mm.toPrecision(2)} mm instead of ${gapSpacing_mm} mm, because so much of the surface is near other surfaces; gaps and joints smaller than that may be missed on large faces.`,
    );
  }
  if (model.deviation_mm === 0) return notes;
  notes.push(
    `Widths of narrow gaps are exact between planes and between CAD cylinders; beside free-form faces and cones they are off by up to ${2 * model.deviation_mm} mm.`,
  );
  return notes;
}
