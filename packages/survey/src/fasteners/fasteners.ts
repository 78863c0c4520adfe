import type { Model, Vec3 } from '@coveline/model';
import { bounds, placedPositions } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Control, Drawing, FastenerHead, SurveySettings, Thread } from '../result.ts';
import { step } from '../stopped.ts';
import { materialOf } from '../tree/material.ts';
import { drawRings, paint } from './draw.ts';
import { fastenersOfPart, isFastenerByNameOnly } from './evidence.ts';
import { type Exposure, exposureOf, newLook } from './exposed.ts';
import type { LocalFasteners, LocalHead, LocalThread } from './local.ts';
import { fastenersOfShape } from './of-shape.ts';
import { isSameThread, moved, type PlacedNut, placedNut, threadUnder } from './on-rod.ts';

/** Threads of which less than this stands free are not listed, mm: chamfers and noise. */
const leastExposed_mm = 0.2;

/**
 * Heads of fasteners, and threads that stand free in the air (mm). Recognised, strongest first, by CAD faces, by the
 * shape of the triangles, by many parts of the same shape, by the part's name; each place says which. A thread that is
 * drawn as a plain cylinder has no pitch and says what it was taken for a thread by.
 */
export function measureFasteners(
  model: Model,
  settings: SurveySettings,
  control: Control = {},
): MeasureOutcome<'fasteners'> {
  const material = materialOf(model);
  const { start } = material.tree;
  const field = new Float32Array(start[model.parts.length]).fill(Number.NaN);
  const drawings = new Map<string, Drawing>();
  const found = recognise(model, control);
  const nameHead = placeNamer('fastener');
  const nameThread = placeNamer('thread');
  const look = newLook(material);
  const heads: FastenerHead[] = [];
  const threads: Thread[] = [];
  for (const [p, { heads: ofPart, threads: stems }] of found.entries()) {
    step(control, 'fasteners', 0.5 + (0.5 * p) / found.length);
    const { id, placement, shape } = model.parts[p];
    const geometry = model.shapes[shape];
    const own = field.subarray(start[p], start[p + 1]);
    for (const thread of stems) {
      const exposure = exposureOf(look, placement, thread, settings.gapBelow_mm);
      if (exposure.exposed_mm < leastExposed_mm) continue;
      const place = threadPlace(id, thread, exposure, placement, nameThread);
      threads.push(place);
      for (const [from, to] of exposure.stretches) paint(geometry, own, thread, { ...thread, from, to }, 2);
      drawings.set(place.id, drawRings(placement, thread, thread.radius_mm, exposure.stretches.flat()));
    }
    for (const head of ofPart) {
      const place = headPlace(id, head, placement, nameHead);
      heads.push(place);
      paint(geometry, own, head, head, 1);
      drawings.set(place.id, drawRings(placement, head, head.radius_mm, [head.from, head.to]));
    }
    if (isFastenerByNameOnly({ heads: ofPart, threads: stems }, model.parts[p].name)) {
      heads.push(namedPlace(model, p, nameHead));
    }
  }
  return { measure: { heads, threads }, field, drawings, notes: [] };
}

/** Per part, in the frame of its shape. */
function recognise(model: Model, control: Control): LocalFasteners[] {
  const copies = new Map<string, number>();
  for (const { shape } of model.parts) {
    const { hash } = model.shapes[shape];
    copies.set(hash, (copies.get(hash) ?? 0) + 1);
  }
  const ofShape = new Map<number, LocalFasteners>();
  const found = model.parts.map(({ shape, name }, p) => {
    const between = () => step(control, 'fasteners', (0.5 * p) / model.parts.length);
    between();
    let local = ofShape.get(shape);
    if (!local) {
      local = fastenersOfShape(model.shapes[shape], between);
      ofShape.set(shape, local);
    }
    return fastenersOfPart(local, name, copies.get(model.shapes[shape].hash)!);
  });
  return withRods(model, found);
}

