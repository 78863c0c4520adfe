/** Gaps too narrow to clean. */
import type { AreaClass, Demand, Limit } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { NarrowGap } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { boxVolume } from '../geometry/extent.ts';
import { some, theName } from '../names/display.ts';
import { derived, input, measured } from '../numbers/measured.ts';
import {
  areaBetween,
  elementOf,
  firstInForce,
  isFastener,
  limitOf,
  partsAt,
  type Scene,
  twinKey,
} from '../scene.ts';

/** A recess as wide as deep is cleaned like a surface. */
const openRatio = 1;
/** Shallower gaps are seams, not crevices. */
const leastDepth_mm = 2;
/** From this depth on, sheets that screws hold together are a lap. */
const lapDepth_mm = 10;
/** Widest over touching distance from which air beside a contact is a wedge. */
const wedge = 5;
/** Smaller ones are told in one finding for all parts of an area class. */
const worthTelling_cm2: Record<AreaClass, number> = { food: 1, splash: 5, nonFood: Infinity };

interface Crevice {
  readonly gap: NarrowGap;
  readonly parts: readonly number[];
  readonly area: AreaClass;
  readonly demand: Demand;
  readonly limit: Limit | null;
  /** Up to the width that the annex of the European standards counts as joined. */
  readonly countsAsJoined: boolean;
  readonly status: 'notMet' | 'notShown';
}

export function narrowGaps(scene: Scene): RuleResult {
  const gaps = scene.survey.measures.narrowGaps?.places ?? [];
  const crevices = gaps.map((g) => judged(scene, g)).filter((c) => c !== null);
  const groups = new Map<string, Crevice[]>();
  for (const c of crevices) {
    const key = `${c.demand.id}|${c.status}|${[...new Set(c.parts.map((p) => twinKey(scene, p)))].sort().join('+')}`;
    groups.set(key, [...(groups.get(key) ?? []), c]);
  }
  const drafts: Draft[] = [];
  const trifles = new Map<AreaClass, Crevice[]>();
  for (const group of groups.values()) {
    const { area } = group[0];
    if (wall(group) >= worthTelling_cm2[area]) drafts.push(draftOf(scene, group));
    else trifles.set(area, [...(trifles.get(area) ?? []), ...group]);
  }
  for (const [area, group] of trifles) {
    const draft = small(scene, area, group);
    if (draft) drafts.push(draft);
  }
  return {
    drafts,
    settles: ['joint-flush', 'joint-gap-splash', 'sens-annulus', 'drive-mount', 'gen-ingress'],
    basis: `${gaps.length} gaps below ${scene.survey.settings.gapBelow_mm} mm looked at; those at fasteners and seals are judged apart`,
    notes: [],
  };
}

function judged(scene: Scene, gap: NarrowGap): Crevice | null {
  const parts = partsAt(scene, gap);
  if (parts.length === 0 || parts.some((p) => isApart(scene, p))) return null;
  if (parts.filter((p) => scene.known.is[p]?.noun === 'cable').length > 1) return null;
  const area = parts.length === 1 ? scene.parts[parts[0]].areaClass : areaBetween(scene, parts);
  if (gap.depth_mm < leastDepth_mm || gap.depth_mm <= openRatio * gap.width_mm) return null;
  if (isBesideContact(scene, gap)) return null;
  const isLap = gap.depth_mm >= lapDepth_mm && parts.some((p) => scene.parts[p].joint === 'bolted');
  const demand = demandOn(scene, parts, area, isLap);
  if (!demand) return null;
  const limit = limitOf(demand, 'gap', area) ?? limitOf(demand, 'depthOverWidth', area);
  const joined_mm = scene.demands.get('joint-flush')?.limits.find((l) => l.quantity === 'gap')?.atMost ?? 0;
  const countsAsJoined = gap.widest_mm <= joined_mm;
  const isShown = !countsAsJoined || demand.id === 'joint-lap';
  return { gap, parts, area, demand, limit, countsAsJoined, status: isShown ? 'notMet' : 'notShown' };
}

/**
 * Where a round lies on a face or two rounds cross, the air beside the contact narrows to nothing and opens wide: that
 * is the seam of a joint, which the joint tells, and not a gap. Faces closer than what counts as touching are a joint
 * as well.
 */
function isBesideContact(scene: Scene, gap: NarrowGap): boolean {
  const touching = 2 * scene.survey.settings.contact_mm + 0.02;
  return gap.width_mm <= touching && (gap.widest_mm >= wedge * touching || gap.widest_mm <= touching);
}

function demandOn(scene: Scene, parts: readonly number[], area: AreaClass, isLap: boolean): Demand | null {
  const elements = parts.map((p) => elementOf(scene, p));
  if (area === 'food')
    return firstInForce(
      scene,
      [elements.includes('sensor') ? 'sens-annulus' : undefined, 'joint-flush', 'gen-smooth'],
      area,
    );
  if (area === 'splash')
    return firstInForce(
      scene,
      [
        elements.includes('drive') ? 'drive-mount' : undefined,
        isLap ? 'joint-lap' : undefined,
        'joint-gap-splash',
        'gen-ingress',
      ],
      area,
    );
  return firstInForce(scene, ['gen-ingress'], area);
}

