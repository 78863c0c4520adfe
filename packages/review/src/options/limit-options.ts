/** What a measure becomes by definition when the fault is mended to the limit. */
import { formatQuantity } from '@coveline/quantity';
import type { DeadLeg, InsideCorner, Joint } from '@coveline/survey';
import { input } from '../numbers/measured.ts';
import { effect } from './effect.ts';
import type { Option } from './option.ts';

const source = 'by definition of the measure';

/** `most`: limit of the length from the wall of the main over the bore of the branch. */
export function cutBranch({ fromWall_mm, bore_mm, ratioFromWall }: DeadLeg, most: number): Option {
  const kept_mm = most * bore_mm;
  const inputs = [
    input('L', 'from the wall of the main', fromWall_mm, 'mm'),
    input('d', 'bore of the branch', bore_mm, 'mm'),
    { symbol: 'r', name: 'limit', value: most, unit: '1', from: 'profile' },
  ];
  const validity = 'straight bore; the end is set back along its axis';
  const volume = (length_mm: number) => (Math.PI * bore_mm ** 2 * length_mm) / 4000;
  const far = (formula: string) => ({ formula, inputs, source, validity });
  return {
    text: `Cut the branch so that its end stands ${formatQuantity(kept_mm, 'mm', { digits: 3 })} from the wall of the main.`,
    cost: 'some',
    effects: [
      effect('Length over bore', '1', [ratioFromWall, most], far('r = L / d, cut to the limit')),
      effect('Length', 'mm', [fromWall_mm, kept_mm], far('L = r · d')),
      effect('Volume of the dead end', 'mL', [volume(fromWall_mm), volume(kept_mm)], far('V = π d² L / 4')),
    ],
    caveats: ['Whether a shorter branch still takes its fitting has to be drawn.'],
  };
}

/** `least_mm`: limit of the radius. */
export function roundEdges(corners: readonly InsideCorner[], least_mm: number): Option {
  const short = corners.filter((c) => c.radius_mm < least_mm);
  const length_mm = short.reduce((sum, c) => sum + c.length_mm, 0);
  const smallest_mm = Math.min(...corners.map((c) => c.radius_mm));
  const inputs = [
    input('R0', 'smallest radius', smallest_mm, 'mm'),
    { symbol: 'R', name: 'limit', value: least_mm, unit: 'mm', from: 'profile' },
  ];
  const validity = 'every edge of this finding is rounded';
  return {
    text: `Round these edges with ${formatQuantity(least_mm, 'mm')}.`,
    cost: 'some',
    effects: [
      effect('Smallest radius', 'mm', [smallest_mm, least_mm], {
        formula: 'R as the limit asks',
        inputs,
        source,
        validity,
      }),
      effect('Edges under the limit', 'mm', [length_mm, 0], {
        formula: 'sum of the edges with a radius below R',
        inputs,
        source,
        validity,
      }),
    ],
    caveats: [],
  };
}

/** A weld leaves no line; a gasket closes it and is itself a thing to look after. */
export function closeJoints(joints: readonly Joint[]): readonly Option[] {
  const open_mm = joints.reduce((sum, j) => sum + j.length_mm, 0);
  const inputs = [input('Lj', 'open joint line', open_mm, 'mm')];
  const closed = effect('Open joint line', 'mm', [open_mm, 0], {
    formula: 'closed all along: 0',
    inputs,
    source,
    validity: 'the whole line of this finding is closed',
  });
  const seal = (after: number, formula: string) =>
    effect('Seal to inspect and change', 'mm', [0, after], {
      formula,
      inputs,
      source,
      validity: 'one seal along the line',
    });
  return [
    {
      text: 'Weld the joint all round and grind it flush.',
      cost: 'some',
      effects: [closed, seal(0, 'no seal: 0')],
      caveats: ['The parts no longer come apart, and heat warps thin sheet.'],
    },
    {
      text: 'Seal the joint with a gasket that is flush and pressed to a stop.',
      cost: 'some',
      effects: [closed, seal(open_mm, 'L = Lj')],
      caveats: ['The seal has to withstand the cleaning media: see the page of cleaning.'],
    },
  ];
}
