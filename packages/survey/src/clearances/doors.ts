/** How far a door opens before it strikes something. */
import type { Model, Vec3 } from '@coveline/model';
import type { Control } from '../result.ts';
import type { Door, Site } from '../site.ts';
import { dot, minus, unit } from '../sky/vector.ts';
import { step } from '../stopped.ts';
import { partBoxes } from '../tree/boxes.ts';
import type { Material } from '../tree/inside.ts';
import { materialOf } from '../tree/material.ts';
import { type Axis, firstStrike, meetsPlane, pointAt, pressedInto, wayOf } from './arc.ts';
import { edgePoints } from './edge-points.ts';
import { heights, isNear, isWithinReach } from './swept.ts';

export interface Swing {
  readonly opens_deg: number;
  /** What stops it: an id of a part or a wall, or "floor"; null when it turns by half a turn. */
  readonly strikes: string | null;
  /** Where it strikes, or its farthest corner when it stands open. */
  readonly at_mm: Vec3;
  /** The way of its farthest corner. */
  readonly arc: readonly Vec3[];
}

interface Stop {
  readonly angle: number;
  readonly strikes: string | null;
  readonly at: Vec3 | null;
}

/** Points along edges stand this part of the door's width apart, within these bounds, mm. */
const pitchShare = 1 / 300;
const leastPitch_mm = 1;
const mostPitch_mm = 4;
/** The wider of the two swings about the hinge; a door that is shut lies against its frame in the other one. */
export function swingOf(
  model: Model,
  door: Door,
  site: Pick<Site, 'walls'>,
  floor_mm: number,
  control: Control,
): Swing {
  const all = materialOf(model);
  const inDoor = new Set(door.parts);
  const doorParts = model.parts.flatMap((part, p) => (inDoor.has(part.id) ? [p] : []));
  const alone = materialOf({ ...model, parts: doorParts.map((p) => model.parts[p]) });
  const axis: Axis = { at: door.hinge.at_mm, along: unit(door.hinge.axis) };
  const corners = doorParts.flatMap((p) => edgePoints(all.tree, p, Infinity, () => true));
  const width = corners.reduce((most, p) => Math.max(most, wayOf(axis, p, 1).radius), 0);
  const pitch = Math.min(mostPitch_mm, Math.max(leastPitch_mm, width * pitchShare));
  const points = doorParts
    .flatMap((p) => edgePoints(all.tree, p, pitch, () => true))
    .map((p) => ({ p, far: wayOf(axis, p, 1).radius }))
    .sort((a, b) => b.far - a.far)
    .map(({ p }) => p);
  const swings = [1, -1].map((sense) => {
    const shut: Stop = { angle: Math.PI, strikes: null, at: null };
    const planes = stopAtPlanes(corners, axis, sense, site.walls, floor_mm, shut);
    const byDoor = stopOfDoor(model, all, points, axis, sense, inDoor, planes, control);
    return {
      sense,
      stop: stopOfOthers(model, all, alone, doorParts, axis, sense, width, pitch, byDoor, control),
    };
  });
  const { sense, stop } = swings[1].stop.angle > swings[0].stop.angle ? swings[1] : swings[0];
  const farthest = wayOf(axis, points[0], sense);
  const steps = Math.max(2, Math.ceil(stop.angle / 0.05));
  return {
    opens_deg: (stop.angle * 180) / Math.PI,
    strikes: stop.strikes,
    at_mm: stop.at ?? pointAt(farthest, stop.angle),
    arc: Array.from({ length: steps + 1 }, (_, k) => pointAt(farthest, (stop.angle * k) / steps)),
  };
}

/** Walls and floor: a door reaches them with a corner first. */
function stopAtPlanes(
  corners: readonly Vec3[],
  axis: Axis,
  sense: number,
  walls: Site['walls'],
  floor_mm: number,
  before: Stop,
): Stop {
  const planes = [
    ...walls.map((w) => ({ id: w.id, n: unit(w.into), d: dot(unit(w.into), w.at_mm) })),
    { id: 'floor', n: [0, 0, 1] as Vec3, d: floor_mm },
  ];
  let stop = before;
  for (const { id, n, d } of planes) {
    for (const p of corners) {
      if (dot(n, p) < d) continue;
      const way = wayOf(axis, p, sense);
      for (const a of meetsPlane(way, n, d) ?? []) {
        const angle = a < 0 ? a + 2 * Math.PI : a;
        // It crosses the plane outwards there.
        const outwards = dot(n, minus(pointAt(way, angle + 1e-6), pointAt(way, angle))) < 0;
        if (outwards && angle < stop.angle) stop = { angle, strikes: id, at: pointAt(way, angle) };
      }
    }
  }
  return stop;
}

/** Points of the door against all other parts. */
function stopOfDoor(
  model: Model,
  all: Material,
  points: readonly Vec3[],
  axis: Axis,
  sense: number,
  inDoor: ReadonlySet<string>,
  before: Stop,
  control: Control,
): Stop {
  const ignore = (part: number) => inDoor.has(model.parts[part].id);
  let stop = before;
  for (let i = 0; i < points.length && stop.angle > 0; i++) {
    if (i % 256 === 0) step(control, 'clearances', 0.9);
    const way = wayOf(axis, points[i], sense);
    const strike = pressedInto(all, way, ignore) ?? firstStrike(all, way, 0, stop.angle, ignore);
    if (!strike || strike.angle >= stop.angle) continue;
    stop = {
      angle: strike.angle,
      strikes: model.parts[strike.part].id,
      at: pointAt(way, strike.angle),
    };
  }
  return stop;
}

/** Points of all other parts against the door: relative to it they turn the other way. */
function stopOfOthers(
  model: Model,
  all: Material,
  alone: Material,
  doorParts: readonly number[],
  axis: Axis,
  sense: number,
  width: number,
  pitch: number,
  before: Stop,
  control: Control,
): Stop {
  const boxes = partBoxes(all.tree);
  const [low, high] = heights(all, doorParts, axis);
  const within = (p: Vec3): boolean => {
    const h = dot(minus(p, axis.at), axis.along);
    return h >= low && h <= high && wayOf(axis, p, 1).radius <= width;
  };
  let stop = before;
  for (let part = 0; part < model.parts.length && stop.angle > 0; part++) {
    if (doorParts.includes(part) || !isNear(boxes, part, axis, width, low, high)) continue;
    const points = edgePoints(all.tree, part, pitch, (c, i) => isWithinReach(c, i, axis, width, low, high));
    for (let i = 0; i < points.length && stop.angle > 0; i++) {
      if (i % 256 === 0) step(control, 'clearances', 0.95);
      if (!within(points[i])) continue;
      const strike = firstStrike(alone, wayOf(axis, points[i], -sense), 0, stop.angle, () => false);
      if (!strike || strike.angle >= stop.angle) continue;
      stop = { angle: strike.angle, strikes: model.parts[part].id, at: points[i] };
    }
  }
  return stop;
}
