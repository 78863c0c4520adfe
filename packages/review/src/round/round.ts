/**
 * The round: what geometry cannot show, in the order in which somebody walks up the machine. Questions of the
 * catalogue come first; a requirement that no question covers stands for itself.
 */
import {
  type Demand,
  type Evidence,
  elements,
  matters,
  type Question,
  questions,
  type Reading,
} from '@coveline/catalogue';
import type { Answer } from '@coveline/project';
import { partsByElement, presentElements } from '../parts/elements.ts';
import type { Scene } from '../scene.ts';

export interface RoundItem {
  /** Id of the question, or of the requirement that stands for itself. */
  readonly id: string;
  readonly text: string;
  readonly why: string;
  readonly good: string;
  readonly how: string;
  readonly reading?: Reading;
  /** Requirements in force for which the answer is evidence. */
  readonly shows: readonly string[];
  /** Null: not looked at. */
  readonly answer: Answer | null;
}

export interface RoundStop {
  /** Key of an element, or of a matter of the whole plant. */
  readonly about: string;
  readonly name: string;
  /** Lowest point of its parts above the lowest of the machine; null where no part is known to belong to it. */
  readonly height_mm: number | null;
  readonly parts: readonly string[];
  readonly items: readonly RoundItem[];
}

export interface Round {
  readonly stops: readonly RoundStop[];
  readonly items: number;
  readonly answered: number;
}

/** Elements and matters of this machine from the floor up; those without a place come after those with one. */
export function roundOf(scene: Scene): Round {
  const stops = stopsOf(scene).filter((s) => s.items.length > 0);
  const items = stops.flatMap((s) => s.items);
  return { stops, items: items.length, answered: items.filter((i) => i.answer !== null).length };
}

function stopsOf(scene: Scene): RoundStop[] {
  const present = presentElements(scene.known);
  const parts = partsByElement(scene.known);
  const floor = Math.min(...scene.known.extents.map((e) => e.low[2]));
  const covered = new Set(
    questions
      .filter((q) => isAsked(q, present))
      .flatMap((q) => q.shows.filter((id) => scene.demands.has(id))),
  );
  const stops: RoundStop[] = elements
    .filter((e) => e.always || present.has(e.id))
    .map((e) => {
      const own = parts.get(e.id) ?? [];
      return {
        about: e.id,
        name: e.name,
        height_mm:
          own.length === 0 ? null : Math.min(...own.map((p) => scene.known.extents[p].low[2])) - floor,
        parts: own.map((p) => scene.parts[p].partId),
        items: [
          ...questions.filter((q) => q.about === e.id).map((q) => asked(scene, q)),
          ...[...scene.demands.values()]
            .filter((d) => d.element === e.id && !covered.has(d.id) && isShownOnRound(d))
            .map((d) => lookedAt(scene, d)),
        ],
      };
    });
  const placed = stops.filter((s) => s.height_mm !== null).sort((a, b) => a.height_mm! - b.height_mm!);
  return [
    ...placed,
    ...stops.filter((s) => s.height_mm === null),
    ...matters.map((m) => ({
      about: m.id,
      name: m.name,
      height_mm: null,
      parts: [],
      items: questions.filter((q) => q.about === m.id).map((q) => asked(scene, q)),
    })),
  ];
}

const everywhere = new Set([...elements.filter((e) => e.always), ...matters].map((e) => e.id));
const isAsked = (q: Question, present: ReadonlySet<string>) =>
  everywhere.has(q.about) || present.has(q.about);

function asked(scene: Scene, q: Question): RoundItem {
  return {
    id: q.id,
    text: q.text,
    why: q.why,
    good: q.good,
    how: q.how,
    ...(q.reading ? { reading: q.reading } : {}),
    shows: q.shows.filter((id) => scene.demands.has(id)),
    answer: scene.answers[q.id] ?? null,
  };
}

const ways: Partial<Record<Evidence['by'], string>> = {
  hand: 'Measure it on the machine.',
  inspection: 'Look at it on the machine.',
  documents: 'Ask for the paper, and read what it covers and its date.',
};

/** Calculations are made at the desk, and measures by the survey. */
export const isShownOnRound = (d: Demand) => d.evidence.some((e) => ways[e.by] !== undefined);

const hazardWords = {
  biological: 'germs',
  chemical: 'chemicals',
  physical: 'foreign bodies',
  allergen: 'allergens',
  operatorSafety: 'harm to people at the machine',
} as const;

function lookedAt(scene: Scene, d: Demand): RoundItem {
  return {
    id: d.id,
    text: d.text,
    why: `It keeps away ${d.hazards.map((h) => hazardWords[h]).join(' and ')}.`,
    good: d.text,
    how: [...new Set(d.evidence.flatMap((e) => ways[e.by] ?? []))].join(' '),
    shows: [d.id],
    answer: scene.answers[d.id] ?? null,
  };
}
