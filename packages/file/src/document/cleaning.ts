/** How the surfaces are cleaned: one sheet a group that a cleaner can follow, and what stands against it. */
import { type Catalogue, mediumById, type Pictogram } from '@coveline/catalogue';
import type { CleaningStep } from '@coveline/project';
import { formatQuantity } from '@coveline/quantity';
import type { GroupReview } from '@coveline/review';
import { cameraOnBox } from '../picture/camera.ts';
import { toPng } from '../picture/image.ts';
import { directionOf } from '../picture/place-view.ts';
import { renderImage } from '../picture/render.ts';
import type { FileRequest } from '../request.ts';
import type { CleaningContent, GroupSheet, Picture, Row } from './content.ts';
import type { Printer } from './printable.ts';
import type { Scene } from './scene.ts';
import { cleaningWords, counted } from './words.ts';
import type { WorkingBook } from './workings.ts';

const size = [760, 620] as const;
/** Names of parts that a sheet lists; the workbench lists all. */
const mostParts = 40;

type Keep = (name: string, png: Uint8Array) => string;

export function cleaningContent(
  { review, model }: FileRequest,
  catalogue: Catalogue,
  scene: Scene,
  printer: Printer,
  book: WorkingBook,
  keep: Keep,
): CleaningContent {
  const { groups, resources, uncleaned } = review.cleaning;
  const { text } = printer;
  const nameOf = new Map(model.parts.map((p) => [p.id, p.name]));
  return {
    takes: (resources?.numbers ?? []).map((n) => ({
      label: n.label,
      value: formatQuantity(n.value, n.unit),
      working: book.numberOf(n.working, null),
    })),
    notCounted: (resources?.open ?? []).map(text),
    uncleaned: uncleaned.length === 0 ? '' : `${counted(uncleaned.length, 'part')} in no group`,
    sheets: groups.map((g, i) => sheetOf(g, i, nameOf, catalogue, scene, printer, keep)),
  };
}

function sheetOf(
  review: GroupReview,
  index: number,
  nameOf: ReadonlyMap<string, string>,
  { sources }: Catalogue,
  scene: Scene,
  { text, short }: Printer,
  keep: Keep,
): GroupSheet {
  const { group, proposed, breaches, materials } = review;
  const names = countedNames(group.parts.map((id) => nameOf.get(id) ?? id));
  return {
    title: text(group.name),
    facts: `${cleaningWords[group.way]}, ${counted(group.parts.length, 'part')}, about ${Math.round(review.minutes)} min. ${proposed ? 'A proposal that nobody has set.' : 'Set for this machine.'}`,
    picture: pictureOf(review, index, scene, short(group.name, 60), keep),
    parts: short(
      names.slice(0, mostParts).join(', ') +
        (names.length > mostParts ? `, and ${names.length - mostParts} more` : ''),
      1200,
    ),
    steps: group.steps.map((step, at) => stepRow(step, at, text)),
    hazards: hazardsOf(group.steps).map((row) => ({ label: row.label, value: text(row.value) })),
    breaches: breaches.map(({ rule, step, text: what }) =>
      text(
        `${rule.danger ? 'Dangerous. ' : ''}${step === null ? '' : `Step ${step + 1}: `}${what} ${rule.why} (${sources.get(rule.citation.source)?.title ?? rule.citation.source}, ${rule.citation.clause})`,
      ),
    ),
    materials: materials
      .filter((v) => v.verdict !== 'suitable')
      .map((v) => ({
        material: text(`${v.name}, ${counted(v.parts.length, 'part')}`),
        medium: text(`step ${v.step + 1}, ${mediumById.get(group.steps[v.step].medium)?.name ?? ''}`),
        verdict: verdictWords[v.verdict],
        contact: `${formatQuantity(v.contact_hyr, 'h')} a year`,
        why: text(`${v.text} ${v.source}`),
      })),
  };
}

const verdictWords = {
  suitable: 'suitable',
  limited: 'limited',
  unsuitable: 'not suitable',
  unknown: 'unknown',
} as const;

/** The machine with the parts of the group in tone. */
function pictureOf({ group }: GroupReview, index: number, scene: Scene, name: string, keep: Keep): Picture {
  const camera = cameraOnBox(scene.bounds[0], scene.bounds[1], directionOf(-35, 28), size);
  const highlighted = new Set(group.parts.flatMap((id) => scene.partIndex.get(id) ?? []));
  const png = toPng(renderImage(scene.model, scene.tree, { camera, size, highlighted }));
  return {
    file: keep(`group-${index + 1}.png`, png),
    alt: `The machine from the front left with the parts of "${name}" in tone.`,
    caption: 'In tone: what this sheet cleans',
  };
}

function stepRow(step: CleaningStep, at: number, text: Printer['text']): GroupSheet['steps'][number] {
  const value = (v: number | undefined, unit: string) => (v === undefined ? '' : formatQuantity(v, unit));
  return {
    number: String(at + 1),
    what: text(
      `${stepWords[step.kind]}${step.medium === 'none' ? '' : ` with ${mediumById.get(step.medium)?.name ?? step.medium}`}`,
    ),
    how: text(step.how),
    strength: [value(step.concentration_pct, '%'), mixOf(step)].filter(Boolean).join(', '),
    heat: value(step.temperature_degC, 'degC'),
    time: value(step.time_min, 'min'),
  };
}

/** What goes into a bucket of ten litres, of the pure substance; the label tells what the product holds. */
function mixOf({ concentration_pct, action }: CleaningStep): string {
  if (concentration_pct === undefined || concentration_pct > 20 || action === 'flow') return '';
  return `${formatQuantity(concentration_pct * 100, 'g')} in 10 L`;
}

const stepWords: Readonly<Record<CleaningStep['kind'], string>> = {
  clear: 'Clear and lock out',
  dismantle: 'Take apart',
  dryClean: 'Clean dry',
  preRinse: 'Pre-rinse',
  detergent: 'Clean',
  rinse: 'Rinse',
  acid: 'Acid',
  inspect: 'Look',
  disinfect: 'Disinfect',
  finalRinse: 'Last rinse',
  drain: 'Drain',
  dry: 'Dry',
  reassemble: 'Put together',
};

const pictogramWords: Readonly<Record<Pictogram, string>> = {
  GHS02: 'flame',
  GHS03: 'flame over circle',
  GHS05: 'corrosion',
  GHS06: 'skull',
  GHS07: 'exclamation mark',
  GHS08: 'health hazard',
  GHS09: 'environment',
};

/** Each medium once, with its pictograms in words and its caution. */
function hazardsOf(steps: readonly CleaningStep[]): Row[] {
  const media = [...new Set(steps.map((s) => s.medium))].flatMap((id) => mediumById.get(id) ?? []);
  return media.map((m) => ({
    label: m.id === 'none' ? 'machine' : m.name,
    value: `${m.pictograms.length > 0 ? `${m.pictograms.map((p) => `${p} ${pictogramWords[p]}`).join(', ')}. ` : ''}${m.caution}`,
  }));
}

/** "hex nut (4)" for namesakes, in the order in which they come first. */
function countedNames(names: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const n of names) counts.set(n, (counts.get(n) ?? 0) + 1);
  return [...counts].map(([n, c]) => (c === 1 ? n : `${n} (${c})`));
}
