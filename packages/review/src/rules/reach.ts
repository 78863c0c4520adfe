/** What hand and tool do not get to, where a requirement asks that they do. Geometry finds candidates only. */
import type { AreaClass } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { ReachMeasure, Unreached } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { some, theName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { elementOf, firstId, firstInForce, limitOf, partsAt, type Scene } from '../scene.ts';
import { nozzlesIn } from './jets.ts';

interface Ask {
  readonly demand: string;
  /** On parts of this element. */
  readonly element: string;
  readonly harm: Draft['harm'];
  readonly why: string;
  /** Whether a patch that the hand does not get to counts here. */
  readonly counts: (scene: Scene, place: Unreached, parts: readonly number[]) => boolean;
}

/** Named after the vessel that it carries or closes, and no wall of it. */
const carries =
  /(?<!\p{L})(arm|leg|bracket|support|holder|stand|handle|clamp|post|rod|halter|griff|bein|strebe)(?!\p{L})/iu;

const asks: readonly Ask[] = [
  {
    demand: 'hop-hand',
    element: 'hopper',
    harm: 'keeps',
    why: 'What no hand gets to and no spray wets is not cleaned: product dries on, and it grows into the next batch.',
    counts: (scene, _, parts) =>
      parts.some(
        (p) =>
          elementOf(scene, p) === 'hopper' &&
          !carries.test(scene.known.model.parts[p].name) &&
          nozzlesIn(scene, p).length === 0,
      ),
  },
  {
    demand: 'tray-remove',
    element: 'tray',
    harm: 'hinders',
    why: 'A tray collects what drips: where neither hand gets to it, it is rinsed at best, and the film on it grows.',
    counts: () => true,
  },
  {
    demand: 'frame-spacing',
    element: 'frame',
    harm: 'hinders',
    why: 'Soil on the inner sides of members that stand close together is neither seen nor brushed off.',
    // A way that is there and too narrow, and too narrow for the tool as well.
    counts: (scene, { because, largest_mm }, parts) =>
      because === 'narrow' && largest_mm > 0 && toolMisses(scene, parts),
  },
  {
    demand: 'infeed-glass',
    element: 'container',
    harm: 'hinders',
    why: 'Splinters of a broken pack stay where no hand can pick them up, and get into the next open one.',
    // The inside of a pack that passes through is nobody's to clean.
    counts: ({ known }, _, parts) => !parts.every(known.isPack),
  },
];

export function reach(scene: Scene): RuleResult {
  const hand = scene.survey.measures.handReach;
  return {
    drafts: hand ? asks.flatMap((ask) => draftOf(scene, hand, ask)) : [],
    settles: asks.map((ask) => ask.demand),
    basis: hand
      ? `A ball of ${hand.size_mm} mm for the hand gets to ${formatQuantity(hand.reached_cm2, 'cm2', { digits: 3 })} within ${hand.length_mm} mm, and not to ${formatQuantity(hand.unreached_cm2, 'cm2', { digits: 3 })}`
      : 'The reach of the hand was not surveyed',
    notes: [],
  };
}

function toolMisses(scene: Scene, parts: readonly number[]): boolean {
  const tool = scene.survey.measures.toolReach;
  if (!tool) return true;
  const missed = new Set(tool.places.flatMap((place) => partsAt(scene, place)));
  return parts.some((p) => elementOf(scene, p) === 'frame' && missed.has(p));
}

function draftOf(scene: Scene, hand: ReachMeasure, ask: Ask): Draft[] {
  const found = hand.places
    .map((place) => ({ place, parts: partsAt(scene, place) }))
    .filter(
      ({ place, parts }) =>
        parts.some((p) => elementOf(scene, p) === ask.element && areaAsked(scene, ask, p)) &&
        ask.counts(scene, place, parts),
    )
    .sort((a, b) => b.place.area_cm2 - a.place.area_cm2 || (a.place.id < b.place.id ? -1 : 1));
  if (found.length === 0) return [];
  const own = [...new Set(found.flatMap(({ parts }) => parts))].filter(
    (p) => elementOf(scene, p) === ask.element && areaAsked(scene, ask, p),
  );
  const area = scene.parts[own[0]].areaClass;
  const demand = firstInForce(scene, [ask.demand], area);
  if (!demand) return [];
  const [{ place: worst }] = found;
  const sum = found.reduce((total, { place }) => total + place.area_cm2, 0);
  const names = [...new Set(own.map((p) => theName(scene.known.model.parts[p].name)))];
  const opening = hand.openings.find((o) => o.id === worst.opening);
  return [
    {
      demand,
      limit: limitOf(demand, 'reach', area) ?? limitOf(demand, 'spacing', area),
      status: 'notShown',
      measure: 'handReach',
      anchor: `hand|${firstId(scene, own)}`,
      places: [...found.map(({ place }) => place), ...(opening ? [opening] : [])],
      parts: own,
      area,
      title: `The hand does not get to ${formatQuantity(sum, 'cm2', { digits: 3 })} at ${some(names, 2)}: ${whyNot(worst, hand)}`,
      numbers: [
        measured(
          'Out of reach, with what joins it',
          sum,
          'cm2',
          `surface that a ball of ${hand.size_mm} mm does not get within ${hand.touch_mm} mm of, on a way of ${hand.length_mm} mm from an access side; patches run on over neighbouring parts`,
        ),
        worst.because === 'far' && worst.way_mm !== undefined
          ? measured(
              'Way to the largest patch',
              worst.way_mm,
              'mm',
              'shortest way of the ball from an access side',
            )
          : measured(
              'Widest that gets to the largest patch',
              worst.largest_mm,
              'mm',
              'diameter of the largest ball that gets there from an access side',
            ),
      ],
      why: ask.why,
      harm: ask.harm,
      weight: sum,
      weightLabel: 'cm² out of reach',
      caveats: [
        ...found.flatMap(({ place }) => place.caveats ?? []),
        'A ball stands for the hand: a flat hand passes where a ball does not, and an elbow may not follow. Try it on the machine.',
        'The access sides are those of the site, proposed or set by people.',
      ],
    },
  ];
}

function areaAsked(scene: Scene, ask: Ask, part: number): boolean {
  const areas: readonly AreaClass[] = scene.demands.get(ask.demand)?.areas ?? [];
  return areas.includes(scene.parts[part].areaClass);
}

function whyNot({ because, largest_mm, way_mm }: Unreached, hand: ReachMeasure): string {
  if (because === 'far' && way_mm !== undefined)
    return `the way there is ${formatQuantity(way_mm, 'mm', { digits: 3 })}, an arm is ${hand.length_mm} mm`;
  if (largest_mm === 0) return 'no way leads there';
  return `the way narrows to ${formatQuantity(largest_mm, 'mm', { digits: 2 })}`;
}
