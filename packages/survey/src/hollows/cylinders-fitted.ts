/**
 * Round bores of a shape that has triangles only: cylinders fitted to its hollow walls.
 *
 * From a triangle whose surface closes in towards the air a patch is grown; its normals give an axis and its vertices a
 * circle. Then every triangle that hangs together with it, looks at the axis and has its corners on the cylinder
 * belongs to it. The vertices of a tessellated bore lie on the true cylinder, so few segments do no harm.
 */
import type { Shape, Vec3 } from '@coveline/model';
import { fitCylinder } from '../corners/fit-cylinder.ts';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { edgeLength, turnAt } from '../weld/turn.ts';
import { type Weld, weldOf } from '../weld/weld.ts';
import { across } from './across.ts';
import { cover, isRound, sectors } from './cover.ts';
import { dot, minus } from './vector.ts';

/** A fitted cylinder in the frame of its shape; it runs from `from` to `to` along its direction, mm from the origin. */
export interface FittedBore {
  readonly radius: number;
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly from: number;
  readonly to: number;
  /** In shape order. */
  readonly triangles: readonly number[];
}

/** Turn between two triangles of one wall: a bore has eight segments at least; noise may turn it the other way. */
const mostTurn = (50 * Math.PI) / 180;
const noiseTurn = (8 * Math.PI) / 180;
const leastTurn = (0.2 * Math.PI) / 180;
/** Triangles of a patch: few keep clear of the bend behind a straight bore, many even out noise. */
const patchSizes = [10, 40, 400] as const;
/** Of the radius: how far the vertices may lie off. Chords of 24 segments, cut by another wall, lie 0.9 % inside. */
const worstSpread = 0.02;
const leastTolerance = 0.012;
/** Sine of the angle between a wall's normal and the plane across the axis; a drill point has 0.5 and more. */
const mostLean = 0.25;
const fits = 3;
/** A bend is a row of short straight rings in triangles: what runs on smoothly at its border and is shorter is one. */
const shortest = 2;
const mostSmooth = 0.25;
const smoothTurn = (20 * Math.PI) / 180;
/** Triangles between two looks at the signal. */
const watch = 20_000;

export function fittedBores(shape: Shape, control: Control = {}): FittedBore[] {
  const weld = weldOf(shape);
  const n = weld.triangles.length / 3;
  const tried = new Uint8Array(n);
  const region = newRegion(weld);
  const found: FittedBore[] = [];
  for (let t = 0; t < n; t++) {
    if (t % watch === 0) step(control, 'bores', t / n);
    if (tried[t] || !closesIn(weld, t)) continue;
    let wall: Wall | undefined;
    for (const size of patchSizes) {
      const patch = grow(region, t, size, (h) => isSmooth(weld, h));
      if (size === patchSizes[0]) for (const o of patch) tried[o] = 1;
      const seen = wallAround(region, t, patch);
      if (!seen || (wall && !seen.isBore && seen.triangles.length <= wall.triangles.length)) continue;
      wall = seen;
      if (wall.isBore) break;
    }
    if (!wall) continue;
    for (const o of wall.triangles) tried[o] = 1;
    if (wall.isBore) found.push(wall);
  }
  return found;
}

/** Whether the surface bends towards the air at one of the triangle's edges. */
function closesIn(weld: Weld, t: number): boolean {
  for (let h = 3 * t; h < 3 * t + 3; h++) {
    if (weld.twin[h] < 0) continue;
    const turn = turnAt(weld, h, weld.normals);
    if (turn < -leastTurn && turn > -mostTurn) return true;
  }
  return false;
}

function isSmooth(weld: Weld, h: number): boolean {
  const turn = turnAt(weld, h, weld.normals);
  return turn <= noiseTurn && turn >= -mostTurn;
}

/** Room for growing regions one after the other. */
interface Region {
  readonly weld: Weld;
  /** Per triangle: the last region that it was in. */
  readonly round: Uint32Array;
  rounds: number;
}

function newRegion(weld: Weld): Region {
  return { weld, round: new Uint32Array(weld.triangles.length / 3), rounds: 0 };
}

/** At most `size` triangles that hang together with a first one over half-edges that `passes` lets through, nearest first. */
function grow(region: Region, first: number, size: number, passes: (h: number) => boolean): number[] {
  const { twin } = region.weld;
  const round = ++region.rounds;
  const list = [first];
  region.round[first] = round;
  for (let i = 0; i < list.length; i++) {
    for (let h = 3 * list[i]; h < 3 * list[i] + 3 && list.length < size; h++) {
      const o = (twin[h] / 3) | 0;
      if (twin[h] < 0 || region.round[o] === round || !passes(h)) continue;
      region.round[o] = round;
      list.push(o);
    }
  }
  return list;
}

interface Wall extends FittedBore {
  /** It goes all the way round, and is no ring of a bend. */
  readonly isBore: boolean;
}

