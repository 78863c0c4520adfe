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

/** Limits so far away only keep numbers computable; a person learns nothing from them. */
const isFar = (value: number) => Math.abs(value) >= 1e9 || (value !== 0 && Math.abs(value) <= 1e-9);

function rangeOf(min: number | undefined, max: number | undefined, unit: string): string {
  const c = m.calculations;
  const low = min === undefined || isFar(min) ? null : show(min, unit, 6);
  const high = max === undefined || isFar(max) ? null : show(max, unit, 6);
  if (low !== null && high !== null) return c.between(low, high);
  if (low !== null) return c.atLeast(low);
  return high === null ? '' : c.atMost(high);
}

const joined = (parts: readonly string[]) => parts.filter((part) => part !== '').join(' · ');
