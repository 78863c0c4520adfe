import { type CalculationEntry, inputName } from '@coveline/engineering';
import type { Given } from './given.ts';

/** Servers take addresses of some 8 000 characters at least (RFC 9110, 4.1); the rest is for the host and the path. */
const longestQuery = 7000;

/** What an address says of the inputs of a calculation, by key: `?bore=2+in&flow=44+gpm`. */
export function readLink(query: string, entry: CalculationEntry): Record<string, string> {
  return textsByKey(Object.fromEntries(new URLSearchParams(query)), entry);
}

/** Texts by key of the input, from texts by key or by short name. */
export function textsByKey(
  texts: Readonly<Record<string, string>>,
  entry: CalculationEntry,
): Record<string, string> {
  const given: Record<string, string> = {};
  for (const key of Object.keys(entry.inputs)) {
    const text = texts[inputName(key)] ?? texts[key] ?? '';
    if (text !== '') given[key] = text;
  }
  return given;
}

/** The query that brings the inputs back, and the keys of those that are too long for it. */
export function writeLink(given: Given, entry: CalculationEntry): { query: string; leftOut: string[] } {
  let query = '';
  const leftOut: string[] = [];
  for (const key of Object.keys(entry.inputs)) {
    const value = given[key];
    if (value === undefined || value === '') continue;
    const pair = typeof value === 'string' ? new URLSearchParams([[inputName(key), value]]).toString() : null;
    if (pair === null || query.length + pair.length >= longestQuery) leftOut.push(key);
    else query += `${query === '' ? '?' : '&'}${pair}`;
  }
  return { query, leftOut };
}
