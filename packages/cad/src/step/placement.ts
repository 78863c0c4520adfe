/** Placements of ISO 10303-42 as matrices. Lengths are scaled to millimetres by the caller's factor. */
import { identity, inverse, type Matrix, multiply } from '../matrix.ts';
import { attributes, type Instance, instance, listOf, numberOf, refOf } from './parse.ts';
import type { Part21Index } from './scan.ts';

type V = [number, number, number];

/**
 * Matrix that takes the frame `from` to the frame `to` (item_defined_transformation and mapped_item do this).
 * Undefined where either of them is missing or degenerate.
 */
export function frameToFrame(
  index: Part21Index,
  from: number,
  fromScale: number,
  to: number,
  toScale: number,
): Matrix | undefined {
  const a = frame(index, from, fromScale);
  const b = frame(index, to, toScale);
  const back = a && inverse(a);
  return back && b ? multiply(b, back) : undefined;
}

/** Matrix of an axis2_placement_3d or a cartesian_transformation_operator_3d. */
export function frame(index: Part21Index, id: number, scale: number): Matrix | undefined {
  const found = instance(index, id);
  if (!found) return undefined;
  if (found.by.has('AXIS2_PLACEMENT_3D')) return axis2Placement(index, found, scale);
  if (found.by.has('CARTESIAN_TRANSFORMATION_OPERATOR_3D'))
    return transformationOperator(index, found, scale);
  return undefined;
}

/** Axes built as ISO 10303-42 `build_axes` does: z first, x made square to it, y = z × x. */
function axis2Placement(index: Part21Index, found: Instance, scale: number): Matrix | undefined {
  const [, location, axis, reference] = attributes(found, 'AXIS2_PLACEMENT_3D');
  const origin = point(index, refOf(location));
  const z = axis === null || axis === undefined ? ([0, 0, 1] as V) : direction(index, refOf(axis));
  const wanted =
    reference === null || reference === undefined ? undefined : direction(index, refOf(reference));
  if (!origin || !z) return undefined;
  const x = square(wanted ?? (Math.abs(z[0]) > 0.999_999 ? [0, 0, 1] : [1, 0, 0]), z);
  return x && columns(x, cross(z, x), z, origin, scale);
}

/**
 * cartesian_transformation_operator_3d: axis1, axis2, local_origin, scale, axis3. Its names come first, and their
 * number differs between schemas, so the attributes are counted from the end. It may mirror and scale.
 */
function transformationOperator(index: Part21Index, found: Instance, unit: number): Matrix | undefined {
  const list = attributes(found, 'CARTESIAN_TRANSFORMATION_OPERATOR_3D');
  if (list.length < 5) return undefined;
  const [axis1, axis2, location, size, axis3] = list.slice(-5);
  const origin = point(index, refOf(location));
  const z = axis3 === null ? ([0, 0, 1] as V) : direction(index, refOf(axis3));
  if (!origin || !z) return undefined;
  const x = square(axis1 === null ? [1, 0, 0] : (direction(index, refOf(axis1)) ?? [1, 0, 0]), z);
  if (!x) return undefined;
  let y = cross(z, x);
  const wantedY = axis2 === null ? undefined : direction(index, refOf(axis2));
  if (wantedY && dot(wantedY, y) < 0) y = [-y[0], -y[1], -y[2]];
  const k = size === null ? 1 : numberOf(size);
  if (!(k > 0 && Number.isFinite(k))) return undefined;
  const m = columns(x, y, z, origin, unit);
  for (let i = 0; i < 11; i++) m[i] *= k;
  return m;
}

function point(index: Part21Index, id: number): V | undefined {
  return triple(listOf(attributes(instance(index, id), 'CARTESIAN_POINT')[1]).map(numberOf));
}

function direction(index: Part21Index, id: number): V | undefined {
  const v = triple(listOf(attributes(instance(index, id), 'DIRECTION')[1]).map(numberOf));
  return v && unitVector(v);
}

const triple = (v: number[]): V | undefined =>
  v.length === 3 && v.every(Number.isFinite) ? (v as V) : undefined;

const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

function unitVector(v: V): V | undefined {
  const length = Math.hypot(...v);
  return length > 0 ? [v[0] / length, v[1] / length, v[2] / length] : undefined;
}

/** Part of `v` that is square to the unit vector `z`, as a unit vector. */
function square(v: V, z: V): V | undefined {
  const along = dot(v, z);
  return unitVector([v[0] - along * z[0], v[1] - along * z[1], v[2] - along * z[2]]);
}

function columns(x: V, y: V, z: V, origin: V, scale: number): Matrix {
  const m = identity();
  m.set(x, 0);
  m.set(y, 4);
  m.set(z, 8);
  m.set([origin[0] * scale, origin[1] * scale, origin[2] * scale], 12);
  return m;
}
