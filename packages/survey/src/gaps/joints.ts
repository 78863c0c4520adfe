import type { Model } from '@coveline/model';
import type { Drawing, Joint } from '../result.ts';
import type { Sealed } from '../sealed.ts';
import { chainPieces } from '../weld/chain.ts';
import { boundsOf, middleOf } from '../weld/polyline.ts';
import { isFlush } from './is-open.ts';
import { joinLines, type LinePiece } from './join-lines.ts';
import type { Eye } from './look.ts';
import type { Segment } from './region.ts';
import type { CrossingLine } from './true-crossings.ts';
import type { Contact } from './walls.ts';

export interface FoundJoint {
  readonly place: Omit<Joint, 'id'>;
  readonly drawing: Drawing;
}

/** Shorter joint lines than this are noise of the triangles. */
const leastLength_mm = 0.5;

/** A piece of a joint: of the border of a contact, or of the line where two surfaces cross. */
interface Piece extends LinePiece {
  readonly contact?: { readonly number: number; readonly segment: Segment; readonly isLine: boolean };
}

/**
 * Joint lines of contacts and of crossings that run together. Both parts of a contact see the same line; the longer of
 * the two is taken, because a border across the middle of a wall cuts its corners short and one along the wall's own
 * edges does not.
 */
export function findJoints(
  model: Model,
  eye: Eye,
  contacts: readonly Contact[],
  crossings: readonly CrossingLine[],
  edge_mm: number,
  sealed: Sealed,
  step: () => void,
): FoundJoint[] {
  const pieces: Piece[] = [];
  for (const [number, { part, partner, segments, isLine }] of contacts.entries()) {
    for (const segment of segments) {
      pieces.push({ part, partner, a: segment.a, b: segment.b, contact: { number, segment, isLine } });
    }
  }
  for (const crossing of crossings) pieces.push(crossing);
  const joints: FoundJoint[] = [];
  for (const members of joinLines(pieces, edge_mm, step)) {
    step();
    const joint = describe(
      model,
      contacts,
      members.map((i) => pieces[i]),
      (segment) => isFlush(eye, segment, sealed),
    );
    if (joint.place.length_mm >= leastLength_mm) joints.push(joint);
  }
  return joints;
}

function describe(
  model: Model,
  contacts: readonly Contact[],
  pieces: readonly Piece[],
  flushAt: (segment: Segment) => boolean,
): FoundJoint {
  const { part, partner } = pieces[0];
  const crossing = pieces.filter((p) => !p.contact);
  const sides = [part, partner].map((own) => {
    // The tip of a wedge is a narrow contact too; where surfaces cross, that line stands for it.
    const border = pieces.filter(
      ({ contact, part: of }) => contact && of === own && !(contact.isLine && crossing.length > 0),
    );
    const regions = new Set(border.map((p) => p.contact!.number));
    return {
      border,
      length_mm: lengthOf(border),
      area_mm2: [...regions].reduce((sum, r) => sum + contacts[r].area_mm2, 0),
    };
  });
  const best = sides[0].length_mm >= sides[1].length_mm ? sides[0] : sides[1];
  const crossing_mm = lengthOf(crossing);
  const lines = chained([...best.border, ...crossing]);
  const flush_mm = lengthOf(best.border.filter((p) => flushAt(p.contact!.segment)));
  const length_mm = best.length_mm + crossing_mm;
  return {
    place: {
      parts: [model.parts[part].id, model.parts[partner].id].sort(),
      at_mm: middleOf(lines),
      bounds_mm: boundsOf(lines),
      length_mm,
      area_cm2: Math.max(sides[0].area_mm2, sides[1].area_mm2) / 100,
      flush: flush_mm > length_mm / 2,
      ...(crossing_mm > length_mm / 2 && {
        caveats: ['The parts overlap in the model; the line is where their surfaces cross.'],
      }),
    },
    drawing: { lines: lines.map((l) => Float32Array.from(l)) },
  };
}

function lengthOf(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, { a, b, contact }) => {
    const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
    return sum + (contact?.isLine ? length / 2 : length);
  }, 0);
}

/** Pieces joined end to end, mm. */
function chained(pieces: readonly Piece[]): Float64Array[] {
  const single = pieces.map(({ a, b }) => ({ points: Float64Array.of(...a, ...b), angle_deg: 0 }));
  return chainPieces(single, 1e-3).map((order) => {
    const points: number[] = [];
    for (const [i, step] of order.entries()) {
      const p = single[step < 0 ? ~step : step].points;
      const [from, to] = step < 0 ? [3, 0] : [0, 3];
      if (i === 0) points.push(...p.subarray(from, from + 3));
      points.push(...p.subarray(to, to + 3));
    }
    return Float64Array.from(points);
  });
}
