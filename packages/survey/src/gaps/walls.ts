import type { Model, Vec3 } from '@coveline/model';
import type { Sealed } from '../sealed.ts';
import { boundsOf } from '../weld/polyline.ts';
import { lengthOf, newWays, reachOf, type Ways } from './depth.ts';
import type { Facing } from './facing.ts';
import { isOpen } from './is-open.ts';
import { type Eye, gap, met } from './look.ts';
import { type Region, regionsOf, type Segment } from './region.ts';
import { seenStretches } from './stretches.ts';
import { lookFromWall } from './views.ts';
import { meshWalls } from './wall-mesh.ts';

/** A wall of a gap, as much of it as is told of: its mesh is not kept. */
export interface Wall {
  readonly part: number;
  /** Parts that it faces. */
  readonly facing: readonly number[];
  readonly area_mm2: number;
  readonly width_mm: number;
  readonly widest_mm: number;
  readonly mouth_mm: number;
  /** Infinity where there is no mouth. */
  readonly depth_mm: number;
  readonly bounds_mm: readonly [Vec3, Vec3];
  /** The wall cut out of its part, xyz per corner, mm. */
  readonly outline: Float64Array;
  /** Points across the air from some of the wall, xyz each. */
  readonly looks: Float64Array;
  /** Triangle across, per look. */
  readonly lookTriangle: Int32Array;
  /** Points half-way across the gap, xyz each. */
  readonly middles: Float64Array;
  /** Triangles of the model in the wall, each once, and the narrowest width seen from it. */
  readonly triangles: Uint32Array;
  readonly widths: Float32Array;
}

/** One side of a contact between two parts. */
export interface Contact {
  readonly part: number;
  readonly partner: number;
  readonly area_mm2: number;
  /** The pieces of its border beside which there is air. */
  readonly segments: readonly Segment[];
  /** Round surfaces touch in a line, which has a border on either side: half of that is its length. */
  readonly isLine: boolean;
}

export interface Walls {
  readonly gaps: readonly Wall[];
  readonly contacts: readonly Contact[];
}

/** So many points of a wall look for the wall across, at most. */
const mostLooks = 48;
const mostMiddles = 256;

/** Meshes the surfaces that others face, part by part, and finds what of them is a wall of a gap and what touches. */
export function findWalls(
  model: Model,
  eye: Eye,
  { candidate, borders, surface }: Facing,
  edge_mm: number,
  sealed: Sealed,
  step: (done: number) => void,
): Walls {
  const { tree } = eye.material;
  const gaps: Wall[] = [];
  const contacts: Contact[] = [];
  for (let part = 0; part < model.parts.length; part++) {
    const go = () => step(part / model.parts.length);
    const chosen: number[] = [];
    for (let t = tree.start[part]; t < tree.start[part + 1]; t++) {
      if (candidate[t] === 1) chosen.push(t - tree.start[part]);
    }
    if (chosen.length === 0) continue;
    go();
    const lines = seenStretches(eye, part, candidate, borders[part], surface.normals, go);
    const mesh = meshWalls(model, tree, part, chosen, lines, go);
    const views = lookFromWall(eye, mesh, go);
    const ways = newWays(mesh);
    for (const region of regionsOf(eye, mesh, views, gap, edge_mm, go)) {
      if (region.area_mm2 > 0) gaps.push(wallOf(eye, region, ways, go));
    }
    for (const region of regionsOf(eye, mesh, views, met, edge_mm, go)) {
      if (region.partner === part) continue;
      const { partner, area_mm2 } = region;
      const segments = region.segments.filter((s) => isOpen(eye, s, sealed));
      contacts.push({ part, partner, area_mm2, segments, isLine: isLine(segments, area_mm2) });
    }
  }
  return { gaps, contacts };
}

/** Broader contacts than this have two borders of their own, mm. */
const broadLine_mm = 1;

/** Whether a contact is a narrow strip with gaps on both sides. */
function isLine(segments: readonly Segment[], area_mm2: number): boolean {
  let length = 0;
  let besideGap = 0;
  for (const s of segments) {
    length += lengthOf(s);
    if (s.besideGap) besideGap += lengthOf(s);
  }
  return besideGap > 0.9 * length && 2 * area_mm2 < broadLine_mm * length;
}

function wallOf(eye: Eye, region: Region, ways: Ways, step: () => void): Wall {
  const { mesh, views, vertices } = region;
  const { mouth_mm, depth_mm } = reachOf(eye, region, ways, step);
  const facing = new Set<number>();
  const widthOf = new Map<number, number>();
  for (const v of vertices) {
    const width = views.width_mm[v];
    facing.add(views.part[v]);
    for (let j = ways.first[v]; j < ways.first[v + 1]; j++) {
      const t = mesh.source[ways.around[j]];
      const known = widthOf.get(t);
      if (known === undefined || width < known) widthOf.set(t, width);
    }
  }
  const triangles = [...widthOf.keys()].sort((a, b) => a - b);
  return {
    part: mesh.part,
    facing: [...facing],
    area_mm2: region.area_mm2,
    width_mm: region.width_mm,
    widest_mm: region.widest_mm,
    mouth_mm,
    depth_mm,
    bounds_mm: boundsOf([region.outlineTriangles]),
    outline: Float64Array.from(region.outlineTriangles),
    ...looksFrom(region),
    middles: middlesOf(region),
    triangles: Uint32Array.from(triangles),
    widths: Float32Array.from(triangles, (t) => widthOf.get(t)!),
  };
}

/** Some of the vertices, evenly by their number, at most so many. */
function* someOf(vertices: readonly number[], most: number): Generator<number> {
  const stride = Math.max(1, Math.floor(vertices.length / most));
  for (let i = 0; i < vertices.length; i += stride) yield vertices[i];
}

function looksFrom({ mesh: { normals }, views, vertices }: Region) {
  const looks: number[] = [];
  const triangle: number[] = [];
  for (const v of someOf(vertices, mostLooks)) {
    for (let k = 0; k < 3; k++) looks.push(views.from[3 * v + k] + normals[3 * v + k] * views.width_mm[v]);
    triangle.push(views.triangle[v]);
  }
  return { looks: Float64Array.from(looks), lookTriangle: Int32Array.from(triangle) };
}

function middlesOf({ mesh: { xyz, normals }, views, vertices }: Region): Float64Array {
  const out: number[] = [];
  for (const v of someOf(vertices, mostMiddles)) {
    for (let k = 0; k < 3; k++) out.push(xyz[3 * v + k] + (normals[3 * v + k] * views.width_mm[v]) / 2);
  }
  return Float64Array.from(out);
}
