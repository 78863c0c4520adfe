/** Cables that run side by side without room to clean between them. */
import { formatQuantity } from '@coveline/quantity';
import type { NarrowGap } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { some, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { firstId, firstInForce, limitOf, partsAt, type Scene, strictestArea } from '../scene.ts';

export function cableBundles(scene: Scene): RuleResult {
  const gaps = (scene.survey.measures.narrowGaps?.places ?? []).filter((g) => cablesAt(scene, g).length > 1);
  return {
    drafts: bundles(scene, gaps).flatMap((bundle) => {
      const draft = draftOf(scene, bundle);
      return draft ? [draft] : [];
    }),
    settles: ['cable-open'],
    basis: `${gaps.length} gaps between parts that are named as cables`,
    notes: [],
  };
}

const cablesAt = (scene: Scene, gap: NarrowGap) =>
  partsAt(scene, gap).filter((p) => scene.known.is[p]?.noun === 'cable');

interface Bundle {
  readonly cables: Set<number>;
  readonly gaps: NarrowGap[];
}

/** Gaps that share a cable belong to one bundle. */
function bundles(scene: Scene, gaps: readonly NarrowGap[]): readonly Bundle[] {
  let out: Bundle[] = [];
  for (const gap of gaps) {
    const merged: Bundle = { cables: new Set(cablesAt(scene, gap)), gaps: [gap] };
    const rest: Bundle[] = [];
    for (const b of out) {
      if (![...b.cables].some((p) => merged.cables.has(p))) {
        rest.push(b);
        continue;
      }
      for (const p of b.cables) merged.cables.add(p);
      merged.gaps.unshift(...b.gaps);
    }
    out = [...rest, merged];
  }
  return out;
}

function draftOf(scene: Scene, { cables, gaps }: Bundle): Draft | null {
  const parts = [...cables].sort((a, b) => a - b);
  const area = strictestArea(scene, parts);
  const demand = firstInForce(scene, ['cable-open'], area === 'food' ? 'splash' : area);
  if (!demand) return null;
  const sorted = [...gaps].sort((a, b) => b.area_cm2 - a.area_cm2 || (a.id < b.id ? -1 : 1));
  const wall = sorted.reduce((sum, g) => sum + g.area_cm2, 0);
  const names = [...new Set(parts.map((p) => theName(scene.known.model.parts[p].name)))];
  const below = formatQuantity(scene.survey.settings.gapBelow_mm, 'mm');
  return {
    demand,
    limit: limitOf(demand, 'spacing', 'splash'),
    status: 'notMet',
    measure: 'narrowGaps',
    anchor: firstId(scene, parts),
    places: sorted,
    parts,
    area,
    title: `${parts.length} cables run closer together than ${below}: ${some(names)}`,
    numbers: [measured('Wall', wall, 'cm2', 'area of one of the two walls, all places')],
    why: 'Nothing gets between bundled cables: soil and water stay from one cleaning to the next, and jackets chafe.',
    harm: 'keeps',
    weight: wall,
    weightLabel: 'cm² of wall that nothing reaches',
    caveats: ['Cables are known by their names.', ...sorted.flatMap((g) => g.caveats ?? [])],
  };
}
