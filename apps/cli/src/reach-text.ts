/** What hand and tool get to, in words. */
import type { ReachMeasure, SurveyMeasures } from '@coveline/survey';
import type { Lister } from './around-text.ts';

const number = new Intl.NumberFormat('en', { maximumSignificantDigits: 3 });
const at = (p: readonly number[]) => `(${p.map((x) => Math.round(x)).join(', ')})`;
const named = (parts: readonly string[]) => parts.map((id) => id.split('/').at(-1)).join(' + ');

export function reachLines({ handReach, toolReach }: SurveyMeasures, list: Lister): string[] {
  return [
    ...(handReach ? limbLines('Hand', handReach, list) : []),
    ...(toolReach ? limbLines('Tool', toolReach, list) : []),
  ];
}

function limbLines(limb: string, m: ReachMeasure, list: Lister): string[] {
  return [
    ...list(
      `${limb} of ${number.format(m.size_mm)} mm, ${number.format(m.length_mm)} mm of way: reaches ` +
        `${number.format(m.reached_cm2)} cm2 and not ${number.format(m.unreached_cm2)} cm2`,
      m.places,
      (p) =>
        [
          `${number.format(p.area_cm2)} cm2`,
          p.because === 'far'
            ? `too far: ${number.format(p.way_mm ?? 0)} mm`
            : p.largest_mm > 0
              ? `too narrow: a ball of ${number.format(p.largest_mm)} mm gets there`
              : 'too narrow for any tool',
          at(p.at_mm),
          named(p.parts),
        ].join('  '),
    ),
    ...list(`  Openings on its way: ${m.openings.length}`, m.openings, (p) =>
      [
        `${number.format(p.size_mm)} mm wide`,
        `${number.format(p.behind_cm2)} cm2 behind it`,
        at(p.at_mm),
        named(p.parts),
      ].join('  '),
    ),
  ];
}
