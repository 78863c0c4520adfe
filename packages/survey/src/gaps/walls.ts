import type { Model } from '@coveline/model';
import { type Eye, gap, met } from './look.ts';
import { type Region, regionsOf } from './region.ts';
import { lookFromWall, type Views } from './views.ts';
import { meshWalls, type WallMarks, type WallMesh } from './wall-mesh.ts';

/** Triangles to look at closely, in model order. */
export interface Closer {
  readonly triangles: Iterable<number>;
  readonly marks: WallMarks;
  /** Wall meshes are cut to this edge length near borders between what is seen and what is not. */
  readonly edge_mm: number;
}

export interface Walls {
  readonly gaps: readonly Region[];
  readonly contacts: readonly Region[];
}

/** Meshes the walls of the given triangles and finds what of them faces a gap and what meets another part. */
export function findWalls(model: Model, eye: Eye, closer: Closer, step: () => void): Walls {
  const gaps: Region[] = [];
  const contacts: Region[] = [];
  for (const { mesh, views } of seenWalls(model, eye, closer, step)) {
    for (const region of regionsOf(eye, mesh, views, gap)) gaps.push(region);
    for (const region of regionsOf(eye, mesh, views, met)) {
      if (region.partner !== mesh.part) contacts.push(region);
    }
  }
  return { gaps, contacts };
}

/** As `findWalls`, for what faces a gap only. */
export function findGapWalls(model: Model, eye: Eye, closer: Closer, step: () => void): Region[] {
  const gaps: Region[] = [];
  for (const { mesh, views } of seenWalls(model, eye, closer, step)) {
    for (const region of regionsOf(eye, mesh, views, gap)) gaps.push(region);
  }
  return gaps;
}

function* seenWalls(
  model: Model,
  eye: Eye,
  closer: Closer,
  step: () => void,
): Generator<{ readonly mesh: WallMesh; readonly views: Views }> {
  const { tree } = eye.material;
  const chosen = new Map<number, number[]>();
  for (const t of closer.triangles) {
    const part = tree.part[tree.slotOf[t]];
    const list = chosen.get(part);
    if (list) list.push(t - tree.start[part]);
    else chosen.set(part, [t - tree.start[part]]);
  }
  for (const [part, triangles] of [...chosen].sort((a, b) => a[0] - b[0])) {
    step();
    const mesh = meshWalls(model, tree, part, triangles, closer.marks, closer.edge_mm);
    step();
    const views = lookFromWall(eye, mesh, step);
    step();
    yield { mesh, views };
  }
}
