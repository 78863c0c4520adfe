/** How far doors open, and the way round the machine. Geometry finds candidates only: the room may be another. */
import { formatQuantity } from '@coveline/quantity';
import type { Clearance } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { some, TheName, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { firstInForce, limitOf, partsAt, type Scene, strictestArea } from '../scene.ts';

export function doorsAndWalls(scene: Scene): RuleResult {
  const places = scene.survey.measures.clearances?.places ?? [];
  const of = (kind: Clearance['kind']) => places.filter((place) => place.kind === kind);
  const [doors, walls] = [of('door'), of('wall')];
  return {
    drafts: [...doors.flatMap((d) => doorDraft(scene, d)), ...walls.flatMap((w) => wallDraft(scene, w))],
    settles: ['door-open', 'room-wall-dist'],
    basis: `${doors.length} ${doors.length === 1 ? 'door' : 'doors'} and ${walls.length} ${walls.length === 1 ? 'wall' : 'walls'} of the site looked at`,
    notes: [],
  };
}

function doorDraft(scene: Scene, door: Clearance): Draft[] {
  const parts = partsAt(scene, door);
  if (parts.length === 0 || door.opens_deg === undefined) return [];
  const area = strictestArea(scene, parts);
  const demand = firstInForce(scene, ['door-open'], area) ?? firstInForce(scene, ['door-open'], 'splash');
  const limit = demand && limitOf(demand, 'openingAngle', 'splash');
  if (!demand || limit?.atLeast === undefined || door.opens_deg >= limit.atLeast) return [];
  const strikes = (door.strikes ?? []).map((id) => {
    const part = scene.known.indexOf.get(id);
    return part === undefined
      ? id === 'floor'
        ? 'the floor'
        : 'a wall'
      : theName(scene.known.model.parts[part].name);
  });
  const angle = formatQuantity(door.opens_deg, 'deg', { digits: 3 });
  return [
    {
      demand,
      limit,
      status: 'notShown',
      measure: 'clearances',
      anchor: `door|${door.of ?? door.id}`,
      places: [door],
      parts,
      area: demand.areas.includes(area) ? area : 'splash',
      title: `${TheName(scene.known.model.parts[parts[0]].name)} opens only ${angle}${strikes.length > 0 ? `, then it strikes ${some(strikes, 2)}` : ''}`,
      numbers: [
        measured(
          'Opens',
          door.opens_deg,
          'deg',
          'turned about its hinge as drawn until it strikes something',
        ),
      ],
      why: 'Behind a door that does not open far enough the inner faces are neither seen nor reached, and its own inner face stays as it is.',
      harm: 'hinders',
      weight: limit.atLeast - door.opens_deg,
      weightLabel: 'degrees missing',
      caveats: [
        ...(door.caveats ?? []),
        'The hinge is that of the site, proposed or set by people; stays and stops that are not drawn are not known.',
      ],
    },
  ];
}

function wallDraft(scene: Scene, wall: Clearance): Draft[] {
  const demand = firstInForce(scene, ['room-wall-dist'], 'nonFood');
  const limit = demand && limitOf(demand, 'wallDistance', 'nonFood');
  const distance = wall.distance_mm;
  if (!demand || limit?.atLeast === undefined || distance === undefined || distance >= limit.atLeast)
    return [];
  const near = (wall.nearer ?? []).filter((n) => n.distance_mm < limit.atLeast!).map((n) => n.part);
  const parts = [...new Set([...near, ...wall.parts])].flatMap((id) => scene.known.indexOf.get(id) ?? []);
  if (parts.length === 0) return [];
  return [
    {
      demand,
      limit,
      status: 'notShown',
      measure: 'clearances',
      anchor: `wall|${wall.of ?? wall.id}`,
      places: [wall],
      parts,
      area: 'nonFood',
      title: `Only ${formatQuantity(distance, 'mm', { digits: 3 })} between ${theName(scene.known.model.parts[parts[0]].name)} and the wall: nobody gets round to clean`,
      numbers: [
        measured(
          'Nearest to the wall',
          distance,
          'mm',
          'nearest point of the machine to the wall of the site',
        ),
        measured('Parts nearer than the limit', parts.length, '1', 'counted on the model'),
      ],
      why: 'The back of the machine, the wall and the floor between them are never cleaned, and pests and mould have their way there.',
      harm: 'hinders',
      weight: limit.atLeast - distance,
      weightLabel: 'mm missing',
      caveats: [...(wall.caveats ?? []), 'The wall is that of the site, as people set it.'],
    },
  ];
}