/** Fasteners, seals and containers are judged apart; so are cables side by side. */
function isApart(scene: Scene, p: number): boolean {
  const noun = scene.known.is[p]?.noun;
  return isFastener(scene, p) || scene.known.isPack(p) || noun === 'gasket';
}

function draftOf(scene: Scene, group: readonly Crevice[]): Draft {
  const sorted = byDepth(group);
  const { gap, area, demand, limit, countsAsJoined, status } = sorted[0];
  const parts = bySize(scene, [...new Set(sorted.flatMap((c) => c.parts))]);
  const first = bySize(scene, sorted[0].parts);
  const width = formatQuantity(gap.width_mm, 'mm', { digits: 2 });
  const depth = formatQuantity(gap.depth_mm, 'mm', { digits: 2 });
  const where =
    first.length > 1
      ? `Between ${theName(nameOf(scene, first[0]))} and ${theName(nameOf(scene, first[1]))}`
      : `In ${theName(nameOf(scene, first[0]))}`;
  const times = group.length > 1 ? `, at ${group.length} places` : '';
  return {
    demand,
    limit,
    status,
    measure: 'narrowGaps',
    anchor: `${status}|${firstPair(group)}`,
    places: sorted.map((c) => c.gap),
    parts,
    area,
    title: `${where} a gap of ${width} goes ${depth} deep${times}`,
    numbers: [
      measured('Width', gap.width_mm, 'mm', 'least distance across the air'),
      measured('Depth', gap.depth_mm, 'mm', 'deepest point behind the mouth, along the gap'),
      derived(
        'Depth over width',
        gap.depth_mm / gap.width_mm,
        '1',
        'r = d / w',
        [input('d', 'depth', gap.depth_mm, 'mm'), input('w', 'width', gap.width_mm, 'mm')],
        'a recess with a ratio up to about 1 is cleaned like a surface',
      ),
      measured('Wall', wall(group), 'cm2', 'area of one of the two walls, all places'),
    ],
    why: `Liquid is drawn in by capillarity and carries soil along; no brush and no jet reaches ${depth} into ${width}. It seeps out again when product is there.`,
    harm: 'keeps',
    weight: wall(group),
    weightLabel: 'cm² of wall that nothing reaches',
    caveats: [
      ...sorted.flatMap((c) => c.gap.caveats ?? []),
      ...(countsAsJoined
        ? [
            `The hygiene annex of the European food-machine standards counts faces up to ${formatQuantity(limit?.atMost ?? 0.5, 'mm')} apart as joined. Look after a rinse whether liquid stands at the seam: if it does, the gap is a fault.`,
          ]
        : []),
    ],
  };
}

function small(scene: Scene, area: AreaClass, group: readonly Crevice[]): Draft | null {
  const sorted = byDepth(group);
  const parts = [...new Set(sorted.flatMap((c) => c.parts))];
  const demand = firstInForce(scene, ['gen-ingress'], area);
  if (!demand) return null;
  const names = [...new Set(parts.map((p) => theName(nameOf(scene, p))))];
  const total = wall(group);
  return {
    demand,
    limit: null,
    status: 'notShown',
    measure: 'narrowGaps',
    anchor: `small|${area}`,
    places: sorted.map((c) => c.gap),
    parts,
    area,
    title:
      area === 'nonFood'
        ? `${group.length} gaps in the non-food area can shelter dirt and pests: ${some(names)}`
        : `${group.length} small gaps, ${formatQuantity(total, 'cm2', { digits: 2 })} of wall together: ${some(names)}`,
    numbers: [
      measured('Wall', total, 'cm2', 'sum over the gaps'),
      measured('Deepest', sorted[0].gap.depth_mm, 'mm', 'deepest point behind a mouth'),
    ],
    why:
      area === 'nonFood'
        ? 'Dust, crumbs and insects gather where nothing is wiped; from there they travel.'
        : 'Each of them is small; a look at them on the machine tells whether they take in liquid.',
    harm: 'keeps',
    slight: area === 'nonFood' ? 'it lies away from product' : 'each of the gaps is small',
    weight: total,
    weightLabel: 'cm² of wall that nothing reaches',
    caveats: [],
  };
}

/** Ids of the parts of the place that comes first in alphabetical order. */
const firstPair = (group: readonly Crevice[]) => group.map((c) => c.gap.parts.join('+')).sort()[0];

const nameOf = (scene: Scene, p: number) => scene.known.model.parts[p].name;
const bySize = (scene: Scene, parts: readonly number[]) =>
  [...parts].sort((a, b) => boxVolume(scene.known.extents[a]) - boxVolume(scene.known.extents[b]) || a - b);
const byDepth = (group: readonly Crevice[]) =>
  [...group].sort((a, b) => b.gap.depth_mm - a.gap.depth_mm || (a.gap.id < b.gap.id ? -1 : 1));
const wall = (group: readonly Crevice[]) => group.reduce((total, c) => total + c.gap.area_cm2, 0);
