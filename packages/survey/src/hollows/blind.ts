/**
 * Blind channels: round bores of the CAD model with one open end.
 *
 * From the middle of the axis one looks both ways. An end is closed where the way is barred: by the part itself within
 * the depth of a drill point behind the last cylinder, or by another part that lies against it. A bore that is filled
 * (a bolt in its hole) is left out, and so is one with two open or two closed ends.
 */
import { type Model, transformPoint, type Vec3 } from '@coveline/model';
import type { BlindChannel, SurveySettings } from '../result.ts';
import { partAt } from '../tree/inside.ts';
import { materialOf } from '../tree/material.ts';
import { firstHit, newHit } from '../tree/ray.ts';
import type { Tree } from '../tree/tree.ts';
import { across } from './across.ts';
import { type Bore, boresOf } from './bores.ts';

export interface FoundChannel {
  readonly channel: Omit<BlindChannel, 'id'>;
  /** Triangles of its wall, in model order. */
  readonly triangles: readonly number[];
}

/** A drill point of 90 degrees, the bluntest end that one bores with, is as deep as the radius. */
const drillPoint = 1;
/** One looks along a line beside the axis, for meshes have a vertex at the middle of a bore's end: share of the radius. */
const offAxis = [0.0031, 0.0047, 0.0059] as const;
/** What is wider is a vessel, not a channel (common practice: a hand gets in). */
const widestMouth_mm = 60;

export function blindChannels(model: Model, settings: SurveySettings): FoundChannel[] {
  if (!model.shapes.some(({ cad }) => cad)) return [];
  const material = materialOf(model);
  const bores = model.shapes.map(boresOf);
  const hit = newHit();
  const found: FoundChannel[] = [];
  for (let p = 0; p < model.parts.length; p++) {
    const { shape, placement } = model.parts[p];
    for (const bore of bores[shape]) {
      const at = (s: number): Vec3 =>
        transformPoint(placement, [
          bore.origin[0] + s * bore.direction[0],
          bore.origin[1] + s * bore.direction[1],
          bore.origin[2] + s * bore.direction[2],
        ]);
      const middle = (bore.from + bore.to) / 2;
      const start = at(middle);
      if (partAt(material, ...start) >= 0) continue;
      const ahead = at(middle + 1);
      const [dx, dy, dz] = [ahead[0] - start[0], ahead[1] - start[1], ahead[2] - start[2]];
      /** Distance along the axis to what closes the end, and the part that does; undefined where it is open. */
      const closure = (sense: 1 | -1): { along: number; part: number } | undefined => {
        const end = sense > 0 ? bore.to - middle : middle - bore.from;
        const radius = sense > 0 ? bore.radiusTo : bore.radiusFrom;
        const along = offAxis[0] * dx + offAxis[1] * dy + offAxis[2] * dz;
        const [x, y, z] = [dx, dy, dz].map((d, k) => start[k] + (offAxis[k] - along * d) * bore.radiusFrom);
        if (!firstHit(material.tree, x, y, z, sense * dx, sense * dy, sense * dz, Infinity, hit))
          return undefined;
        const reach = hit.part === p ? drillPoint * radius : settings.contact_mm;
        return hit.t <= end + reach + settings.contact_mm ? { along: hit.t, part: hit.part } : undefined;
      };
      const up = closure(1);
      const down = closure(-1);
      if ((up === undefined) === (down === undefined)) continue;
      const end = up ?? down;
      if (!end) continue;
      const sense = up ? 1 : -1;
      const axis: Vec3 = [dx, dy, dz];
      if (opensSideways(material.tree, start, axis, sense * end.along, up ? bore.radiusTo : bore.radiusFrom))
        continue;
      const radius = up ? bore.radiusFrom : bore.radiusTo;
      const depth_mm = end.along + (up ? middle - bore.from : bore.to - middle);
      const mouth_mm = 2 * radius;
      if (mouth_mm > widestMouth_mm || depth_mm / mouth_mm < settings.leastBlindRatio) continue;
      const mouth = at(up ? bore.from : bore.to);
      const bottom = at(up ? middle + end.along : middle - end.along);
      found.push({
        channel: {
          parts: [...new Set([model.parts[p].id, model.parts[end.part].id])].sort(),
          at_mm: mouth,
          bounds_mm: boundsAround(mouth, bottom, [dx, dy, dz], Math.max(bore.radiusFrom, bore.radiusTo)),
          depth_mm,
          mouth_mm,
          ratio: depth_mm / mouth_mm,
          from: 'cad',
        },
        triangles: trianglesOf(model, p, material.tree.start[p], bore),
      });
    }
  }
  return found;
}

/** Distances from the bottom, as shares of the radius, at which one looks around for a way out to the side. */
const stations = [0.15, 0.6, 1.1];
const looks = 16;
/** A wall farther away than this many radii is not that of the bore. */
const ownWall = 1.6;

/** Whether a bore that is barred ahead opens to the side near its bottom, as the branch of a tee does. */
function opensSideways(tree: Tree, start: Vec3, axis: Vec3, along: number, radius: number): boolean {
  const [e1, e2] = across(axis);
  const hit = newHit();
  for (const station of stations) {
    const s = along - Math.sign(along) * station * radius;
    for (let k = 0; k < looks; k++) {
      const c = Math.cos((2 * Math.PI * (k + 0.37)) / looks);
      const d = Math.sin((2 * Math.PI * (k + 0.37)) / looks);
      const [x, y, z] = e1.map((e, i) => c * e + d * e2[i]);
      const from = start.map((o, i) => o + s * axis[i]);
      if (!firstHit(tree, from[0], from[1], from[2], x, y, z, ownWall * radius, hit)) return true;
    }
  }
  return false;
}

function trianglesOf(model: Model, part: number, start: number, { faces }: Bore): number[] {
  const { cad } = model.shapes[model.parts[part].shape];
  const own = new Set(faces);
  const found: number[] = [];
  cad?.faceOfTriangle.forEach((face, t) => {
    if (own.has(face)) found.push(start + t);
  });
  return found;
}

/** Bounds of a cylinder between two points on its axis (unit direction). */
function boundsAround(a: Vec3, b: Vec3, direction: Vec3, radius: number): [Vec3, Vec3] {
  const out = direction.map((d) => radius * Math.sqrt(Math.max(0, 1 - d * d)));
  const low = a.map((c, k) => Math.min(c, b[k]) - out[k]);
  const high = a.map((c, k) => Math.max(c, b[k]) + out[k]);
  return [low as unknown as Vec3, high as unknown as Vec3];
}
