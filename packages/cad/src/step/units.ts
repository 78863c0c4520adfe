/** Length unit of a representation context, as a factor to millimetres. */
import {
  type Attribute,
  attributes,
  type Instance,
  instance,
  numberOf,
  refOf,
  refsOf,
  wordOf,
} from './parse.ts';
import type { Part21Index } from './scan.ts';

/** SI prefixes as ISO 10303-41 spells them. */
const prefixes: Readonly<Record<string, number>> = {
  EXA: 1e18,
  PETA: 1e15,
  TERA: 1e12,
  GIGA: 1e9,
  MEGA: 1e6,
  KILO: 1e3,
  HECTO: 1e2,
  DECA: 10,
  DECI: 0.1,
  CENTI: 0.01,
  MILLI: 1e-3,
  MICRO: 1e-6,
  NANO: 1e-9,
  PICO: 1e-12,
  FEMTO: 1e-15,
  ATTO: 1e-18,
};

/** Millimetres per unit in the context; undefined where the context names no length unit that can be followed. */
export function millimetresPerUnit(index: Part21Index, context: number): number | undefined {
  const units = attributes(instance(index, context), 'GLOBAL_UNIT_ASSIGNED_CONTEXT');
  // Simple instances repeat the attributes of representation_context first; the units are the last list.
  for (const id of refsOf(units[units.length - 1])) {
    const unit = instance(index, id);
    if (!unit?.by.has('LENGTH_UNIT')) continue;
    const metres = metresOf(index, unit, 0);
    if (metres !== undefined) return metres * 1000;
  }
  return undefined;
}

function metresOf(index: Part21Index, unit: Instance, depth: number): number | undefined {
  const si = attributes(unit, 'SI_UNIT');
  if (si.length > 0) {
    const prefix = wordOf(si[si.length - 2]);
    const factor = prefix === '' ? 1 : prefixes[prefix];
    return wordOf(si[si.length - 1]) === 'METRE' ? factor : undefined;
  }
  const conversion = attributes(unit, 'CONVERSION_BASED_UNIT');
  if (conversion.length === 0 || depth > 4) return undefined;
  const measure = instance(index, refOf(conversion[conversion.length - 1]));
  const parts: readonly Attribute[] = measure?.by.has('MEASURE_WITH_UNIT')
    ? attributes(measure, 'MEASURE_WITH_UNIT')
    : attributes(measure);
  const value = numberOf(parts[0]);
  const base = instance(index, refOf(parts[1]));
  const metres = base && metresOf(index, base, depth + 1);
  return metres !== undefined && value > 0 && Number.isFinite(value) ? value * metres : undefined;
}
