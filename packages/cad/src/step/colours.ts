/** Colours of styled items. The values of COLOUR_RGB are taken as sRGB, which is what CAD programs show. */
import type { Vec3 } from '@coveline/model';
import { attributes, type Instance, instance, numberOf, refOf, refsOf, textOf } from './parse.ts';
import { instancesOf, type Part21Index } from './scan.ts';

/** Pre-defined colours of ISO 10303-46. */
const named: Readonly<Record<string, Vec3>> = {
  red: [1, 0, 0],
  green: [0, 1, 0],
  blue: [0, 0, 1],
  yellow: [1, 1, 0],
  magenta: [1, 0, 1],
  cyan: [0, 1, 1],
  black: [0, 0, 0],
  white: [1, 1, 1],
};

export interface Colours {
  /** Surface colour by the instance that is styled: a body, a shell, a face, a mapped item. */
  readonly byItem: ReadonlyMap<number, Vec3>;
  /**
   * Colours that hold only for one use of the item: by the instance that stands for the use (a placement
   * relationship, or a representation of the component), then by the styled item.
   */
  readonly byContext: ReadonlyMap<number, ReadonlyMap<number, Vec3>>;
}

export function readColours(index: Part21Index): Colours {
  const byItem = new Map<number, Vec3>();
  const byContext = new Map<number, Map<number, Vec3>>();
  const keep = (context: number, item: number, colour: Vec3) => {
    const under = byContext.get(context) ?? new Map<number, Vec3>();
    under.set(item, colour);
    byContext.set(context, under);
  };
  for (const entity of ['STYLED_ITEM', 'OVER_RIDING_STYLED_ITEM']) {
    for (const id of instancesOf(index, entity)) {
      const [, styles, item] = styledItem(instance(index, id));
      for (const style of refsOf(styles)) {
        const colour = surfaceColour(index, [style]);
        const [, context] = attributes(instance(index, style), 'PRESENTATION_STYLE_BY_CONTEXT');
        if (colour && context !== undefined) keep(refOf(context), refOf(item), colour);
        else if (colour) byItem.set(refOf(item), colour);
      }
    }
  }
  for (const id of instancesOf(index, 'CONTEXT_DEPENDENT_OVER_RIDING_STYLED_ITEM')) {
    const list = attributes(instance(index, id), 'CONTEXT_DEPENDENT_OVER_RIDING_STYLED_ITEM');
    const colour = surfaceColour(index, refsOf(list[1]));
    if (colour) for (const context of refsOf(list[4])) keep(context, refOf(list[2]), colour);
  }
  return { byItem, byContext };
}

/** name, styles, item: written as one simple instance or spread over a complex one. */
function styledItem(
  found: Instance | undefined,
): readonly (ReturnType<typeof attributes>[number] | undefined)[] {
  const list = attributes(found, 'STYLED_ITEM', 'OVER_RIDING_STYLED_ITEM');
  return list.length >= 3 ? list : [null, list[0], list[1]];
}

/** First surface colour reached from style assignments; a curve's colour does not count. */
function surfaceColour(index: Part21Index, styles: readonly number[]): Vec3 | undefined {
  const queue = [...styles];
  const seen = new Set<number>();
  while (queue.length > 0 && seen.size < 1000) {
    const id = queue.shift()!;
    if (seen.has(id)) continue;
    seen.add(id);
    const found = instance(index, id);
    if (!found) continue;
    for (const [entity, list] of found.by) {
      if (entity === 'COLOUR_RGB') return rgb(list.slice(-3).map(numberOf));
      if (entity === 'DRAUGHTING_PRE_DEFINED_COLOUR' || entity === 'PRE_DEFINED_COLOUR') {
        const colour = named[textOf(list[list.length - 1])];
        if (colour) return colour;
      }
      if (entity === 'CURVE_STYLE' || entity === 'POINT_STYLE') continue;
      for (const value of list) queue.push(refOf(value), ...refsOf(value));
    }
  }
  return undefined;
}

function rgb(values: readonly number[]): Vec3 | undefined {
  if (values.length !== 3 || !values.every((v) => v >= 0 && v <= 1)) return undefined;
  return [values[0], values[1], values[2]];
}

/** Colour of a body: its own, that of its shells, or the one that most of its faces wear. */
export function bodyColour(
  colours: Colours,
  body: number,
  shells: readonly number[],
  faces: readonly number[],
): Vec3 | undefined {
  for (const id of [body, ...shells]) {
    const colour = colours.byItem.get(id);
    if (colour) return colour;
  }
  const votes = new Map<string, { colour: Vec3; count: number }>();
  for (const face of faces) {
    const colour = colours.byItem.get(face);
    if (!colour) continue;
    const key = colour.join();
    const vote = votes.get(key) ?? { colour, count: 0 };
    vote.count++;
    votes.set(key, vote);
  }
  let best: { colour: Vec3; count: number } | undefined;
  for (const vote of votes.values()) if (!best || vote.count > best.count) best = vote;
  return best?.colour;
}
