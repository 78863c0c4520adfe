import type { Input } from '@coveline/engineering';
import { formatUnit } from '@coveline/quantity';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';

/** What an input takes: its range, and what holds when it is left empty and why. */
export function inputHint(input: Input): string {
  const c = m.calculations;
  if (input.kind === 'text') return input.format;
  if (input.kind === 'choice') return input.default === undefined ? c.needed : '';
  const range = rangeOf(input.min, input.max, input.unit);
  if (input.kind === 'list')
    return joined([c.list(input.minCount, input.unit === '1' ? '' : formatUnit(input.unit)), range]);
  return joined([
    input.default === undefined ? c.needed : c.preset(show(input.default, input.unit, 6)),
    input.from ?? '',
    input.whole ? c.whole : '',
    range,
    input.usual ? c.usual(show(input.usual[0], input.unit, 6), show(input.usual[1], input.unit, 6)) : '',
  ]);
}

function rangeOf(min: number | undefined, max: number | undefined, unit: string): string {
  const c = m.calculations;
  if (min !== undefined && max !== undefined) return c.between(show(min, unit, 6), show(max, unit, 6));
  if (min !== undefined) return c.atLeast(show(min, unit, 6));
  return max === undefined ? '' : c.atMost(show(max, unit, 6));
}

const joined = (parts: readonly string[]) => parts.filter((part) => part !== '').join(' · ');
