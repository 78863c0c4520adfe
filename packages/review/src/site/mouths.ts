import type { Vec3 } from '@coveline/model';
import { firstHit, newHit, treeOf } from '@coveline/survey';
import { cylindersOf, endOf } from '../geometry/cylinders.ts';
import { type Mouth, mouthOf } from '../geometry/mouth.ts';
import type { Known } from '../parts/known.ts';
import { partName, type SiteProposal } from './proposal.ts';

/** A vessel is at least this deep, as a share of the radius of its mouth. */
const leastDepth = 0.5;
/** The mouth of an unnamed vessel is at least this wide, and its rim this close to the top of the part, mm. */
const leastRadius_mm = 12;
const rim_mm = 2;
/** A bore goes all round; the round edge of a box does not. */
const leastRound = 0.9;

/**
 * Open containers by name with an open rim, hoppers and tanks that are open at the top, and upright bores open at the
 * top that repeat: those may be containers that nobody named.
 */
export function proposeMouths(known: Known): readonly SiteProposal[] {
  const { model, is, mouths } = known;
  const out: SiteProposal[] = [];
  const done = new Set<number>();
  const propose = (mouth: Mouth, confidence: SiteProposal['confidence'], reason: string) => {
    const { id } = model.parts[mouth.part];
    done.add(mouth.part);
    out.push({
      id: `mouth:${id}`,
      item: {
        what: 'mouth',
        parts: [id],
        at_mm: [...mouth.at_mm],
        outward: [0, 0, 1],
        radius_mm: Math.sqrt(mouth.half_mm[0] * mouth.half_mm[1]),
      },
      confidence,
      reason,
    });
  };
  for (const { mouth: fromRim } of mouths) {
    // Exact where CAD faces have the bore of the mouth.
    const mouth = boreMouth(known, fromRim.part) ?? fromRim;
    const depth = depthBelow(known, mouth);
    const word = is[mouth.part]?.word ?? 'container';
    if (depth === null) continue;
    propose(
      mouth,
      'high',
      `Its name says "${word}", and it is open at the top and ${Math.round(depth)} mm deep.`,
    );
  }
  for (let p = 0; p < model.parts.length; p++) {
    const noun = is[p]?.from === 'name' ? is[p]?.noun : undefined;
    if (noun !== 'hopper' && noun !== 'tank') continue;
    const mouth = mouthOf(model, p);
    const depth = depthBelow(known, mouth);
    if (depth === null) continue;
    if (noun === 'hopper')
      propose(mouth, 'medium', 'A hopper that is open at the top: product lies open in it.');
    else
      propose(
        mouth,
        'low',
        'A tank that is open at the top; whether product is in it, its name does not say.',
      );
  }
  for (const p of alikeBores(known)) {
    if (done.has(p) || known.isPack(p) || is[p]?.from === 'name') continue;
    const mouth = boreMouth(known, p);
    if (mouth && depthBelow(known, mouth) !== null)
      propose(
        mouth,
        'low',
        `An upright bore, open at the top, and several parts are like "${partName(model.parts[p].id)}".`,
      );
  }
  return out;
}

/** How deep one looks into it from above; null where it is closed or shallow. */
function depthBelow({ model }: Known, { at_mm, half_mm }: Mouth): number | null {
  const hit = newHit();
  const [x, y, z] = at_mm;
  const isHit = firstHit(treeOf(model), x, y, z + 0.01, 0, 0, -1, 1e5, hit);
  const depth = isHit ? hit.t : 0;
  return depth > leastDepth * Math.min(...half_mm) ? depth : null;
}

/** Parts of a shape that is placed more than once. */
function alikeBores({ model }: Known): readonly number[] {
  const count = new Map<number, number>();
  for (const { shape } of model.parts) count.set(shape, (count.get(shape) ?? 0) + 1);
  return model.parts.flatMap(({ shape }, p) => ((count.get(shape) ?? 0) > 1 ? [p] : []));
}

function boreMouth({ model, extents }: Known, part: number): Mouth | null {
  const top = extents[part].high[2];
  for (const bore of cylindersOf(model, part)) {
    if (
      !bore.hollow ||
      bore.round < leastRound ||
      bore.radius < leastRadius_mm ||
      Math.abs(bore.direction[2]) < 0.999
    )
      continue;
    const upper: Vec3 = endOf(bore, bore.direction[2] > 0 ? 'to' : 'from');
    const half = [bore.radius, bore.radius] as const;
    if (Math.abs(upper[2] - top) < rim_mm) return { part, at_mm: [upper[0], upper[1], top], half_mm: half };
  }
  return null;
}