/** Adds the rods that nuts sit on. */
function withRods(model: Model, found: readonly LocalFasteners[]): LocalFasteners[] {
  const out = found.map(({ heads, threads }) => ({ heads, threads: [...threads] }));
  const nuts: PlacedNut[] = found.flatMap(({ heads, threads }, p) =>
    heads.flatMap((head) => {
      const bore = threads.find((t) => t.inside && isSameThread(t, { ...t, ...head, inside: true }));
      return placedNut(p, model.parts[p].placement, head, bore) ?? [];
    }),
  );
  if (nuts.length === 0) return out;
  const boxes = model.parts.map((_, p) => bounds({ ...model, parts: [model.parts[p]] }));
  for (const nut of nuts) {
    const [low, high] = boxes[nut.part];
    for (let p = 0; p < model.parts.length; p++) {
      const [l, h] = boxes[p];
      if ([0, 1, 2].some((k) => l[k] > high[k] || h[k] < low[k])) continue;
      const thread = threadUnder(model, p, nut);
      if (!thread) continue;
      const known = out[p].threads.findIndex((other) => isSameThread(other, thread));
      if (known < 0) out[p].threads.push(thread);
      else if (out[p].threads[known].by === 'name') out[p].threads[known] = thread;
    }
  }
  return out;
}

function headPlace(
  part: string,
  head: LocalHead,
  placement: Float64Array,
  name: (parts: readonly string[], at: Vec3) => string,
): FastenerHead {
  const at_mm = onAxis(placement, head, (head.from + head.to) / 2);
  return {
    id: name([part], at_mm),
    parts: [part],
    at_mm,
    bounds_mm: boundsOf(placement, head, head.from, head.to),
    kind: head.kind,
    ...(head.acrossFlats_mm === undefined ? {} : { acrossFlats_mm: head.acrossFlats_mm }),
    ...(head.diameter_mm === undefined ? {} : { diameter_mm: head.diameter_mm }),
    from: head.by,
    ...(head.caveats.length > 0 ? { caveats: head.caveats } : {}),
  };
}

function threadPlace(
  part: string,
  thread: LocalThread,
  { exposed_mm, stretches }: Exposure,
  placement: Float64Array,
  name: (parts: readonly string[], at: Vec3) => string,
): Thread {
  // The longest free stretch, or the whole of a thread that is free on one side only.
  const [from, to] = [...stretches].sort((a, b) => b[1] - b[0] - (a[1] - a[0]))[0] ?? [
    thread.from,
    thread.to,
  ];
  const at_mm = onAxis(placement, thread, (from + to) / 2);
  return {
    id: name([part], at_mm),
    parts: [part],
    at_mm,
    bounds_mm: boundsOf(placement, thread, from, to),
    diameter_mm: 2 * thread.radius_mm,
    ...(thread.pitch_mm === undefined ? {} : { pitch_mm: thread.pitch_mm }),
    exposed_mm,
    inside: thread.inside,
    from: thread.by,
    ...(thread.caveats.length > 0 ? { caveats: thread.caveats } : {}),
  };
}

function namedPlace(
  model: Model,
  p: number,
  name: (parts: readonly string[], at: Vec3) => string,
): FastenerHead {
  const { id } = model.parts[p];
  const xyz = placedPositions(model, p);
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < xyz.length; i++) {
    low[i % 3] = Math.min(low[i % 3], xyz[i]);
    high[i % 3] = Math.max(high[i % 3], xyz[i]);
  }
  const at_mm: Vec3 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  return {
    id: name([id], at_mm),
    parts: [id],
    at_mm,
    bounds_mm: [low, high],
    kind: 'unknown',
    from: 'name',
    caveats: ['Only its name says that it is a fastener.'],
  };
}

function onAxis(placement: Float64Array, { origin, direction }: LocalHead | LocalThread, z: number): Vec3 {
  return moved(
    placement,
    [origin[0] + z * direction[0], origin[1] + z * direction[1], origin[2] + z * direction[2]],
    1,
  );
}

/** Box of a cylinder about an axis: across a direction d it reaches radius * sqrt(1 - d^2) from the axis. */
function boundsOf(
  placement: Float64Array,
  axis: LocalHead | LocalThread,
  from: number,
  to: number,
): [Vec3, Vec3] {
  const direction = moved(placement, axis.direction, 0);
  const ends = [onAxis(placement, axis, from), onAxis(placement, axis, to)];
  const reach = direction.map((d) => axis.radius_mm * Math.sqrt(Math.max(0, 1 - d * d)));
  const corner = (sign: 1 | -1) =>
    [0, 1, 2].map(
      (k) =>
        (sign > 0 ? Math.max(ends[0][k], ends[1][k]) : Math.min(ends[0][k], ends[1][k])) + sign * reach[k],
    );
  return [corner(-1) as unknown as Vec3, corner(1) as unknown as Vec3];
}
