import type { Model } from '@coveline/model';
import type { MeasureName } from '@coveline/survey';

/** How a field is painted: what is graver is the fuller. */
export interface Paint {
  /** NaN is not painted. */
  readonly values: Float32Array;
  /** The numbers at the pale and at the full end of the scale; null where the paint only marks what is so. */
  readonly scale: { readonly pale: number; readonly full: number } | null;
}

/** What `SurveyOutcome.fields` of a measure looks like on the surface. */
export function paintOf(measure: MeasureName, field: Float32Array): Paint {
  switch (measure) {
    case 'handReach':
    case 'toolReach':
      return marked(field, (value) => value < 0);
    case 'jetReach':
      return marked(field, (value) => value === 0);
    case 'openSky':
      return { values: field.map((share) => share * 100), scale: { pale: 100, full: 0 } };
    case 'overhead':
    case 'clearances':
      return { values: field, scale: { pale: highest(field), full: 0 } };
    case 'flatFaces':
      return { values: field.map(Math.abs), scale: { pale: 0, full: highest(field) } };
    default:
      return { values: field, scale: { pale: 0, full: highest(field) } };
  }
}

/** The same on these parts alone: what holds for half the machine says little where one finding is looked at. */
export function onParts(paint: Paint, model: Model, ids: readonly string[]): Paint {
  const values = new Float32Array(paint.values.length).fill(Number.NaN);
  let from = 0;
  for (const { id, shape } of model.parts) {
    const to = from + model.shapes[shape].triangles.length / 3;
    if (ids.includes(id)) values.set(paint.values.subarray(from, to), from);
    from = to;
  }
  return { ...paint, values };
}

function marked(field: Float32Array, is: (value: number) => boolean): Paint {
  return { values: field.map((value) => (is(value) ? 1 : Number.NaN)), scale: null };
}

function highest(field: Float32Array): number {
  let high = 0;
  for (const value of field) if (Math.abs(value) > high) high = Math.abs(value);
  return high;
}
