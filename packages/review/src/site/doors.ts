import type { Vec3 } from '@coveline/model';
import { type Cylinder, cylindersOf, endOf, onLine } from '../geometry/cylinders.ts';
import { type Extent, extentOf, overlap } from '../geometry/extent.ts';
import { dot, minus, plus } from '../geometry/vector.ts';
import type { Known } from '../parts/known.ts';
import { partName, type SiteProposal } from './proposal.ts';

/** A hinge is this thin at most, and its pieces share an axis within this, mm. */
const hingeRadius_mm = 30;
const sameAxis_mm = 0.5;
/** A leaf hangs this close to the axis of its hinges, mm. */
const nearAxis_mm = 20;
/** What touches the leaf within this swings with it: hinge leaves, handles, seals, mm. */
const fastened_mm = 0.5;
/** A leaf is at least this long along the axis. */
const leastLeaf_mm = 60;

const leafNouns = new Set(['door', 'window', 'guard', 'lid']);
const swingNouns = new Set(['hinge', 'gasket', 'door']);

/** Leaves beside the common axis of hinges, and parts named doors whose hinges are not drawn: those as a guess. */
export function proposeDoors(known: Known): readonly SiteProposal[] {
  const axes = hingeAxes(known);
  return known.model.parts.flatMap((_, p): SiteProposal[] => {
    const hit = known.is[p];
    if (hit?.from !== 'name' || !leafNouns.has(hit.noun) || !isLeaf(known, p)) return [];
    const extent = known.extents[p];
    const axis = axes.find((a) => overlap(a.box, extent, nearAxis_mm));
    if (axis)
      return [
        doorOf(
          known,
          p,
          axis.at,
          axis.direction,
          axis.hinges >= 2 ? 'high' : 'medium',
          `It hangs on ${axis.hinges} hinge${axis.hinges === 1 ? '' : 's'} with one axis.`,
        ),
      ];
    return hit.noun === 'door' ? [unhinged(known, p)] : [];
  });
}

interface HingeAxis {
  readonly at: Vec3;
  readonly direction: Vec3;
  readonly box: Extent;
  readonly hinges: number;
}

/** Lines that the round pieces of hinges share; pieces that meet end to end are one hinge. */
function hingeAxes({ model, is }: Known): readonly HingeAxis[] {
  const lines: { first: Cylinder; pieces: Cylinder[] }[] = [];
  for (let p = 0; p < model.parts.length; p++) {
    if (is[p]?.noun !== 'hinge') continue;
    for (const c of cylindersOf(model, p)) {
      if (c.radius > hingeRadius_mm || c.round < 0.5) continue;
      const line = lines.find((l) => onLine(l.first, c.origin, c.direction, sameAxis_mm));
      if (line) line.pieces.push(c);
      else lines.push({ first: c, pieces: [c] });
    }
  }
  return lines
    .filter((l) => l.pieces.length >= 2)
    .map(({ first, pieces }) => {
      const ends = pieces.flatMap((c) => [endOf(c, 'from'), endOf(c, 'to')]);
      const spans = pieces
        .map((c) =>
          [endOf(c, 'from'), endOf(c, 'to')].map((e) => dot(minus(e, first.origin), first.direction)),
        )
        .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const)
        .sort((a, b) => a[0] - b[0]);
      let hinges = 0;
      let reached = -Infinity;
      for (const [from, to] of spans) {
        if (from > reached + hingeRadius_mm) hinges++;
        reached = Math.max(reached, to);
      }
      const along = (spans[0][0] + reached) / 2;
      const box = extentOf(Float64Array.from(ends.flat()));
      return { at: plus(first.origin, first.direction, along), direction: first.direction, box, hinges };
    });
}

/** Thin beside its other two sides. */
function isLeaf({ extents }: Known, part: number): boolean {
  const { low, high } = extents[part];
  const [thin, middle, long] = [0, 1, 2].map((i) => high[i] - low[i]).sort((a, b) => a - b);
  return long >= leastLeaf_mm && thin < 0.35 * middle;
}

function unhinged(known: Known, part: number): SiteProposal {
  const { low, high } = known.extents[part];
  // The left edge, as seen from outside of a door in the front.
  const at: Vec3 = [low[0], (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  return doorOf(
    known,
    part,
    at,
    [0, 0, 1],
    'low',
    'Its name says door; no hinge is drawn, so the axis at its left edge is a guess.',
  );
}

function doorOf(
  known: Known,
  part: number,
  at: Vec3,
  axis: Vec3,
  confidence: SiteProposal['confidence'],
  why: string,
): SiteProposal {
  const { model, extents, is } = known;
  const { id } = model.parts[part];
  const with_ = model.parts.flatMap((other, p) =>
    p !== part &&
    swingNouns.has(is[p]?.noun ?? '') &&
    isLeaf(known, p) &&
    overlap(extents[p], extents[part], fastened_mm)
      ? [other.id]
      : [],
  );
  const more = with_.length === 0 ? '' : ` ${with_.length} parts that touch it swing with it.`;
  return {
    id: `door:${id}`,
    item: { what: 'door', parts: [id, ...with_], hinge: { at_mm: [...at], axis: [...axis] } },
    confidence,
    reason: `"${partName(id)}": ${why.charAt(0).toLowerCase()}${why.slice(1)}${more}`,
  };
}
