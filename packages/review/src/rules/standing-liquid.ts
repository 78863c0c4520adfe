/** Liquid that stays after draining. */
import type { AreaClass, Limit } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { Pool } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { liesIn } from '../geometry/lies-in.ts';
import { carriers } from '../geometry/under-pool.ts';
import { alike, TheName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { wetness } from '../numbers/wetness.ts';
import { elementOf, firstId, firstInForce, limitOf, type Scene, strictestArea, twinKey } from '../scene.ts';

/** The case of "it drains" that speaks of this element. */
const ofElement: Partial<Record<string, string>> = {
  hopper: 'hop-drain',
  tank: 'tank-drain',
  pipe: 'pipe-slope',
  valve: 'valve-drain',
  pump: 'pump-drain',
  nozzle: 'noz-volume',
  tray: 'tray-drain',
  hood: 'hood-drain',
};

interface Kept {
  readonly pool: Pool;
  /** The part that carries it. */
  readonly part: number;
  readonly area: AreaClass;
}

export function standingLiquid(scene: Scene): RuleResult {
  const pools = scene.survey.measures.standingLiquid?.places ?? [];
  const accepted = scene.brief.acceptedPool_mL;
  const kept = pools.map((pool) => judged(scene, pool)).filter((k) => k !== null);
  const asked = kept.filter((k) => isAsked(scene, k.area) && !isInBlindHole(scene, k));
  const large = asked.filter((k) => k.pool.volume_mL > accepted);
  const small = asked.filter((k) => k.pool.volume_mL <= accepted);
  const drafts = [
    ...large.map((k) => draftOf(scene, [k], k.pool.id)),
    ...manySmall(scene, small, accepted).map((group) =>
      draftOf(
        scene,
        group,
        `small|${firstId(
          scene,
          group.map((k) => k.part),
        )}`,
      ),
    ),
  ].filter((d) => d !== null);
  const reported = new Set(drafts.flatMap((d) => d.places.map((p) => p.id)));
  const rest = asked.filter((k) => !reported.has(k.pool.id));
  return {
    drafts,
    settles: ['gen-drain', ...Object.values(ofElement).filter((id) => id !== undefined)],
    basis: `${asked.length} pools found on ${scene.parts.length} parts; ${rest.length} of them, ${volume(sum(rest))} together, hold no more than the accepted ${volume(accepted)} each`,
    notes: kept.length > asked.length ? [unasked(scene, kept.length - asked.length)] : [],
  };
}

/** Twelve recesses of 0.1 mL are one fault of 1.2 mL. */
function manySmall(scene: Scene, small: readonly Kept[], accepted: number): readonly (readonly Kept[])[] {
  const groups = new Map<string, Kept[]>();
  for (const k of small) {
    const key = twinKey(scene, k.part);
    groups.set(key, [...(groups.get(key) ?? []), k]);
  }
  return [...groups.values()].filter((group) => sum(group) > accepted);
}

function judged(scene: Scene, pool: Pool): Kept | null {
  const under = carriers(scene.known.model, pool, scene.known.indexOf).filter(
    ({ part }) => !scene.known.isPack(part),
  );
  if (under.length === 0) return null;
  const wetted = under.filter((c) => c.area_mm2 >= under[0].area_mm2 / 10);
  return {
    pool,
    part: under[0].part,
    area: strictestArea(
      scene,
      wetted.map((c) => c.part),
    ),
  };
}

/** Nothing is asked of the non-food area; where only dry cleaning reaches, only of what product itself can fill. */
function isAsked(scene: Scene, area: AreaClass): boolean {
  return area === 'food' || (area === 'splash' && !scene.dryOnly);
}

/** A blind hole that is too deep is told as such, with the liquid that stays in it. */
function isInBlindHole(scene: Scene, { pool, area }: Kept): boolean {
  const demand = firstInForce(scene, ['hollow-blind'], area);
  const most = demand && limitOf(demand, 'ratio', area)?.atMost;
  return (scene.survey.measures.hollows?.blind ?? []).some(
    (channel) => most != null && channel.ratio > most && liesIn(pool, channel),
  );
}

function unasked(scene: Scene, count: number): string {
  const why = scene.dryOnly
    ? 'the non-food area, or in the splash area of a machine cleaned dry'
    : 'the non-food area';
  return `${count} pools lie in ${why}: no requirement asks that they drain.`;
}

function draftOf(scene: Scene, group: readonly Kept[], anchor: string): Draft | null {
  const sorted = [...group].sort(
    (a, b) => b.pool.volume_mL - a.pool.volume_mL || (a.pool.id < b.pool.id ? -1 : 1),
  );
  const { pool, part, area } = sorted[0];
  const demand = firstInForce(scene, [ofElement[elementOf(scene, part) ?? ''], 'gen-drain'], area);
  if (!demand) return null;
  const total = sum(group);
  const full = group.length === 1 && fillsVessel(scene, part, pool);
  const carriers = new Set(sorted.map((k) => k.part)).size;
  const wet = wetness(scene.brief, pool.depth_mm, pool.area_cm2);
  const name = TheName(scene.known.model.parts[part].name);
  const places = sorted.map((k) => k.pool);
  const parts = [...new Set([part, ...sorted.map((k) => k.part), ...carried(scene, sorted)])];
  return {
    demand,
    limit: acceptedLimit(scene, limitOf(demand, 'volume', area)),
    status: full ? 'notShown' : 'notMet',
    measure: 'standingLiquid',
    anchor,
    places,
    parts,
    area,
    title: full
      ? `${name} fills with ${volume(total)} as drawn; whether its outlet opens and empties it is not shown`
      : group.length === 1
        ? `${name} keeps ${volume(total)} after draining`
        : `${alike(name, carriers)} keeps ${volume(total)} after draining, in ${group.length} small pools`,
    numbers: [
      measured('Stays after draining', total, 'mL', 'volume of air below the spill height'),
      measured('Depth', pool.depth_mm, 'mm', 'spill height less the deepest point'),
      ...(full ? [] : wet.numbers),
    ],
    why: full
      ? 'A vessel is made to hold liquid. What counts is that it runs empty, with its outlet open, and that nothing stays behind valve, pump or gate.'
      : `Product and rinse water stay here, ${formatQuantity(pool.depth_mm, 'mm', { digits: 2 })} deep. ${wet.why}`,
    harm: 'keeps',
    weight: total,
    weightLabel: 'mL that stay',
    caveats: [
      ...places.flatMap((p) => p.caveats ?? []),
      ...(full ? [] : wet.caveats),
      ...(full ? ['A valve, pump or gate that is drawn closed dams it: draw it open and survey again.'] : []),
    ],
  };
}

/** The brief may accept more or less than the catalogue's criterion. */
const acceptedLimit = (scene: Scene, limit: Limit | null): Limit | null =>
  limit && {
    ...limit,
    atMost: scene.brief.acceptedPool_mL,
    datum: 'one pool, machine as installed, by the brief',
  };

const vessels = new Set(['hopper', 'tank', 'pipe', 'pump', 'valve']);
/** From this share of its height on, a vessel is full rather than badly drained. */
const fullShare = 0.5;

/** A vessel or line that stands full holds what it is made to hold, behind an outlet that is drawn shut. */
function fillsVessel(scene: Scene, part: number, pool: Pool): boolean {
  const { low, high } = scene.known.extents[part];
  return vessels.has(elementOf(scene, part) ?? '') && pool.depth_mm >= fullShare * (high[2] - low[2]);
}

/** The other parts that dam the pools. */
function carried(scene: Scene, group: readonly Kept[]): number[] {
  return group.flatMap((k) =>
    k.pool.parts.map((id) => scene.known.indexOf.get(id)).filter((p) => p !== undefined),
  );
}

const sum = (list: readonly Kept[]) => list.reduce((total, k) => total + k.pool.volume_mL, 0);
const volume = (mL: number) => formatQuantity(mL, 'mL', { digits: mL < 1 ? 2 : 3 });
