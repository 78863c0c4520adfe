/** Makes a finding of what a rule drew up. */
import { builtIn, type Catalogue, type Limit, type RequirementKind } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import { consequenceOf } from './consequence.ts';
import type { Draft } from './draft.ts';
import { around, middle } from './geometry/extent.ts';
import type { Scene } from './scene.ts';
import type { Finding } from './types.ts';

/** A finding, and how far it goes beyond the lowest rank. */
export interface Ranked {
  readonly finding: Finding;
  readonly beyond: number;
}

export function findingOf(scene: Scene, draft: Draft): Ranked {
  const { demand, places } = draft;
  const boxes =
    places.length > 0
      ? places.map(({ bounds_mm: [low, high] }) => ({ low, high }))
      : draft.parts.length > 0
        ? draft.parts.map((p) => scene.known.extents[p])
        : scene.known.extents;
  const box = around(boxes);
  const at_mm = places[0]?.at_mm ?? middle(box);
  const { consequence, beyond } = consequenceOf(draft, scene.brief.careLevel);
  const finding: Finding = {
    id: `${demand.id}~${hash(draft.anchor)}`,
    requirement: demand.id,
    status: draft.status,
    measure: draft.measure,
    places: places.map((p) => p.id),
    parts: draft.parts.map((p) => scene.parts[p].partId),
    at_mm,
    bounds_mm: [box.low, box.high],
    height_mm: at_mm[2] - floorHeight(scene),
    areaClass: draft.area,
    title: draft.title,
    numbers: draft.numbers,
    why: draft.why,
    demand: {
      text: demand.text,
      kind: demand.kind,
      citations: demand.citations,
      limit: draft.limit ? limitInWords(draft.limit, scene.catalogue) : 'no number in the sources',
    },
    remedies: demand.remedies,
    ...(demand.conflict ? { conflict: demand.conflict } : {}),
    consequence,
    caveats: [...new Set([...draft.caveats, ...assumptions(scene, draft)])],
  };
  return { finding, beyond };
}

/** The area class decides much, so a finding says when nobody has confirmed it. */
function assumptions(scene: Scene, draft: Draft): string[] {
  const [p] = draft.parts;
  if (p === undefined || scene.parts[p].setByUser.includes('areaClass')) return [];
  return [`The area class is a proposal. ${scene.parts[p].reasons[0]}`];
}

const floorHeight = ({ known }: Scene) =>
  known.extents.reduce((least, e) => Math.min(least, e.low[2]), Infinity);

const standing: Record<RequirementKind, string> = {
  law: 'law',
  standard: 'standard',
  guidance: 'agreed criterion, after guidance',
  commonPractice: 'agreed criterion, common practice',
};

const quantityWords: Record<string, string> = {
  roofSlope: 'slope of the top',
  floorClearance: 'clearance',
  benchClearance: 'clearance',
  productHeight: 'height',
  levellingAllowance: 'allowance',
  shareAbove: 'share',
  shareHidden: 'share',
  drivesAbove: 'number',
  cablesAbove: 'number',
  ratio: 'depth over width',
  depthOverWidth: 'depth over width',
  thirdRadius: 'third radius',
  threadsBeyondNut: 'turns beyond the nut',
  bareThreads: 'bare threads',
  coveredTravel: 'covered travel',
  recess: 'recesses',
  openingAngle: 'opening',
  wallDistance: 'distance',
};

/** "radius at least 3 mm, inside edge of two faces (standard: Hygiene annex …, B.3.1.1, partly seen)". */
export function limitInWords(limit: Limit, { sources }: Catalogue = builtIn): string {
  const bounds: string[] = [];
  if (limit.atLeast !== undefined && !(limit.atLeast === 0 && limit.atMost !== undefined))
    bounds.push(`at least ${formatQuantity(limit.atLeast, limit.unit)}`);
  if (limit.atMost !== undefined) bounds.push(`at most ${formatQuantity(limit.atMost, limit.unit)}`);
  const source = sources.get(limit.citation.source)!;
  const from =
    limit.kind === 'commonPractice'
      ? ''
      : `: ${source.title}, ${limit.citation.clause}, ${seenWords[limit.citation.standing]}`;
  return `${quantityWords[limit.quantity] ?? limit.quantity} ${bounds.join(', ')}, ${limit.datum} (${standing[limit.kind]}${from})`;
}

const seenWords = { seen: 'seen', partlySeen: 'partly seen', fromMemory: 'from memory' } as const;

/** FNV-1a, 32 bit, over UTF-16 code units, as 8 hex digits (Fowler, Noll, Vo; RFC 9923). */
function hash(text: string): string {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    h = Math.imul(h ^ (unit & 0xff), 0x01000193);
    h = Math.imul(h ^ (unit >>> 8), 0x01000193);
  }
  return (h >>> 0).toString(16).padStart(8, '0');
}
