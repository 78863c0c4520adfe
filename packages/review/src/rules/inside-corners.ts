/** Inside edges that no brush or jet gets into. */
import type { AreaClass, Demand, Limit } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { InsideCorner } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { liesIn } from '../geometry/lies-in.ts';
import { alike, some, TheName, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import {
  firstId,
  firstInForce,
  isFastener,
  limitOf,
  partsAt,
  type Scene,
  strictestArea,
  twinKey,
} from '../scene.ts';

/** Drawn radii carry rounding noise of this order. */
const noise_mm = 0.005;
/** From this share of the limit on, an edge nearly meets it. */
const nearly = 0.9;
/** Edges of a part that are shorter together are told in one finding for all parts. */
const worthTelling_mm: Record<AreaClass, number> = { food: 20, splash: 100, nonFood: Infinity };

interface Edge {
  readonly corner: InsideCorner;
  readonly part: number;
  readonly area: AreaClass;
  readonly demand: Demand;
  readonly limit: Limit;
  readonly verdict: 'sharp' | 'nearly' | 'notShown';
}

export function insideCorners(scene: Scene): RuleResult {
  const corners = scene.survey.measures.insideCorners?.places ?? [];
  const edges = corners.map((c) => judged(scene, c)).filter((e) => e !== null);
  const groups = new Map<string, Edge[]>();
  for (const e of edges) {
    const key = `${e.demand.id}|${e.verdict}|${twinKey(scene, e.part)}`;
    groups.set(key, [...(groups.get(key) ?? []), e]);
  }
  const drafts: Draft[] = [];
  const trifles = new Map<AreaClass, Edge[]>();
  for (const group of groups.values()) {
    const parts = new Set(group.map((e) => e.part)).size;
    if (sum(group) / parts >= worthTelling_mm[group[0].area]) drafts.push(draftOf(scene, group));
    else if (group[0].verdict === 'sharp')
      trifles.set(group[0].area, [...(trifles.get(group[0].area) ?? []), ...group]);
  }
  for (const [area, group] of trifles) drafts.push(short(scene, area, group));
  return {
    drafts,
    settles: ['gen-radius-food', 'gen-radius-splash'],
    basis: `${corners.length} inside edges below ${scene.survey.settings.cornerRadiusBelow_mm} mm looked at on ${scene.parts.length} parts; fasteners are judged apart`,
    notes: [],
  };
}

function judged(scene: Scene, corner: InsideCorner): Edge | null {
  const parts = partsAt(scene, corner);
  const part = parts[0];
  if (part === undefined || scene.known.isPack(part) || parts.some((p) => isFastener(scene, p))) return null;
  // The edges inside an open tube are told with the tube, those inside a closed hollow see no soil.
  if (scene.openMembers.has(part) || isEnclosed(scene, corner)) return null;
  const area = strictestArea(scene, parts);
  const demand = firstInForce(scene, ['gen-radius-food', 'gen-radius-splash'], area);
  const limit = demand && limitOf(demand, 'radius', area, corner.angle_deg);
  if (!demand || limit?.atLeast === undefined) return null;
  if (corner.radius_mm >= limit.atLeast - noise_mm) return null;
  const could = corner.from === 'triangles' ? (corner.couldHideRadius_mm ?? 0) : 0;
  if (could >= limit.atLeast) return { corner, part, area, demand, limit, verdict: 'notShown' };
  const verdict = corner.radius_mm >= nearly * limit.atLeast ? 'nearly' : 'sharp';
  return { corner, part, area, demand, limit, verdict };
}

/** The edge lies on the wall of a closed hollow. */
function isEnclosed(scene: Scene, corner: InsideCorner): boolean {
  return (scene.survey.measures.hollows?.closed ?? []).some((hollow) => liesIn(corner, hollow));
}

function draftOf(scene: Scene, group: readonly Edge[]): Draft {
  const sorted = byLength(group);
  const { part, area, demand, verdict } = sorted[0];
  const parts = [...new Set(sorted.map((e) => e.part))];
  const who = alike(TheName(scene.known.model.parts[part].name), parts.length);
  const total = sum(group);
  const least = Math.min(...group.map((e) => e.corner.radius_mm));
  const limit = strictest(group);
  const asked = formatQuantity(limit.atLeast!, 'mm');
  const long = formatQuantity(total, 'mm', { digits: 3 });
  return {
    demand,
    limit,
    status: verdict === 'notShown' ? 'notShown' : 'notMet',
    measure: 'insideCorners',
    anchor: `${verdict}|${firstId(scene, parts)}`,
    places: sorted.map((e) => e.corner),
    parts,
    area,
    title:
      verdict === 'notShown'
        ? `${who} has ${long} of inside edges that look sharp; the triangles could hide the ${asked} that are asked`
        : verdict === 'nearly'
          ? `${who} has ${long} of inside edges rounded with ${formatQuantity(least, 'mm')}, just under ${asked}`
          : `${who} has ${long} of ${edgesInWords(group, asked)}`,
    numbers: [
      measured('Length', total, 'mm', 'sum of the edges'),
      measured(
        'Smallest radius',
        least,
        'mm',
        sorted[0].corner.from === 'cad' ? 'radius of the CAD face' : 'estimated from triangles',
      ),
      measured(
        'Smallest angle',
        Math.min(...group.map((e) => e.corner.angle_deg)),
        'deg',
        'included angle through the air',
      ),
    ],
    why: 'Soil packs into the edge, and neither bristle nor jet gets to its bottom: what stays there feeds germs and carries over into the next product.',
    harm: 'hinders',
    ...(verdict === 'nearly' ? { slight: 'it nearly meets the limit' } : {}),
    weight: total,
    weightLabel: 'mm of edge',
    caveats: [
      ...sorted.flatMap((e) => e.corner.caveats ?? []),
      ...(sorted.some((e) => e.corner.from === 'triangles')
        ? ['The radius was estimated from triangles; the drawing is more exact.']
        : []),
    ],
  };
}

/** Radii below this are drawn sharp. */
const sharp_mm = 0.05;

function edgesInWords(group: readonly Edge[], asked: string): string {
  const sharp = group.filter((e) => e.corner.radius_mm < sharp_mm).length;
  if (sharp === group.length) return 'sharp inside edges';
  return `inside edges that are ${sharp > 0 ? 'sharp or ' : ''}rounded with less than ${asked}`;
}

function short(scene: Scene, area: AreaClass, group: readonly Edge[]): Draft {
  const sorted = byLength(group);
  const parts = [...new Set(sorted.map((e) => e.part))];
  const total = sum(group);
  const names = [...new Set(parts.map((p) => theName(scene.known.model.parts[p].name)))];
  return {
    demand: sorted[0].demand,
    limit: strictest(group),
    status: 'notMet',
    measure: 'insideCorners',
    anchor: `short|${area}`,
    places: sorted.map((e) => e.corner),
    parts,
    area,
    title: `Short sharp inside edges on ${parts.length === 1 ? '1 part' : `${parts.length} parts`}, ${formatQuantity(total, 'mm', { digits: 3 })} together: ${some(names)}`,
    numbers: [measured('Length', total, 'mm', 'sum of all short edges of this area class')],
    why: 'Each of them is a few strokes with a brush; together they are what is skipped when time is short.',
    harm: 'hinders',
    slight: 'each of the edges is short',
    weight: total,
    weightLabel: 'mm of edge',
    caveats: [],
  };
}

const strictest = (group: readonly Edge[]): Limit =>
  group.reduce((best, e) => ((e.limit.atLeast ?? 0) > (best.atLeast ?? 0) ? e.limit : best), group[0].limit);
const byLength = (group: readonly Edge[]) =>
  [...group].sort((a, b) => b.corner.length_mm - a.corner.length_mm || (a.corner.id < b.corner.id ? -1 : 1));
const sum = (group: readonly Edge[]) => group.reduce((total, e) => total + e.corner.length_mm, 0);
