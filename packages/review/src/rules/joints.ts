/** Lines where two parts touch: liquid finds them by capillarity. */
import { formatQuantity } from '@coveline/quantity';
import type { Joint } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { boxVolume } from '../geometry/extent.ts';
import { some, TheName, theName } from '../names/display.ts';
import type { Noun } from '../names/nouns.ts';
import { derived, input, measured } from '../numbers/measured.ts';
import { areaBetween, firstInForce, isFastener, partsAt, type Scene } from '../scene.ts';

/** Ways of joining that leave no crevice, if they are done well; weld and bond are shown by inspection. */
const closed = new Set(['welded', 'bonded', 'oneBody']);
/** Ways that leave faces lying bare on each other. */
const bare = new Set(['bolted', 'clamped', 'pressed', 'loose']);
/** Seals are joints of their own, belts move on what they touch, and filters are scanned for leaks at their seat. */
const apart: ReadonlySet<Noun | undefined> = new Set<Noun>(['gasket', 'belt', 'filter', 'tie', 'cable']);
/** Smaller contacts in the splash area are no lap. */
const leastLap_cm2 = 10;
const leastLine_mm = 10;

interface Line {
  readonly joint: Joint;
  /** Larger part first. */
  readonly parts: readonly [number, number];
  readonly area: 'food' | 'splash';
  readonly isBare: boolean;
}

export function joints(scene: Scene): RuleResult {
  const found = scene.survey.measures.narrowGaps?.joints ?? [];
  const lines = found.map((j) => judged(scene, j)).filter((l) => l !== null);
  const groups = new Map<string, Line[]>();
  for (const l of lines) {
    const hub = scene.parts[l.parts[0]].partId;
    const key = `${l.area}|${l.isBare}|${hub}`;
    groups.set(key, [...(groups.get(key) ?? []), l]);
  }
  return {
    drafts: [...groups].map(([key, group]) => draftOf(scene, group, key)).filter((d) => d !== null),
    settles: ['joint-metalmetal', 'joint-lap'],
    basis: `${found.length} contacts between parts looked at; contacts with fasteners, seals and containers are judged apart, welded and bonded ones by inspection`,
    notes: [],
  };
}

function judged(scene: Scene, joint: Joint): Line | null {
  const parts = partsAt(scene, joint);
  if (parts.length !== 2 || joint.length_mm < leastLine_mm) return null;
  const skip = (p: number) =>
    isFastener(scene, p) ||
    scene.known.isPack(p) ||
    apart.has(scene.known.is[p]?.noun) ||
    closed.has(scene.parts[p].joint);
  if (parts.some(skip)) return null;
  const area = areaBetween(scene, parts);
  if (area === 'nonFood') return null;
  const isBare = parts.some((p) => bare.has(scene.parts[p].joint));
  // In the splash area faces that lie on each other count as joined, unless screws hold a lap open.
  if (area === 'splash' && (!isBare || joint.area_cm2 < leastLap_cm2)) return null;
  const [a, b] = parts;
  const first = boxVolume(scene.known.extents[a]) >= boxVolume(scene.known.extents[b]) ? a : b;
  return { joint, parts: first === a ? [a, b] : [b, a], area, isBare };
}

function draftOf(scene: Scene, group: readonly Line[], anchor: string): Draft | null {
  const sorted = [...group].sort(
    (a, b) => b.joint.length_mm - a.joint.length_mm || (a.joint.id < b.joint.id ? -1 : 1),
  );
  const { area, isBare, parts } = sorted[0];
  const hub = parts[0];
  const demand = firstInForce(
    scene,
    [area === 'food' ? 'joint-metalmetal' : 'joint-lap', 'joint-flush'],
    area,
  );
  if (!demand) return null;
  const others = [...new Set(sorted.map((l) => l.parts[1]))];
  const length = sorted.reduce((total, l) => total + l.joint.length_mm, 0);
  const contact = sorted.reduce((total, l) => total + l.joint.area_cm2, 0);
  const names = [...new Set(others.map((p) => theName(nameOf(scene, p))))];
  const how = isBare ? 'lies bare on' : 'touches';
  const long = formatQuantity(length, 'mm', { digits: 3 });
  return {
    demand,
    limit: null,
    status: isBare ? 'notMet' : 'notShown',
    measure: 'narrowGaps',
    anchor,
    places: sorted.map((l) => l.joint),
    parts: [hub, ...others],
    area,
    title: `${TheName(nameOf(scene, hub))} ${how} ${some(names, 2)}: ${long} of open joint line${isBare ? ' without a seal' : ', sealing not known'}`,
    numbers: [
      measured('Joint line', length, 'mm', 'border of the contact that is open to the air'),
      measured('Contact', contact, 'cm2', 'area where the faces lie on each other'),
      derived(
        'Depth of the lap, about',
        (2 * contact * 100) / length,
        'mm',
        'd = 2 A / L',
        [input('A', 'contact', contact, 'cm2'), input('L', 'joint line', length, 'mm')],
        'a long strip that is open on both sides',
      ),
    ],
    why: isBare
      ? 'Bare faces are never tight: liquid creeps in, soil stays, germs grow between the faces and come out when the joint works.'
      : 'If the faces only lie on each other, liquid creeps in and nothing gets it out.',
    harm: 'keeps',
    weight: length,
    weightLabel: 'mm of open joint line',
    caveats: [
      ...sorted.flatMap((l) => l.joint.caveats ?? []),
      ...(isBare
        ? []
        : ['How the parts are joined is not known: set the joint of the part (welded, gasketed, bolted …).']),
    ],
  };
}

const nameOf = (scene: Scene, p: number) => scene.known.model.parts[p].name;
