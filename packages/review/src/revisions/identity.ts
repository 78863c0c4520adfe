/** Which part of a revision is which part of the one before: by name, by shape, or as a piece of what it was. */
import type { Model } from '@coveline/model';
import { boxVolume, type Extent, extentsOf, middle } from '../geometry/extent.ts';

export interface PartIdentity {
  /** Id before, by id now; a part that is new is absent. Several pieces may come from one part. */
  readonly was: ReadonlyMap<string, string>;
  /** Ids that are in neither, and what was renamed, for the record. */
  readonly added: readonly string[];
  readonly removed: readonly string[];
  readonly renamed: readonly (readonly [before: string, now: string])[];
  /** Several parts now that lie where one was. */
  readonly split: readonly (readonly [before: string, now: readonly string[]])[];
}

/** A piece lies with this share of its box in the box of what it was cut from. */
const inside = 0.9;

export function identify(before: Model, now: Model): PartIdentity {
  const was = new Map<string, string>();
  const old = new Map(before.parts.map((part, p) => [part.id, p]));
  for (const { id } of now.parts) if (old.has(id)) was.set(id, id);
  const extents = { before: extentsOf(before), now: extentsOf(now) };
  const renamed = byShape(before, now, was, extents);
  const kept = new Set(was.values());
  const split = byPlace(before, now, was, kept, extents);
  const known = new Set(was.values());
  return {
    was,
    added: now.parts.filter((p) => !was.has(p.id)).map((p) => p.id),
    removed: before.parts.filter((p) => !known.has(p.id)).map((p) => p.id),
    renamed,
    split,
  };
}

interface Extents {
  readonly before: readonly Extent[];
  readonly now: readonly Extent[];
}

/** The same shape under another name, the nearest pairs first. */
function byShape(before: Model, now: Model, was: Map<string, string>, extents: Extents): [string, string][] {
  const gone = new Set(before.parts.map((p) => p.id).filter((id) => !was.has(id)));
  const pairs: { from: string; to: string; apart: number }[] = [];
  now.parts.forEach((n, i) => {
    if (was.has(n.id)) return;
    before.parts.forEach((b, j) => {
      if (!gone.has(b.id) || before.shapes[b.shape].hash !== now.shapes[n.shape].hash) return;
      pairs.push({ from: b.id, to: n.id, apart: distance(extents.before[j], extents.now[i]) });
    });
  });
  pairs.sort((x, y) => x.apart - y.apart || (x.to < y.to ? -1 : 1));
  const out: [string, string][] = [];
  for (const { from, to } of pairs) {
    if (!gone.has(from) || was.has(to)) continue;
    gone.delete(from);
    was.set(to, from);
    out.push([from, to]);
  }
  return out;
}

/** Pieces that lie where a part was that is gone. */
function byPlace(
  before: Model,
  now: Model,
  was: Map<string, string>,
  kept: ReadonlySet<string>,
  extents: Extents,
): [string, string[]][] {
  const pieces = new Map<string, string[]>();
  now.parts.forEach((n, i) => {
    if (was.has(n.id)) return;
    const j = before.parts.findIndex(
      (b, k) => !kept.has(b.id) && shareInside(extents.now[i], extents.before[k]) >= inside,
    );
    if (j < 0) return;
    const { id } = before.parts[j];
    pieces.set(id, [...(pieces.get(id) ?? []), n.id]);
  });
  for (const [id, list] of pieces) for (const piece of list) was.set(piece, id);
  return [...pieces];
}

function distance(a: Extent, b: Extent): number {
  const [p, q] = [middle(a), middle(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

function shareInside(a: Extent, b: Extent): number {
  const low = a.low.map((v, i) => Math.max(v, b.low[i]));
  const high = a.high.map((v, i) => Math.min(v, b.high[i]));
  if (high.some((h, i) => h < low[i])) return 0;
  const all = boxVolume(a);
  if (all === 0) return 1;
  return low.reduce((volume, l, i) => volume * (high[i] - l), 1) / all;
}
