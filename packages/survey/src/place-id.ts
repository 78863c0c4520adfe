import type { Vec3 } from '@coveline/model';

export type PlaceKind =
  | 'pool'
  | 'flat'
  | 'corner'
  | 'gap'
  | 'joint'
  | 'hollow'
  | 'blind'
  | 'leg'
  | 'member'
  | 'weld'
  | 'fastener'
  | 'thread'
  | 'shadow'
  | 'sky'
  | 'overhang'
  | 'floor'
  | 'wall'
  | 'door'
  | 'hand-opening'
  | 'hand-unreached'
  | 'tool-opening'
  | 'tool-unreached';

/** Positions are rounded to this before they enter an id, so that noise in the last digits does not rename a place. */
const rounding_mm = 5;

/**
 * Names the places of one measure: `<kind>-<8 hex digits>` from the ids of the parts (any order) and the position
 * rounded to 5 mm; the n-th namesake gets `-n` behind it, so hand the places over in an order of their own.
 */
export function placeNamer(kind: PlaceKind): (parts: readonly string[], at_mm: Vec3) => string {
  const seen = new Map<string, number>();
  return (parts, at_mm) => {
    // `+ 0` turns -0 into 0.
    const cell = at_mm.map((c) => Math.round(c / rounding_mm) + 0);
    const base = `${kind}-${fnv1a(`${[...parts].sort().join('\n')}\n${cell.join(',')}`)}`;
    const count = (seen.get(base) ?? 0) + 1;
    seen.set(base, count);
    return count === 1 ? base : `${base}-${count}`;
  };
}

/** FNV-1a, 32 bit, over UTF-16 code units, as 8 hex digits (Fowler, Noll, Vo; RFC 9923). */
function fnv1a(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
