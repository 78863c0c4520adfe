import type { Model, Vec3 } from '@coveline/model';
import type { MeasureOutcome } from '../outcome.ts';
import { placeNamer } from '../place-id.ts';
import type { Clearance, Control, Drawing, SurveySettings } from '../result.ts';
import type { Door, Site } from '../site.ts';
import { boxAround } from '../sky/disc.ts';
import { step } from '../stopped.ts';
import { treeOf } from '../tree/tree.ts';
import { swingOf } from './doors.ts';
import { lowUndersides } from './floor.ts';
import { onWall, wallDistances, wallFault } from './walls.ts';

/** A door that opens less than this is caught from the start, degrees. */
const caught_deg = 1;

interface Found {
  readonly clearance: Clearance;
  readonly drawing: Drawing;
}

/**
 * Room around the machine (mm, cm2, degrees; +Z up): undersides that stand low over the floor, the nearest part to
 * each wall, and how far each door opens. What stands on the floor has no clearance. The floor is the lowest point of
 * the model unless the site says otherwise.
 */
export function measureClearances(
  model: Model,
  settings: SurveySettings,
  site: Pick<Site, 'floor_mm' | 'walls' | 'doors'>,
  control: Control = {},
): MeasureOutcome<'clearances'> {
  const tree = treeOf(model);
  const field = new Float32Array(tree.start[model.parts.length]).fill(Number.NaN);
  const notes: string[] = [];
  let floor_mm = site.floor_mm ?? Infinity;
  if (site.floor_mm === undefined) {
    for (let i = 2; i < tree.corners.length; i += 3) floor_mm = Math.min(floor_mm, tree.corners[i]);
    notes.push('Clearances: the lowest point of the model is taken as the floor.');
  }
  const found: Found[] = [];
  const floorName = placeNamer('floor');
  for (const low of lowUndersides(model, tree, floor_mm, settings, control, field)) {
    const parts = [model.parts[low.part].id];
    const id = floorName(parts, low.lowest);
    const { distance_mm, bounds_mm } = low;
    found.push({
      clearance: {
        id,
        parts,
        at_mm: low.lowest,
        bounds_mm,
        kind: 'floor',
        distance_mm,
        area_cm2: low.over_mm2 / 100,
      },
      drawing: { triangles: low.triangles },
    });
  }
  const wallName = placeNamer('wall');
  for (const wall of site.walls) {
    step(control, 'clearances', 0.7);
    const fault = wallFault(wall);
    if (fault) notes.push(`Clearances: the wall "${wall.id}" is left out, because ${fault}.`);
    else found.push(...atWall(model, wall, wallDistances(model, tree, wall), settings, wallName));
  }
  const doorName = placeNamer('door');
  for (const door of site.doors) {
    step(control, 'clearances', 0.8);
    const fault = doorFault(model, door);
    if (fault) notes.push(`Clearances: the door "${door.id}" is left out, because ${fault}.`);
    else found.push(atDoor(model, door, site, floor_mm, control, doorName));
  }
  return {
    measure: {
      floor_mm: Number.isFinite(floor_mm) ? floor_mm : 0,
      places: found.map(({ clearance }) => clearance),
    },
    field,
    drawings: new Map(found.map(({ clearance, drawing }) => [clearance.id, drawing])),
    notes,
  };
}

function atWall(
  model: Model,
  wall: Site['walls'][number],
  distances: ReturnType<typeof wallDistances>,
  { wallBelow_mm }: SurveySettings,
  name: ReturnType<typeof placeNamer>,
): Found[] {
  if (distances.length === 0) return [];
  const [nearest] = distances;
  const parts = [model.parts[nearest.part].id];
  const foot = onWall(wall, nearest.at_mm);
  const nearer = distances
    .filter(({ distance_mm }) => distance_mm < wallBelow_mm)
    .map(({ part, distance_mm }) => ({ part: model.parts[part].id, distance_mm }));
  const clearance: Clearance = {
    id: name(parts, nearest.at_mm),
    parts,
    at_mm: nearest.at_mm,
    bounds_mm: boxAround([nearest.at_mm, foot]),
    kind: 'wall',
    of: wall.id,
    distance_mm: nearest.distance_mm,
    nearer,
    ...(nearest.distance_mm < 0 && {
      caveats: [`The machine reaches through the wall by ${(-nearest.distance_mm).toFixed(0)} mm.`],
    }),
  };
  return [{ clearance, drawing: { lines: [Float32Array.from([...nearest.at_mm, ...foot])] } }];
}

function doorFault(model: Model, { parts, hinge: { at_mm, axis } }: Door): string | null {
  if (![...at_mm, ...axis].every(Number.isFinite) || !(Math.hypot(...axis) > 0)) {
    return 'its hinge has no direction';
  }
  const own = model.parts.filter(({ id }) => parts.includes(id));
  return own.some(({ shape }) => model.shapes[shape].triangles.length > 0)
    ? null
    : 'the model has none of its parts';
}

function atDoor(
  model: Model,
  door: Door,
  site: Pick<Site, 'walls'>,
  floor_mm: number,
  control: Control,
  name: ReturnType<typeof placeNamer>,
): Found {
  const swing = swingOf(model, door, site, floor_mm, control);
  const known = new Set(model.parts.map(({ id }) => id));
  const parts = [...new Set(door.parts)].filter((id) => known.has(id)).sort();
  const hinge: Vec3 = door.hinge.at_mm;
  const clearance: Clearance = {
    id: name(parts, hinge),
    parts,
    at_mm: swing.at_mm,
    bounds_mm: boxAround([...swing.arc, hinge]),
    kind: 'door',
    of: door.id,
    opens_deg: swing.opens_deg,
    strikes: swing.strikes === null ? [] : [swing.strikes],
    ...(swing.opens_deg < caught_deg && {
      caveats: [
        `It strikes ${swing.strikes} at once in both directions: perhaps that belongs to the door, or the hinge stands elsewhere.`,
      ],
    }),
  };
  return { clearance, drawing: { lines: [Float32Array.from(swing.arc.flat())] } };
}
