import { yardstickOf } from '@coveline/project';
import type { defaultSettings } from '@coveline/survey';
import type { FileControl, FileRequest } from '../request.ts';
import { briefContent } from './brief.ts';
import { cleaningContent } from './cleaning.ts';
import type { FileContent, Row } from './content.ts';
import { concessionsContent, decidedInWords } from './decisions.ts';
import { findingsContent } from './findings.ts';
import { keptContent } from './kept.ts';
import { machineContent } from './machine.ts';
import { newPrinter } from './printable.ts';
import { proofContent } from './proof.ts';
import { requirementsContent, sourcesContent } from './requirements.ts';
import { roundContent } from './round.ts';
import { newScene } from './scene.ts';
import { signImages } from './signs.ts';
import { siteRows } from './site.ts';
import { cautions, counted } from './words.ts';
import { newWorkingBook } from './workings.ts';

export interface BuiltContent {
  readonly content: FileContent;
  /** PNG bytes by file name. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
  readonly warnings: readonly string[];
}

/** Everything that the document shows. Throws on an unknown revision and on a date that is none. */
export async function buildContent(request: FileRequest, control: FileControl = {}): Promise<BuiltContent> {
  const { project, revisionId, outcome, review, decisions, date } = request;
  const revision = project.revisions.find((r) => r.id === revisionId);
  if (!revision) throw new RangeError(`The project has no revision "${revisionId}".`);
  const [year, month, day] = partsOfDate(date);
  const printer = newPrinter();
  const { text } = printer;
  const { brief, catalogue } = yardstickOf(project);
  const pictures = new Map<string, Uint8Array>();
  const keep = (name: string, png: Uint8Array): string => {
    pictures.set(name, png);
    return name;
  };
  const scene = newScene(request.model, outcome);
  const book = newWorkingBook(printer);
  const groups = await findingsContent(request, catalogue, scene, printer, book, keep, control);
  const notMet = review.findings.filter((f) => f.status === 'notMet').length;
  const facts: Row[] = [
    { label: 'Revision', value: text(revision.label) },
    { label: 'Model', value: text(revision.file) },
    { label: 'Date', value: date },
    {
      label: 'Findings',
      value: `${review.findings.length}: ${notMet} not met, ${review.findings.length - notMet} not shown`,
    },
    {
      label: 'Decided',
      value: `${review.findings.filter((f) => decisions[f.id]).length} of ${review.findings.length}`,
    },
  ];
  const content: FileContent = {
    title: text(`${project.name}: hygienic design file, ${revision.label}`),
    machine: text(project.name),
    head: printer.short(`${printer.short(project.name, 60)} · ${revision.label}`, 90),
    revision: text(revision.label),
    invented: project.invented,
    date,
    year,
    month,
    day,
    facts,
    brief: briefContent(brief, catalogue, printer),
    ...machineContent(request, scene, printer, keep),
    summary: `${counted(review.findings.length, 'finding')}, ordered by what could follow from them: the gravest first, and within a rank by the number that stands with each. No score is formed.`,
    groups,
    signs: signImages,
    decided: decidedInWords(review.findings, decisions),
    concessions: concessionsContent(review.findings, decisions, date, printer),
    ...requirementsContent(review, catalogue, printer),
    round: roundContent(request, printer),
    cleaning: cleaningContent(request, catalogue, scene, printer, book, keep),
    proof: proofContent(request, printer, book),
    kept: keptContent(request, printer),
    workings: book.all(),
    settings: settingsRows(outcome.result.settings),
    site: siteRows(request, printer),
    surveyNotes: [...outcome.result.notes, ...review.notes].map(text),
    cautions,
    sources: sourcesContent(review, catalogue, printer),
  };
  return { content, pictures, warnings: warningsOf(printer.missing()) };
}

function partsOfDate(date: string): [number, number, number] {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  const [year, month, day] = (found ?? []).slice(1).map(Number);
  const made = new Date(Date.UTC(year, month - 1, day));
  if (!found || made.getUTCMonth() !== month - 1 || made.getUTCDate() !== day)
    throw new RangeError(`"${date}" is not a date; write it as 2026-01-31.`);
  return [year, month, day];
}

const settingWords: Readonly<Record<keyof typeof defaultSettings, string>> = {
  pitch_mm: 'Pitch of the liquid columns, mm',
  leastPool_mL: 'Smallest pool listed, mL',
  leastPoolDepth_mm: 'Shallowest pool listed, mm',
  sealedBelow_mm: 'Seams and tunnels count as closed for liquid below, mm (0: as drawn)',
  flatBelow_deg: 'A face is level below, degrees',
  leastFlat_cm2: 'Smallest level face listed, cm²',
  cornerRadiusBelow_mm: 'An inside corner is listed below a radius of, mm',
  cornerAngleBelow_deg: 'and below an included angle of, degrees',
  gapBelow_mm: 'A gap is listed below, mm',
  gapSpacing_mm: 'Distance between the points where gaps are looked for, mm',
  contact_mm: 'Parts touch when closer than, mm',
  leastHollow_mL: 'Smallest hollow listed, mL',
  leastBlindRatio: 'A blind channel is listed from a depth over its mouth of',
  hand_mm: 'Opening that a hand goes through, mm',
  arm_mm: 'Length of an arm, mm',
  finger_mm: 'How far the fingers reach beyond, mm',
  tool_mm: 'Opening that a tool goes through, mm',
  toolLength_mm: 'Length of a tool, mm',
  bristle_mm: 'How far its bristles reach beyond, mm',
  reachSpacing_mm: 'Distance between the points of the way of a hand, mm',
  leastUnreached_cm2: 'Smallest patch out of reach listed, cm²',
  jetSpacing_mm: 'Distance between the points where jets are looked for, mm',
  leastShadow_cm2: 'Smallest jet shadow listed, cm²',
  besideMouth_mm: 'Width of the ring beside a mouth that is looked at, mm',
  floorBelow_mm: 'An underside is listed below a height of, mm',
  leastUnderside_cm2: 'Smallest underside listed, cm²',
  wallBelow_mm: 'Parts nearer to a wall are listed below, mm',
};

function settingsRows(settings: typeof defaultSettings): Row[] {
  // A survey that was made earlier may know fewer settings.
  return Object.entries(settingWords).flatMap(([key, label]) =>
    key in settings ? [{ label, value: String(settings[key as keyof typeof defaultSettings]) }] : [],
  );
}

function warningsOf(missing: readonly number[]): string[] {
  if (missing.length === 0) return [];
  const some = missing.slice(0, 5).map((c) => `U+${c.toString(16).toUpperCase().padStart(4, '0')}`);
  const rest = missing.length - some.length;
  return [
    `The typeface lacks ${missing.length} characters of the names and texts; they are written as code points: ${some.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}.`,
  ];
}
