/** Heads with recesses, bolts through walls of the food area, bare threads: candidates that somebody has to look at. */
import type { AreaClass, Demand } from '@coveline/catalogue';
import type { FastenerHead } from '@coveline/survey';
import type { Draft, RuleResult } from '../draft.ts';
import { alike, TheName } from '../names/display.ts';
import { measured } from '../numbers/measured.ts';
import { firstId, firstInForce, limitOf, partsAt, type Scene, twinKey } from '../scene.ts';
import { bareThreads } from './threads.ts';
import { groupedBy, unitOf } from './unit-of.ts';

const recesses: Partial<Record<FastenerHead['kind'], string>> = {
  hexagonSocket: 'a hexagon socket',
  slot: 'a slot',
  crossRecess: 'a cross recess',
};

interface Head {
  readonly head: FastenerHead;
  readonly part: number;
  readonly area: AreaClass;
  readonly demand: Demand;
}

export function fasteners(scene: Scene): RuleResult {
  const found = scene.survey.measures.fasteners ?? { heads: [], threads: [] };
  const heads = found.heads.flatMap((head) => judged(scene, head));
  const groups = groupedBy(heads, (h) =>
    [h.demand.id, recesses[h.head.kind] ?? '', unitOf(scene, h.part)].join('|'),
  );
  return {
    drafts: [...bareThreads(scene, found.threads), ...groups.map((group) => draftOf(scene, group))],
    settles: ['fast-none-food', 'fast-nutbolt', 'fast-head', 'fast-protrude', 'feet-thread'],
    basis: `${found.heads.length} heads and ${found.threads.length} threads found`,
    notes: [],
  };
}

/** A name, or a head of unknown kind, raises a question and makes no finding. */
function judged(scene: Scene, head: FastenerHead): Head[] {
  const [part] = partsAt(scene, head);
  if (part === undefined || head.kind === 'unknown' || head.from === 'name') return [];
  const area = scene.parts[part].areaClass;
  const demand = firstInForce(scene, ['fast-nutbolt', recesses[head.kind] && 'fast-head'], area);
  return demand ? [{ head, part, area, demand }] : [];
}

function draftOf(scene: Scene, group: readonly Head[]): Draft {
  const sorted = [...group].sort((a, b) => (a.head.id < b.head.id ? -1 : 1));
  const [{ head, part, area, demand }] = sorted;
  const parts = [...new Set(sorted.map((h) => h.part))].sort((a, b) => a - b);
  const { name } = scene.known.model.parts[parts[0]];
  const twins = parts.every((p) => twinKey(scene, p) === twinKey(scene, part));
  const who = twins
    ? alike(TheName(name), parts.length)
    : `${TheName(name)} and ${parts.length - 1} more beside it`;
  const isRecess = demand.id === 'fast-head';
  const several = parts.length > 1 && !twins;
  return {
    demand,
    limit: limitOf(demand, 'recess', area),
    status: 'notShown',
    measure: 'fasteners',
    anchor: `head|${recesses[head.kind] ?? ''}|${firstId(scene, parts)}`,
    places: sorted.map((h) => h.head),
    parts,
    area,
    title: isRecess
      ? `${who} ${several ? 'have' : 'has'} ${recesses[head.kind]} in the head`
      : `${who} ${several ? 'hold' : 'holds'} parts of the food area: seals under head and at shank are not shown`,
    numbers: [
      measured(
        isRecess ? 'Heads with a recess' : 'Heads and nuts',
        sorted.length,
        '1',
        'counted on the model',
      ),
      ...(head.acrossFlats_mm === undefined
        ? []
        : [measured('Across flats', head.acrossFlats_mm, 'mm', 'distance between two faces of the hexagon')]),
    ],
    why: isRecess
      ? 'A recess holds water and soil after every cleaning; nobody wipes it out, and drops from it carry on what grew there.'
      : 'Product is pressed under a head without a seal and along the shank; it stays there through every cleaning and comes out again with pressure and heat.',
    harm: 'keeps',
    weight: sorted.length,
    weightLabel: isRecess ? 'heads with a recess' : 'heads and nuts',
    caveats: [
      ...sorted.flatMap((h) => h.head.caveats ?? []),
      ...(head.from === 'cad'
        ? []
        : ['The kind of the head is told by the shape of its triangles, not by CAD faces.']),
    ],
  };
}
