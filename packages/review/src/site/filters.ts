import { firstHit, newHit, treeOf } from '@coveline/survey';
import { type Rectangle, rectanglesOf } from '../geometry/rectangles.ts';
import { dot, length, minus } from '../geometry/vector.ts';
import type { Known, OpenMouth } from '../parts/known.ts';
import { partName, type SiteProposal } from './proposal.ts';

/** A filter face is larger than this, and a hood that nobody named as one, mm2. */
const leastArea_mm2 = 20_000;
const leastUnnamed_mm2 = 150_000;
/** It looks down: cosine between its normal and the plumb line. */
const down = -0.5;
/** Points on a face, along each side, that one looks at from a mouth. */
const looks = 7;

interface Candidate {
  readonly part: number;
  readonly face: Rectangle;
  readonly over: number;
}

/** Downward rectangles that are seen from open mouths below: those of named filters; else the largest, as a guess. */
export function proposeFilters(known: Known): readonly SiteProposal[] {
  const { model, mouths, is } = known;
  if (mouths.length === 0) return [];
  const named = (p: number) => is[p]?.from === 'name' && is[p]?.noun === 'filter';
  const ofNamed = candidates(known, named, leastArea_mm2);
  if (ofNamed.length > 0)
    return ofNamed.map((c) =>
      proposal(known, c, 'high', `Its name says "${is[c.part]?.word}", and ${seen(c, mouths)}.`),
    );
  const [largest] = candidates(
    known,
    (p) => !known.isPack(p) && is[p]?.noun !== 'frame',
    leastUnnamed_mm2,
  ).sort((a, b) => b.face.area_mm2 - a.face.area_mm2);
  if (!largest) return [];
  const name = partName(model.parts[largest.part].id);
  return [
    proposal(
      known,
      largest,
      'low',
      `No face of a named filter is seen from the open containers; the large face of "${name}" looks down, and ${seen(largest, mouths)}.`,
    ),
  ];
}

const seen = ({ over }: Candidate, mouths: readonly OpenMouth[]) =>
  `its face is seen from ${over} of ${mouths.length} open containers`;

function candidates(known: Known, isOne: (part: number) => boolean, least_mm2: number): Candidate[] {
  const { model } = known;
  return model.parts.flatMap((_, part) => {
    if (!isOne(part) || !mayCover(known, part, least_mm2)) return [];
    return rectanglesOf(model, part, least_mm2)
      .filter((face) => face.normal[2] < down)
      .map((face) => ({
        part,
        face,
        over: known.mouths.filter(({ mouth }) => sees(known, mouth.at_mm, part, face)).length,
      }))
      .filter((c) => c.over > 0);
  });
}

/** Large enough seen from below, and above a mouth: looking for its faces is worth the time. */
function mayCover({ extents, mouths }: Known, part: number, least_mm2: number): boolean {
  const { low, high } = extents[part];
  const isLarge = (high[0] - low[0]) * (high[1] - low[1]) >= 0.5 * least_mm2;
  return isLarge && mouths.some(({ mouth }) => high[2] > mouth.at_mm[2]);
}

/** Whether a ray from the mouth meets the face before anything else. */
function sees(
  { model }: Known,
  from: readonly [number, number, number],
  part: number,
  face: Rectangle,
): boolean {
  const hit = newHit();
  const { at_mm: at, across_mm: a, along_mm: b } = face;
  if (dot(minus(from, at), face.normal) <= 0) return false;
  for (let i = 0; i < looks; i++) {
    for (let j = 0; j < looks; j++) {
      const [s, t] = [i, j].map((k) => (2 * (k + 0.5)) / looks - 1);
      const to = [0, 1, 2].map((x) => at[x] + s * a[x] + t * b[x]) as [number, number, number];
      const way = minus(to, from);
      const far = length(way);
      const unit = [way[0] / far, way[1] / far, way[2] / far] as const;
      // Begins above the rim, so that the container itself is not in the way.
      if (!firstHit(treeOf(model), from[0], from[1], from[2] + 1, ...unit, far + 10, hit)) continue;
      if (hit.part === part && hit.t > 0.9 * far) return true;
    }
  }
  return false;
}

function proposal(
  { model }: Known,
  { part, face }: Candidate,
  confidence: SiteProposal['confidence'],
  reason: string,
): SiteProposal {
  const { id } = model.parts[part];
  const { at_mm, normal, across_mm, along_mm } = face;
  return {
    id: `filter:${id}`,
    item: {
      what: 'filter',
      parts: [id],
      at_mm: [...at_mm],
      flow: [...normal],
      across_mm: [...across_mm],
      along_mm: [...along_mm],
    },
    confidence,
    reason,
  };
}