/** All triangles on the cylinder that a patch lies on; undefined where it lies on none. */
function wallAround(region: Region, first: number, patch: readonly number[]): Wall | undefined {
  const { weld } = region;
  let fit = cylinderOf(weld, patch);
  let triangles: number[] = [];
  for (let k = 0; k < fits && fit; k++) {
    const { origin, axis, radius_mm, spread_mm } = fit;
    const tolerance = Math.max(4 * spread_mm, leastTolerance * radius_mm);
    triangles = grow(region, first, Infinity, (h) =>
      liesOn(weld, (weld.twin[h] / 3) | 0, origin, axis, radius_mm, tolerance),
    );
    fit = cylinderOf(weld, triangles);
  }
  if (!fit) return undefined;
  const { origin, axis: direction, radius_mm: radius } = fit;
  const extent = roundExtent(weld, triangles, origin, direction);
  if (!extent) return { origin, direction, radius, from: 0, to: 0, triangles, isBore: false };
  const isRing = extent.to - extent.from < shortest * radius && runsOn(region, triangles) > mostSmooth;
  return { origin, direction, radius, ...extent, triangles, isBore: !isRing };
}

/**
 * Of the border of the last wall that was grown: the share over which the surface runs on smoothly into a bend, which
 * turns inwards on one side and outwards on the other. The round edge of a mouth turns outwards all around.
 */
function runsOn({ weld, round, rounds }: Region, triangles: readonly number[]): number {
  let inwards = 0;
  let outwards = 0;
  let border = 0;
  for (const t of triangles) {
    for (let h = 3 * t; h < 3 * t + 3; h++) {
      if (weld.twin[h] < 0 || round[(weld.twin[h] / 3) | 0] === rounds) continue;
      const length = edgeLength(weld, h);
      const turn = turnAt(weld, h, weld.normals);
      border += length;
      if (Math.abs(turn) > smoothTurn) continue;
      if (turn < 0) inwards += length;
      else outwards += length;
    }
  }
  return border > 0 ? (2 * Math.min(inwards, outwards)) / border : 0;
}

/** The cylinder that the triangles lie on from the inside; undefined where they lie on none. */
function cylinderOf(weld: Weld, triangles: readonly number[]) {
  if (triangles.length < 4) return undefined;
  const fit = fitCylinder(weld, triangles);
  if (!fit || fit.spread_mm > worstSpread * fit.radius_mm) return undefined;
  const { normals, areas, positions: p, triangles: corners } = weld;
  let area = 0;
  let lean = 0;
  let inward = 0;
  for (const t of triangles) {
    const normal: Vec3 = [normals[t * 3], normals[t * 3 + 1], normals[t * 3 + 2]];
    const v = corners[t * 3] * 3;
    area += areas[t];
    lean += areas[t] * dot(normal, fit.axis) ** 2;
    inward -= areas[t] * Math.sign(dot(normal, offAxis(p, v, fit.origin, fit.axis)));
  }
  return lean < (mostLean / 2) ** 2 * area && inward > 0.8 * area ? fit : undefined;
}

/** From the axis to a vertex, square to the axis. */
function offAxis(p: Float64Array, v: number, origin: Vec3, axis: Vec3): Vec3 {
  const d = minus([p[v], p[v + 1], p[v + 2]], origin);
  const s = dot(d, axis);
  return [d[0] - s * axis[0], d[1] - s * axis[1], d[2] - s * axis[2]];
}

function liesOn(
  { normals, positions: p, triangles }: Weld,
  t: number,
  origin: Vec3,
  axis: Vec3,
  radius: number,
  tolerance: number,
): boolean {
  const normal: Vec3 = [normals[t * 3], normals[t * 3 + 1], normals[t * 3 + 2]];
  if (Math.abs(dot(normal, axis)) > mostLean) return false;
  for (let k = 0; k < 3; k++) {
    const d = offAxis(p, triangles[t * 3 + k] * 3, origin, axis);
    if (Math.abs(Math.hypot(...d) - radius) > tolerance || dot(d, normal) > 0) return false;
  }
  return true;
}

const slices = 60;

/** From where to where a wall goes all the way round, mm along the axis; undefined where it does so nowhere. */
function roundExtent(
  { positions: p, triangles: corners }: Weld,
  wall: readonly number[],
  origin: Vec3,
  direction: Vec3,
): { from: number; to: number } | undefined {
  const [e1, e2] = across(direction);
  const spans = wall.map((t) => {
    const own = [0, 1, 2].map((k) => {
      const v = corners[t * 3 + k] * 3;
      const d = minus([p[v], p[v + 1], p[v + 2]], origin);
      return { s: dot(d, direction), angle: Math.atan2(dot(d, e2), dot(d, e1)) };
    });
    return {
      from: Math.min(own[0].s, own[1].s, own[2].s),
      to: Math.max(own[0].s, own[1].s, own[2].s),
      angles: own.map(({ angle }) => angle),
    };
  });
  const from = spans.reduce((least, span) => Math.min(least, span.from), Infinity);
  const to = spans.reduce((most, span) => Math.max(most, span.to), -Infinity);
  const high = (to - from) / slices;
  if (!(high > 0)) return undefined;
  const covered = Array.from({ length: slices }, () => new Uint8Array(sectors));
  for (const span of spans) {
    const last = Math.min(slices - 1, Math.ceil((span.to - from) / high) - 1);
    for (let k = Math.floor((span.from - from) / high); k <= last; k++) cover(covered[k], span.angles);
  }
  const round = covered.map(isRound);
  const first = round.indexOf(true);
  if (first < 0) return undefined;
  return { from: from + first * high, to: from + (round.lastIndexOf(true) + 1) * high };
}
