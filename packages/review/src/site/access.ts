import type { Vec3 } from '@coveline/model';
import { firstHit, newHit, treeOf } from '@coveline/survey';
import { around } from '../geometry/extent.ts';
import type { Known } from '../parts/known.ts';
import type { Confidence, SiteProposal } from './proposal.ts';

const sides = [
  { name: 'front', outward: [0, -1, 0] },
  { name: 'left', outward: [-1, 0, 0] },
  { name: 'right', outward: [1, 0, 0] },
  { name: 'back', outward: [0, 1, 0] },
] as const satisfies readonly { name: string; outward: Vec3 }[];

/** Rays a side, along its width and its height. */
const across = 24;
/** What a ray meets within this share of the depth closes the side there; what lies deeper can be reached into. */
const shallow = 0.25;
/** A side that is closed by more than this is no side to reach in from. */
const closedShare = 0.6;

/** The four sides: the one with the controls is where people stand; one that sheets close is only a guess. */
export function proposeAccess(known: Known): readonly SiteProposal[] {
  if (known.model.parts.length === 0) return [];
  const { low, high } = around(known.extents);
  const controls = controlsSide(known, low, high);
  return sides.map(({ name, outward }) => {
    const closed = closedBy(known, low, high, outward);
    const percent = Math.round(100 * closed);
    const hasControls = controls === name;
    const confidence: Confidence = hasControls ? 'high' : closed > closedShare ? 'low' : 'medium';
    const reason = hasControls
      ? 'The controls are nearest to this side.'
      : closed > closedShare
        ? `${percent} % of this side is closed near its surface.`
        : `Only ${percent} % of this side is closed near its surface.`;
    return { id: `access:${name}`, item: { what: 'access', outward: [...outward] }, confidence, reason };
  });
}

/** The side to which most named controls are nearest. */
function controlsSide({ extents, is }: Known, low: Vec3, high: Vec3): string | null {
  const votes = new Map<string, number>();
  extents.forEach((extent, p) => {
    if (is[p]?.noun !== 'control' || is[p]?.from !== 'name') return;
    const gap = ({ outward }: { outward: Vec3 }) => {
      const axis = outward[0] === 0 ? 1 : 0;
      return outward[axis] < 0 ? extent.low[axis] - low[axis] : high[axis] - extent.high[axis];
    };
    const nearest = sides.reduce((best, side) => (gap(side) < gap(best) ? side : best));
    votes.set(nearest.name, (votes.get(nearest.name) ?? 0) + 1);
  });
  const [most] = [...votes].sort((a, b) => b[1] - a[1]);
  return most?.[0] ?? null;
}

/** Share of the rays from outside that meet something near the surface. */
function closedBy({ model }: Known, low: Vec3, high: Vec3, outward: Vec3): number {
  const tree = treeOf(model);
  const hit = newHit();
  const axis = outward[0] === 0 ? 1 : 0;
  const along = 1 - axis;
  const depth = high[axis] - low[axis];
  const start = outward[axis] < 0 ? low[axis] - 1 : high[axis] + 1;
  let met = 0;
  for (let i = 0; i < across; i++) {
    for (let j = 0; j < across; j++) {
      const from: [number, number, number] = [0, 0, low[2] + ((j + 0.5) / across) * (high[2] - low[2])];
      from[axis] = start;
      from[along] = low[along] + ((i + 0.5) / across) * (high[along] - low[along]);
      if (firstHit(tree, ...from, -outward[0], -outward[1], 0, 1 + shallow * depth, hit)) met++;
    }
  }
  return met / (across * across);
}
