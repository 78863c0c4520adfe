/** Upper faces that lean too little for water to run off. */
import type { AreaClass, Demand, Limit } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { FlatFace } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { alike, some, TheName, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { drying, filmOn } from '../numbers/wetness.ts';
import {
  elementOf,
  firstId,
  firstInForce,
  isFastener,
  limitOf,
  partsAt,
  type Scene,
  strictestArea,
  twinKey,
} from '../scene.ts';

/** The case of "it sheds" that speaks of this element, and its quantity. */
const ofElement: Partial<Record<string, readonly [id: string, quantity: string]>> = {
  frame: ['frame-horizontal', 'slope'],
  enclosure: ['box-roof', 'roofSlope'],
  cable: ['cable-vertical', 'slope'],
  tray: ['tray-slope', 'slope'],
  insulation: ['ins-slope', 'slope'],
  hopper: ['hop-wall', 'slope'],
};

/** Level faces of a part that are smaller together are told in one finding for all parts. */
const worthTelling_cm2: Record<AreaClass, number> = { food: 5, splash: 25, nonFood: Infinity };
/** Faces this close to the top of a hopper are its rim. */
const rim_mm = 2;
/** From this share of the limit on, a face nearly meets it. */
const nearly = 0.9;

const dry =
  'By the brief the machine is cleaned dry: no water has to run off. Asked again when wet cleaning is introduced';

interface Level {
  readonly face: FlatFace;
  readonly part: number;
  readonly area: AreaClass;
  readonly demand: Demand;
  readonly limit: Limit;
  readonly verdict: 'level' | 'nearly' | 'withinTolerance';
}

export function flatFaces(scene: Scene): RuleResult {
  const faces = scene.survey.measures.flatFaces?.places ?? [];
  const settles = ['gen-slope', 'gen-level-tolerance', ...Object.values(ofElement).map((e) => e![0])];
  if (scene.dryOnly)
    return {
      drafts: [],
      settles,
      basis: dry,
      notes: [],
      idle: Object.fromEntries(settles.map((id) => [id, dry])),
    };
  const levels = faces.map((face) => judged(scene, face)).filter((l) => l !== null);
  const groups = new Map<string, Level[]>();
  for (const l of levels) {
    const key = `${l.demand.id}|${l.verdict}|${twinKey(scene, l.part)}`;
    groups.set(key, [...(groups.get(key) ?? []), l]);
  }
  const drafts: Draft[] = [];
  const trifles = new Map<AreaClass, Level[]>();
  for (const group of groups.values()) {
    const parts = new Set(group.map((l) => l.part)).size;
    const small = isFastener(scene, group[0].part) || sum(group) / parts < worthTelling_cm2[group[0].area];
    if (small && group[0].verdict === 'level')
      trifles.set(group[0].area, [...(trifles.get(group[0].area) ?? []), ...group]);
    else if (!small) drafts.push(draftOf(scene, group));
  }
  for (const [area, group] of trifles) {
    const draft = small(scene, area, group);
    if (draft) drafts.push(draft);
  }
  const listed = scene.survey.settings.flatBelow_deg;
  const allowance = toleranceOf(scene);
  const unlisted = [...scene.demands.values()].some((d) =>
    d.limits.some((l) => l.quantity === 'slope' && (l.atLeast ?? 0) + allowance > listed),
  );
  return {
    drafts,
    settles,
    basis: `${faces.length} faces that lean less than ${listed}° on ${scene.parts.length} parts, those under standing liquid told with it`,
    notes: unlisted
      ? [
          `The survey lists faces below ${listed}°. Faces just above the limit of slope are not listed, so whether they survive the tolerance of levelling is not shown.`,
        ]
      : [],
  };
}

function judged(scene: Scene, face: FlatFace): Level | null {
  if (face.facing !== 'up') return null;
  const parts = partsAt(scene, face);
  const part = parts[0];
  if (part === undefined || scene.known.isPack(part) || isUnderPool(scene, face)) return null;
  // A belt carries on its level face; what it asks is asked of belts.
  if (scene.known.is[part]?.noun === 'belt') return null;
  const area = strictestArea(scene, parts);
  const element = elementOf(scene, part) ?? '';
  // The rim of a hopper is not its wall.
  const isRim = element === 'hopper' && face.at_mm[2] >= scene.known.extents[part].high[2] - rim_mm;
  const [id, quantity] = (isRim ? undefined : ofElement[element]) ?? ['gen-slope', 'slope'];
  const demand = firstInForce(scene, [id, 'gen-slope'], area);
  const limit = demand && limitOf(demand, demand.id === id ? quantity : 'slope', area);
  if (!demand || limit?.atLeast === undefined) return null;
  const least = limit.atLeast;
  if (face.slope_deg < least) {
    const verdict = face.slope_deg >= nearly * least ? 'nearly' : 'level';
    return { face, part, area, demand, limit, verdict };
  }
  if (face.slope_deg >= least + toleranceOf(scene)) return null;
  const tolerance = scene.demands.get('gen-level-tolerance');
  const allowance = tolerance && limitOf(tolerance, 'levellingAllowance', area);
  if (!tolerance || !allowance) return null;
  return { face, part, area, demand: tolerance, limit: allowance, verdict: 'withinTolerance' };
}

function toleranceOf(scene: Scene): number {
  return scene.demands.get('gen-level-tolerance')?.limits[0]?.atLeast ?? 0;
}

/** A pool that covers most of the face says the same and more. */
function isUnderPool(scene: Scene, face: FlatFace): boolean {
  const [low, high] = face.bounds_mm;
  return (scene.survey.measures.standingLiquid?.places ?? []).some((pool) => {
    if (!pool.parts.some((id) => face.parts.includes(id))) return false;
    const [from, to] = pool.bounds_mm;
    const covers = [0, 1, 2].every((i) => from[i] - 2 <= high[i] && low[i] <= to[i] + 2);
    return covers && pool.area_cm2 >= face.area_cm2 / 2;
  });
}

function draftOf(scene: Scene, group: readonly Level[]): Draft {
  const sorted = byArea(group);
  const { part, area, demand, limit, verdict } = sorted[0];
  const parts = [...new Set(sorted.map((l) => l.part))];
  const name = TheName(scene.known.model.parts[part].name);
  const who = alike(name, parts.length);
  const least = Math.min(...group.map((l) => l.face.slope_deg));
  const total = sum(group);
  const film = filmOn(total, least);
  const wet = film && drying(scene.brief, film.depth_mm, sorted[0].face.area_cm2);
  const slope = formatQuantity(least, 'deg', { digits: 3 });
  const leans = least < 0.05 ? 'is level' : `leans only ${slope}`;
  return {
    demand,
    limit,
    status: verdict === 'withinTolerance' ? 'notShown' : 'notMet',
    measure: 'flatFaces',
    anchor: `${verdict}|${firstId(scene, parts)}`,
    places: sorted.map((l) => l.face),
    parts,
    area,
    title:
      verdict === 'withinTolerance'
        ? `${who} leans ${slope}: enough as drawn, too little when the machine stands ${toleranceOf(scene)}° off level`
        : `${who} ${leans} on top over ${formatQuantity(total, 'cm2', { digits: 3 })}`,
    numbers: [
      measured('Slope', least, 'deg', 'least angle of the face to the horizontal'),
      measured('Area', total, 'cm2', 'area of the faces that lean too little'),
      ...(film ? [film.number] : []),
      ...(wet?.numbers ?? []),
    ],
    why: film
      ? `Up to ${formatQuantity(film.number.value, 'mL', { digits: 2 })} stay on it by surface tension. ${wet?.why ?? ''} What dries on it stays as a film of soil.`
      : 'Water stays on it and dries to a film of soil.',
    harm: 'hinders',
    ...(verdict === 'nearly' ? { slight: 'it nearly meets the limit and sheds most of the water' } : {}),
    weight: total,
    weightLabel: 'cm² that lean too little',
    caveats: [
      ...sorted.flatMap((l) => l.face.caveats ?? []),
      ...(verdict === 'withinTolerance'
        ? ['The tolerance of levelling is assumed: measure the slope on the machine.']
        : []),
    ],
  };
}

function small(scene: Scene, area: AreaClass, group: readonly Level[]): Draft | null {
  const sorted = byArea(group);
  const demand = firstInForce(scene, ['gen-slope'], area);
  if (!demand) return null;
  const parts = [...new Set(sorted.map((l) => l.part))];
  const total = sum(group);
  const names = [...new Set(parts.map((p) => theName(scene.known.model.parts[p].name)))];
  return {
    demand,
    limit: limitOf(demand, 'slope', area),
    status: 'notMet',
    measure: 'flatFaces',
    anchor: `small|${area}`,
    places: sorted.map((l) => l.face),
    parts,
    area,
    title: `Small level tops on ${parts.length === 1 ? '1 part' : `${parts.length} parts`}, ${formatQuantity(total, 'cm2', { digits: 3 })} together: ${some(names)}`,
    numbers: [measured('Area', total, 'cm2', 'sum over all small level faces of this area class')],
    why: 'Drops stay on each of them; one by one they dry soon, together they are many places to wipe.',
    harm: 'hinders',
    slight: 'each of the faces is small',
    weight: total,
    weightLabel: 'cm² that lean too little',
    caveats: [],
  };
}

const byArea = (group: readonly Level[]) =>
  [...group].sort((a, b) => b.face.area_cm2 - a.face.area_cm2 || (a.face.id < b.face.id ? -1 : 1));
const sum = (group: readonly Level[]) => group.reduce((total, l) => total + l.face.area_cm2, 0);
