/** Hollow members that are not closed: ends left open, holes drilled through the wall. */
import { formatQuantity } from '@coveline/quantity';
import type { OpenMember } from '@coveline/survey';
import type { Draft } from '../draft.ts';
import { alike, TheName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { firstId, firstInForce, type Scene, twinKey } from '../scene.ts';

type Found = readonly [part: number, member: OpenMember];

export function openMembers(scene: Scene): Draft[] {
  const groups = new Map<string, Found[]>();
  for (const found of scene.openMembers) {
    const key = twinKey(scene, found[0]);
    groups.set(key, [...(groups.get(key) ?? []), found]);
  }
  return [...groups.values()].flatMap((group) => {
    const draft = draftOf(scene, group);
    return draft ? [draft] : [];
  });
}

function draftOf(scene: Scene, group: readonly Found[]): Draft | null {
  const [[first, member]] = group;
  const parts = group.map(([p]) => p);
  const inner = member.inner_cm2;
  const { areaClass } = scene.parts[first];
  const demand = firstInForce(scene, ['hollow-open', 'hollow-sealed'], areaClass);
  if (!demand) return null;
  return {
    demand,
    limit: null,
    status: 'notMet',
    measure: 'hollows',
    anchor: `open|${firstId(scene, parts)}`,
    places: group.map(([, m]) => m),
    parts,
    area: areaClass,
    title: `${alike(TheName(scene.known.model.parts[first].name), parts.length)} is hollow and open${by(member)}: about ${formatQuantity(inner, 'cm2', { digits: 2 })} of inner wall that nobody sees or cleans`,
    numbers: [
      measured(
        'Inner wall',
        inner,
        'cm2',
        'points on the surface of the part from which nine of ten rays end on the part itself; walls near an open end are left out',
      ),
      measured('Length of the hollow', member.length_mm, 'mm', 'along the member, between its ends'),
      ...(member.mouth_mm > 0
        ? [measured('Opening', member.mouth_mm, 'mm', 'diameter of the largest ball that passes')]
        : []),
    ],
    why: 'Wash water, soil and insects get in through the open end or the hole; it dries for days, grows, and drips out when nobody expects it.',
    harm: 'keeps',
    weight: inner,
    weightLabel: 'cm² of inner wall',
    caveats: [...new Set(group.flatMap(([, m]) => m.caveats ?? []))],
  };
}

function by({ through, openEnds }: OpenMember): string {
  if (through === 'end') return openEnds > 1 ? ' at both ends' : ' at one end';
  return through === 'hole' ? ' through a hole in its wall' : '';
}
