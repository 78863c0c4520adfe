/** Heads that are driven from within: a hexagon socket, a slot, a cross, in a round body about the same axis. */
import type { Recognised } from '../result.ts';
import { type Around, crossings } from './axis.ts';
import { helixAbout } from './helix.ts';
import { assumedThread } from './hexagon-heads.ts';
import type { Hexagon } from './hexagons.ts';
import type { LocalFasteners, LocalHead, LocalThread } from './local.ts';
import type { Recess } from './recesses.ts';
import { type Round, roundsAbout } from './rounds.ts';
import { shanksOf } from './shank.ts';

/** Of M48 socket head screws (ISO 4762; from memory). */
const widestSocket_mm = 36;
/** Depth over width of a socket: up to the length of the screw in set screws. */
const deepest = 3;
/** Diameter of the head over the width of the socket: 1.8 to 3 (ISO 4762, ISO 7380; from memory). */
const aroundSocket = [1.15, 3.3] as const;
/** Diameter of the head over the width of a slot: 4 to 10 (ISO 1207, 1580, 2009; from memory); of a cross about 5. */
const aroundSlot = [2.5, 14] as const;

export function fromSocket(near: Around, hexagon: Hexagon, by: Recognised): LocalFasteners {
  const { acrossFlats_mm: s, from, to } = hexagon;
  if (s > widestSocket_mm || to - from > deepest * s) return { heads: [], threads: [] };
  // Blind: a line along the axis meets a floor, flat or pointed, at one end only.
  const hits = crossings(near, 1.3e-7 * s, 0.7e-7 * s);
  const floorAt = (end: number, outwards: 1 | -1) =>
    hits.some((z) => (z - end) * outwards > -0.1 * (to - from) && (z - end) * outwards < 0.7 * s);
  const floors = { from: floorAt(from, -1), to: floorAt(to, 1) };
  const mouth = floors.from === floors.to ? undefined : floors.from ? 1 : -1;
  if (mouth === undefined) return { heads: [], threads: [] };
  return inRoundBody(near, {
    ...hexagon,
    width_mm: s,
    ratios: aroundSocket,
    mouth,
    kind: 'hexagonSocket',
    without: hexagon.triangles,
    by,
  });
}

export function fromRecess(near: Around, recess: Recess, by: Recognised): LocalFasteners {
  return inRoundBody(near, { ...recess, ratios: aroundSlot, mouth: 1, without: new Set(), by });
}

interface Drive extends Pick<Hexagon, 'origin' | 'direction' | 'from' | 'to'> {
  readonly kind: LocalHead['kind'];
  readonly width_mm: number;
  readonly ratios: readonly [number, number];
  /** The side of the axis to which the recess opens. */
  readonly mouth: 1 | -1;
  readonly without: ReadonlySet<number>;
  readonly acrossFlats_mm?: number;
  readonly by: Recognised;
}

/** A recess counts where a round body stands about it: a head on a shank, or a screw without a head. */
function inRoundBody(near: Around, drive: Drive): LocalFasteners {
  const { origin, direction, width_mm: w, from, to, mouth, by } = drive;
  const axis = { origin, direction };
  const [low, high] = [(drive.ratios[0] * w) / 2, (drive.ratios[1] * w) / 2];
  const rounds = roundsAbout(near, high, drive.without).filter((r) => !r.hollow);
  const floor = mouth > 0 ? from : to;
  const top = mouth > 0 ? to : from;
  const outer = helixAbout(near, high, false);
  const body = rounds
    .filter((r) => r.radius_mm > low && Math.min(r.to, to) - Math.max(r.from, from) > 0.3 * (to - from))
    .sort((a, b) => a.radius_mm - b.radius_mm)[0];
  const half_mm = body?.radius_mm ?? widestAt(near, from, to, high);
  const [stem] = shanksOf(near, rounds, {
    from: body ? body.from : Math.min(floor, top),
    to: body ? body.to : Math.max(floor, top),
    half_mm,
  }).filter(({ side }) => side === -mouth);
  if (half_mm < low || !(body || stem || outer)) return { heads: [], threads: [] };
  const drawn: LocalThread[] = outer ? [{ ...axis, ...outer, by, weak: false, caveats: [] }] : [];
  const plain = stem
    ? [{ from: Math.min(stem.at, stem.end), to: Math.max(stem.at, stem.end), radius_mm: stem.radius_mm }]
    : body && isScrewLong(body)
      ? [{ from: body.from, to: body.to, radius_mm: body.radius_mm }]
      : [];
  if (drawn.length === 0 && plain.length === 0) return { heads: [], threads: [] };
  const threads = outer
    ? drawn
    : plain.map(
        (p): LocalThread => ({ ...axis, ...p, inside: false, by, weak: false, caveats: [assumedThread] }),
      );
  const head: LocalHead = {
    ...axis,
    kind: drive.kind,
    ...(drive.acrossFlats_mm === undefined ? {} : { acrossFlats_mm: drive.acrossFlats_mm }),
    diameter_mm: 2 * half_mm,
    from: stem && body ? body.from : Math.min(floor, top),
    to: stem && body ? body.to : Math.max(floor, top),
    radius_mm: half_mm,
    by,
    weak: false,
    caveats: [],
  };
  return { heads: [head], threads };
}

/** A screw without a head is at least half as long as it is thick. */
const isScrewLong = ({ from, to, radius_mm }: Round) => to - from > radius_mm;

/** Greatest distance from the axis of what stands at the height of the recess, up to a limit, mm. */
function widestAt({ corners: c }: Around, from: number, to: number, limit: number): number {
  let widest = 0;
  for (let i = 0; i < c.length; i += 3) {
    if (c[i + 2] < from - 1e-6 || c[i + 2] > to + 1e-6) continue;
    const r = Math.hypot(c[i], c[i + 1]);
    if (r > widest && r <= limit) widest = r;
  }
  return widest;
}
