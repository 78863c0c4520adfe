/** Hollow members that are not closed: ends left open, holes drilled through the wall. */
import { formatQuantity } from '@coveline/quantity';
import type { Draft } from '../draft.ts';
import { alike, TheName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { firstId, firstInForce, type Scene, twinKey } from '../scene.ts';

export function openMembers(scene: Scene): Draft[] {
  const groups = new Map<string, number[]>();
  for (const p of scene.openMembers.keys()) {
    const key = twinKey(scene, p);
    groups.set(key, [...(groups.get(key) ?? []), p]);
  }
  return [...groups.values()].flatMap((parts) => {
    const draft = draftOf(scene, parts, scene.openMembers.get(parts[0])!);
    return draft ? [draft] : [];
  });
}

function draftOf(scene: Scene, parts: readonly number[], inner: number): Draft | null {
  const { areaClass } = scene.parts[parts[0]];
  const demand = firstInForce(scene, ['hollow-open', 'hollow-sealed'], areaClass);
  if (!demand) return null;
  return {
    demand,
    limit: null,
    status: 'notMet',
    measure: 'hollows',
    anchor: `open|${firstId(scene, parts)}`,
    places: [],
    parts,
    area: areaClass,
    title: `${alike(TheName(scene.known.model.parts[parts[0]].name), parts.length)} is hollow and open: about ${formatQuantity(inner, 'cm2', { digits: 2 })} of inner wall that nobody sees or cleans`,
    numbers: [
      measured(
        'Inner wall',
        inner,
        'cm2',
        'points on the surface of the part from which nine of ten rays end on the part itself; walls near an open end are left out',
      ),
    ],
    why: 'Wash water, soil and insects get in through the open end or the hole; it dries for days, grows, and drips out when nobody expects it.',
    harm: 'keeps',
    weight: inner,
    weightLabel: 'cm² of inner wall',
    caveats: [
      'No closed hollow was found in it, so its inside is joined with the outside: by an open end or a hole.',
    ],
  };
}
