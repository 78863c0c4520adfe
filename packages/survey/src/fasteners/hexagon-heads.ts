/** What an outer hexagon is: the head of a bolt, a nut, or something else that is six-sided. */
import type { Recognised } from '../result.ts';
import { type Around, crossings } from './axis.ts';
import { isDomed } from './dome.ts';
import { helixAbout } from './helix.ts';
import type { Hexagon } from './hexagons.ts';
import type { LocalFasteners, LocalHead, LocalThread } from './local.ts';
import { type Round, roundsAbout } from './rounds.ts';
import { type Shank, shanksOf } from './shank.ts';

/** Height over width across: heads 0.4, nuts 0.5, high nuts 1 (ISO 4017, 4032, 4033; from memory). A longer one is a bar. */
const heightRange = [0.1, 1.25] as const;
/** Hole over width across: 0.55 for M3, 0.67 for M64, 0.78 for lock nuts of pipe threads; wider is a ring or a vessel. */
const holeRange = [0.35, 0.82] as const;

export const assumedThread =
  'The thread is drawn as a plain cylinder; that it is one is taken from the fastener it belongs to.';
export const drawnWithoutHole = 'It is drawn without a hole or a shank.';

export function fromHexagon(near: Around, hexagon: Hexagon, by: Recognised): LocalFasteners {
  const { acrossFlats_mm: s, from, to, origin, direction } = hexagon;
  const none: LocalFasteners = { heads: [], threads: [] };
  if (to - from < heightRange[0] * s || to - from > heightRange[1] * s) return none;
  const rounds = roundsAbout(near, s, hexagon.triangles);
  const shanks = shanksOf(near, rounds, { from, to, half_mm: s / 2 });
  const axis = { origin, direction };
  const head = (kind: LocalHead['kind'], weak = false, caveats: readonly string[] = []): LocalHead => ({
    ...axis,
    kind,
    acrossFlats_mm: s,
    from,
    to,
    radius_mm: s / Math.sqrt(3),
    by,
    weak,
    caveats,
  });
  const outer = helixAbout(near, 0.55 * s, false);
  if (outer || shanks.length > 0) {
    const side = shanks[0]?.side ?? (outer && outer.from + outer.to > from + to ? 1 : -1);
    const domed = shanks.length < 2 && isDomed(near, side > 0 ? -1 : 1, side > 0 ? from : to, s / 2);
    const threads: LocalThread[] = outer
      ? [{ ...axis, ...outer, by, weak: false, caveats: [] }]
      : shanks.map((shank) => plainThread(axis, shank, by));
    return { heads: [head(domed ? 'dome' : 'hexagon')], threads };
  }
  const sides = ([1, -1] as const).filter((side) => isDomed(near, side, side > 0 ? to : from, s / 2));
  const hole = holeOf(near, rounds, hexagon);
  if (hole === 'wide') return none;
  if (hole) {
    const { open, ...bore } = hole;
    const closed = !open && sides.length === 0 ? ['It is closed at one end, by a flat face.'] : [];
    return {
      heads: [head(!open && sides.length === 1 ? 'domedNut' : 'nut', false, closed)],
      threads: [
        { ...axis, ...bore, inside: true, by, weak: false, caveats: bore.pitch_mm ? [] : [assumedThread] },
      ],
    };
  }
  if (sides.length === 1) return { heads: [head('domedNut', false, [drawnWithoutHole])], threads: [] };
  return { heads: [head('hexagon', !standsOnFace(near, hexagon), [drawnWithoutHole])], threads: [] };
}

function plainThread(
  axis: Pick<LocalThread, 'origin' | 'direction'>,
  shank: Shank,
  by: Recognised,
): LocalThread {
  return {
    ...axis,
    from: Math.min(shank.at, shank.end),
    to: Math.max(shank.at, shank.end),
    radius_mm: shank.radius_mm,
    inside: false,
    by,
    weak: false,
    caveats: [assumedThread],
  };
}

/** The hole along the axis of a hexagon; 'wide' where there is one that no nut has. */
function holeOf(near: Around, rounds: readonly Round[], { acrossFlats_mm: s, from, to }: Hexagon) {
  // A hair off the axis, where no edges of triangles meet.
  const hits = crossings(near, 1.3e-7 * s, 0.7e-7 * s).filter((z) => z > from - 0.6 * s && z < to + 1.2 * s);
  const helix = helixAbout(near, 0.5 * s, true);
  const open = hits.length === 0;
  if (helix)
    return { from: helix.from, to: helix.to, radius_mm: helix.radius_mm, pitch_mm: helix.pitch_mm, open };
  const [bore] = rounds
    .filter((r) => r.hollow && Math.min(r.to, to) - Math.max(r.from, from) > 0.4 * (to - from))
    .sort((a, b) => b.to - b.from - (a.to - a.from));
  if (!bore) return open ? 'wide' : undefined;
  const ratio = (2 * bore.radius_mm) / s;
  if (ratio > holeRange[1]) return 'wide';
  if (ratio < holeRange[0]) return undefined;
  return { from: bore.from, to: bore.to, radius_mm: bore.radius_mm, open };
}

/** A hexagon without more is a head where it stands on a wider face of its own part, with its other end free. */
function standsOnFace(near: Around, { acrossFlats_mm: s, from, to }: Hexagon): boolean {
  const beside = [0, 1, 2, 3, 4, 5].map((k) => {
    const angle = (Math.PI * (k + 0.37)) / 3;
    return crossings(near, 0.8 * s * Math.cos(angle), 0.8 * s * Math.sin(angle));
  });
  const meets = (end: number) =>
    beside.filter((hits) => hits.some((z) => Math.abs(z - end) < 0.15 * s)).length >= 5;
  const isFree = (end: number, side: 1 | -1) =>
    beside.every((hits) => !hits.some((z) => (z - end) * side > -0.15 * s));
  return (meets(from) && isFree(to, 1)) || (meets(to) && isFree(from, -1));
}
