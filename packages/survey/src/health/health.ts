/**
 * What is wrong with a model before anything is measured on it, and what the measures do about it. A fault is told
 * with its parts; a measure that cannot be trusted there says so in its own caveats.
 */
import type { Model } from '@coveline/model';
import { soundShape } from '../liquid/sound.ts';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { treeOf } from '../tree/tree.ts';
import { weldOf } from '../weld/weld.ts';
import { type Crossing, crossingsOf } from './crossings.ts';
import { oddSizes } from './odd-sizes.ts';
import { borderOf, slivers } from './shape-faults.ts';

export type FaultKind =
  | 'openShell'
  | 'crack'
  | 'invertedShell'
  | 'mixedWinding'
  | 'tJunction'
  | 'sliver'
  | 'duplicatePart'
  | 'overlap'
  | 'selfIntersection'
  | 'oddSize';

export interface ModelFault {
  readonly kind: FaultKind;
  /** Ids, in model order. */
  readonly parts: readonly string[];
  /** Edges, triangles, shells or pairs, as `text` says. */
  readonly count: number;
  /** What was found, and what is done about it: two sentences at most. */
  readonly text: string;
}

export interface ModelHealth {
  readonly parts: number;
  readonly triangles: number;
  /** Parts whose surface is closed, after what could be mended. */
  readonly closedParts: number;
  /** Worst for the measures first. */
  readonly faults: readonly ModelFault[];
}

const stage = 'health of the model';

/** Crossings cost a ray per edge; everything else is a look at each shape. */
export function healthOf(model: Model, control: Control): ModelHealth {
  const shapes = model.shapes.map((shape, i) => {
    step(control, stage, (0.3 * i) / model.shapes.length);
    const weld = weldOf(shape);
    return { sound: soundShape(shape), border: borderOf(weld), slivers: slivers(weld) };
  });
  const partsWhere = (holds: (shape: number) => boolean) =>
    model.parts.filter((p) => holds(p.shape)).map((p) => p.id);
  const sumWhere = (count: (shape: number) => number) =>
    model.parts.reduce((sum, p) => sum + count(p.shape), 0);
  const faults: ModelFault[] = [];
  const tell = (kind: FaultKind, parts: readonly string[], count: number, text: string) => {
    if (parts.length > 0) faults.push({ kind, parts, count, text });
  };

  const open = partsWhere((s) => shapes[s].sound.sheets > 0);
  const openLength = sumWhere((s) => (shapes[s].sound.sheets > 0 ? shapes[s].border.length_mm : 0));
  tell(
    'openShell',
    open,
    sumWhere((s) => (shapes[s].sound.sheets > 0 ? shapes[s].border.edges : 0)),
    `${ofParts(open)} open: ${openLength.toFixed(0)} mm of edge without a neighbour. Such a surface stops liquid but has no inside, so hollows, gaps and wall sides are not told there.`,
  );
  const inverted = partsWhere((s) => shapes[s].sound.inverted > 0);
  tell(
    'invertedShell',
    inverted,
    sumWhere((s) => shapes[s].sound.inverted),
    `${ofParts(inverted)} inside out. They are turned for standing liquid and hollows; corners and gaps see them as drawn.`,
  );
  const mixed = partsWhere((s) => shapes[s].sound.reoriented > 0);
  tell(
    'mixedWinding',
    mixed,
    sumWhere((s) => shapes[s].sound.reoriented),
    `${ofParts(mixed)} made of triangles that disagree on which side is out. They are turned to agree with their neighbours.`,
  );
  const cracked = partsWhere((s) => shapes[s].sound.zipped > 0 || shapes[s].sound.capped > 0);
  tell(
    'crack',
    cracked,
    sumWhere((s) => shapes[s].sound.zipped + shapes[s].sound.capped),
    `${ofParts(cracked)} not quite closed. Cracks and small holes are closed for standing liquid and hollows.`,
  );
  const junctions = partsWhere((s) => shapes[s].border.tJunctions > 0);
  tell(
    'tJunction',
    junctions,
    sumWhere((s) => shapes[s].border.tJunctions),
    `${junctions.length === 1 ? '1 part has' : `${junctions.length} parts have`} corners in the middle of a neighbour's edge. The edge counts as open there, and a corner along it may be told in pieces.`,
  );
  const crossings = crossingsOf(model, treeOf(model), (done) => step(control, stage, 0.3 + 0.7 * done));
  tellCrossings(model, crossings, tell);
  const twins = duplicates(model);
  tell(
    'duplicatePart',
    twins,
    twins.length,
    `${ofParts(twins)} drawn a second time in the same place. Liquid is not counted twice; gaps and joints between the two are left out.`,
  );
  for (const { parts, text } of oddSizes(model)) tell('oddSize', parts, parts.length, text);
  const thin = partsWhere((s) => shapes[s].slivers > 0);
  tell(
    'sliver',
    thin,
    sumWhere((s) => shapes[s].slivers),
    `${thin.length === 1 ? '1 part has' : `${thin.length} parts have`} triangles thinner than a thousandth of a millimetre. They bear no weight in any measure; an angle across one is not trusted.`,
  );
  return {
    parts: model.parts.length,
    triangles: sumWhere((s) => model.shapes[s].triangles.length / 3),
    closedParts: model.parts.length - open.length,
    faults,
  };
}

function tellCrossings(
  model: Model,
  crossings: readonly Crossing[],
  tell: (kind: FaultKind, parts: readonly string[], count: number, text: string) => void,
): void {
  const id = (p: number) => model.parts[p].id;
  const self = crossings.filter((c) => c.a === c.b);
  const own = self.map((c) => id(c.a));
  tell(
    'selfIntersection',
    own,
    own.length,
    `${own.length === 1 ? '1 part cuts through itself' : `${own.length} parts cut through themselves`}. Liquid counts them by how often a point is wrapped; the exact second number may be missing.`,
  );
  const pairs = crossings.filter((c) => c.a !== c.b);
  const involved = [...new Set(pairs.flatMap((c) => [c.a, c.b]))].sort((a, b) => a - b).map(id);
  tell(
    'overlap',
    involved,
    pairs.length,
    `${pairs.length} ${pairs.length === 1 ? 'pair' : 'pairs'} of parts share material, as press fits and threads do when they are drawn so. They count as one body there.`,
  );
}

/** The later ones of parts with the same shape in the same place. */
function duplicates(model: Model): string[] {
  const seen = new Set<string>();
  return model.parts.flatMap((p) => {
    const place = Array.from(p.placement, (v) => Math.round(v * 1e4)).join(',');
    const key = `${model.shapes[p.shape].hash}|${place}`;
    if (seen.has(key)) return [p.id];
    seen.add(key);
    return [];
  });
}

const ofParts = (ids: readonly string[]) => (ids.length === 1 ? '1 part is' : `${ids.length} parts are`);
