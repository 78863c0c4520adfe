/** Room under the machine, and the height of open product. */
import { formatQuantity } from '@coveline/quantity';
import type { Draft, RuleResult } from '../draft.ts';
import { type FloorClearance, floorClearance, surveyedClearance } from '../geometry/floor.ts';
import { theName } from '../names/display.ts';
import { derived, input, measured } from '../numbers/measured.ts';
import { belongsToFoot } from '../parts/feet.ts';
import { limitOf, type Scene } from '../scene.ts';

/** The brief says that the machine stands on a bench. */
const onBench =
  /\b(bench|bench-?top|table|table-?top|counter|worktop|tisch|werkbank|table de travail|mesa|tavolo|tafel)\b/i;
/** A low clearance is seen into as far as this many times its height. Common practice. */
const sightRatio = 3;
/** Lower models without feet are parts of machines. */
const leastMachine_mm = 400;

export function clearances(scene: Scene): RuleResult {
  const { extents, is } = scene.known;
  const stands = onBench.test(`${scene.brief.purpose} ${scene.brief.environment.description}`);
  const carries = (p: number) => belongsToFoot(scene, p);
  const surveyed = scene.survey.measures.clearances;
  const room = surveyed
    ? surveyedClearance(scene.known, surveyed, carries)
    : floorClearance(extents, carries);
  const settles = ['feet-height', 'feet-bench-height', 'feet-product-height'];
  if (!room) return { drafts: [], settles, basis: 'The model has no parts', notes: [] };
  const hasFeet = is.some((r) => r?.element === 'feet' || r?.element === 'castor');
  const height = Math.max(...extents.map((e) => e.high[2])) - room.floor_mm;
  if (!hasFeet && height < leastMachine_mm) {
    const part = `No part is named as a foot and the model is ${formatQuantity(height, 'mm', { digits: 3 })} high: taken as a part of a machine, not as one that stands on the floor`;
    return {
      drafts: [],
      settles,
      basis: part,
      notes: [],
      idle: Object.fromEntries(settles.map((id) => [id, part])),
    };
  }
  const drafts: Draft[] = [];
  const feet = extents.flatMap((_, p) =>
    is[p]?.element === 'feet' || is[p]?.element === 'castor' ? [p] : [],
  );
  const under = underMachine(scene, room, stands, feet);
  if (under) drafts.push(under);
  const product = stands ? null : productHeight(scene, room.floor_mm);
  if (product) drafts.push(product);
  const surface = stands ? 'bench' : 'floor';
  return {
    drafts,
    settles,
    basis:
      room.lowest === null
        ? `Every part stands on the ${surface}: there is no room under the machine`
        : `The lowest hanging part is ${theName(scene.known.model.parts[room.lowest].name)}, ${formatQuantity(room.clearance_mm, 'mm', { digits: 3 })} above the ${surface}`,
    notes: [
      stands
        ? 'The brief says that the machine stands on a bench: clearance is counted from the bench top.'
        : surveyed
          ? 'Clearance is counted from the floor of the site.'
          : 'The lowest point of the model is taken as the floor.',
    ],
    idle: stands
      ? {
          'feet-height': 'The brief says that the machine stands on a bench',
          'feet-product-height':
            'The brief says that the machine stands on a bench, above the splash from the floor',
        }
      : { 'feet-bench-height': 'The brief does not say that the machine stands on a bench' },
  };
}

function underMachine(
  scene: Scene,
  room: FloorClearance,
  stands: boolean,
  feet: readonly number[],
): Draft | null {
  const demand = scene.demands.get(stands ? 'feet-bench-height' : 'feet-height');
  const limit = demand && limitOf(demand, stands ? 'benchClearance' : 'floorClearance', 'nonFood');
  if (!demand || limit?.atLeast === undefined || room.lowest === null) return null;
  if (room.clearance_mm >= limit.atLeast) return null;
  const surface = stands ? 'bench' : 'floor';
  const low = formatQuantity(room.clearance_mm, 'mm', { digits: 3 });
  const ratio = room.depth_mm / Math.max(room.clearance_mm, 1);
  return {
    demand,
    limit,
    // Without feet the lowest point of the model may not be what it stands on.
    status: feet.length > 0 ? 'notMet' : 'notShown',
    measure: 'clearances',
    anchor: surface,
    places: room.place ? [room.place] : [],
    // The lowest part hangs there; longer feet would lift it.
    parts: [room.lowest, ...feet],
    area: 'nonFood',
    title: `Only ${low} of room under ${theName(scene.known.model.parts[room.lowest].name)}: the ${surface} below is neither seen nor cleaned`,
    numbers: [
      measured(
        'Clearance',
        room.clearance_mm,
        'mm',
        room.place
          ? `lowest underside of at least ${formatQuantity(scene.survey.settings.leastUnderside_cm2, 'cm2')} that is open to the ${surface}; feet left out`
          : `lowest hanging part less the ${surface}; feet, legs and what stands on the ${surface} left out`,
      ),
      derived(
        'Way in over height',
        ratio,
        '1',
        'r = d / h',
        [
          input('d', 'middle of the footprint from its nearer edge', room.depth_mm, 'mm'),
          input('h', 'clearance', room.clearance_mm, 'mm'),
        ],
        `up to about ${sightRatio} a lamp and a lance get in; common practice`,
      ),
    ],
    why: `The middle lies ${formatQuantity(room.depth_mm, 'mm', { digits: 3 })} in${ratio > sightRatio ? ', too far for lamp, brush or lance' : ''}. What drips and falls there stays, feeds germs and pests, and comes back with splash and aerosol.`,
    harm: 'keeps',
    weight: limit.atLeast - room.clearance_mm,
    weightLabel: 'mm missing',
    caveats:
      feet.length > 0
        ? []
        : ['No part is named as a foot: the lowest point of the model is taken as what it stands on.'],
  };
}

function productHeight(scene: Scene, floor_mm: number): Draft | null {
  const demand = scene.demands.get('feet-product-height');
  const limit = demand && limitOf(demand, 'productHeight', 'food');
  if (!demand || limit?.atLeast === undefined) return null;
  const least = limit.atLeast;
  const low = scene.known.mouths
    .map(({ mouth }) => ({ part: mouth.part, height: mouth.at_mm[2] - floor_mm }))
    .filter((m) => m.height < least)
    .sort((a, b) => a.height - b.height || a.part - b.part);
  if (low.length === 0) return null;
  return {
    demand,
    limit,
    status: 'notMet',
    measure: 'clearances',
    anchor: 'mouth',
    places: [],
    parts: low.map((m) => m.part),
    area: 'food',
    title: `Open product stands only ${formatQuantity(low[0].height, 'mm', { digits: 3 })} above the floor`,
    numbers: [measured('Height of the mouth', low[0].height, 'mm', 'top of the container less the floor')],
    why: 'A hose on the floor throws drops with whatever lives in the drain up to this height.',
    harm: 'falls',
    slight: 'it holds only while somebody hoses with product open',
    weight: least - low[0].height,
    weightLabel: 'mm missing',
    caveats: [],
  };
}
