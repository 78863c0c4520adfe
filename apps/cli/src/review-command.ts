import { stat } from 'node:fs/promises';
import { basename, extname } from 'node:path';
import { readProjectFolder, surveyFile } from '@coveline/compute';
import type { LengthUnit, UpAxis } from '@coveline/model';
import { type Project, parseProject, type Revision, yardstickOf } from '@coveline/project';
import { review, traceOf } from '@coveline/review';
import { Command } from 'commander';
import { UsageError } from './failure.ts';
import { keptJson } from './kept-calculations.ts';
import { parseUnit, parseUp } from './options.ts';
import { print, writeJson, writeOut } from './output.ts';
import { readPacks } from './packs.ts';
import { progressOn } from './progress.ts';
import { reviewText } from './review-text.ts';

interface ReviewOptions {
  readonly revision?: string;
  readonly up?: UpAxis;
  readonly unit?: LengthUnit;
  readonly json?: string;
  readonly file?: string;
  readonly date: string;
  readonly pack: readonly string[];
  readonly quiet?: boolean;
}

export function reviewCommand(): Command {
  return new Command('review')
    .summary('findings for a machine, and its technical file as PDF')
    .description(
      'Surveys a machine and holds it against the requirements. Give a project folder (project.json beside its models)\n' +
        'or a model file, which is then reviewed with a default brief.',
    )
    .argument('<project>', 'project folder or model file')
    .option('--revision <id>', 'revision of the project (default: the last one)')
    .option('--up <axis>', 'for a model file: axis that points up', parseUp)
    .option('--unit <unit>', 'for a model file without a unit: mm, cm, m, in', parseUnit)
    .option('--json <file>', 'write everything as JSON (coveline.review/1); - for standard output')
    .option('--file <pdf>', 'write the technical file')
    .option(
      '--date <day>',
      'day of the review, which decides the law in force',
      parseDate,
      new Date().toISOString().slice(0, 10),
    )
    .option(
      '--pack <file>',
      'add requirements, materials and profiles from a pack (docs/formats.md); may stand several times',
      (path: string, others: readonly string[]) => [...others, path],
      [],
    )
    .option('--quiet', 'no progress')
    .addHelpText(
      'after',
      `
Examples
  coveline review examples/porridge-doser/out/project
  coveline review examples/porridge-doser/out/project --revision A --file doser.pdf
  coveline review filler.step --up y --json -

Exit codes: 0 done, 2 wrong usage, 3 the input could not be read, 4 a limit was hit, 1 a fault of ours.`,
    )
    .action(async (path: string, o: ReviewOptions) => {
      const { revision, model: modelPath, ...opened } = await open(path, o);
      const packs = await readPacks(o.pack, opened.project);
      const project = { ...opened.project, packs };
      const { notes, ...yardstick } = yardstickOf(project);
      const progress = progressOn(process.stderr, o.quiet ?? false);
      const surveyed = await surveyFile(
        {
          path: modelPath,
          up: revision.up,
          ...(revision.unit && { unit: revision.unit }),
          site: project.site[revision.id] ?? {},
        },
        { onProgress: progress.update },
      ).finally(progress.end);
      const { model, outcome } = surveyed;
      const judged = review({
        model,
        survey: outcome.result,
        ...yardstick,
        partChanges: project.parts[revision.id] ?? {},
        answers: project.answers[revision.id] ?? {},
        groups: project.cleaning[revision.id] ?? {},
        today: o.date,
      });
      const found = { ...judged, notes: [...notes, ...judged.notes] };
      const decisions = project.decisions[revision.id] ?? {};
      if (o.json !== undefined) {
        const calculations = project.calculations.map(keptJson);
        const of = { project: project.name, revision: revision.id };
        await writeJson(o.json, {
          ...found,
          ...of,
          decisions,
          trace: traceOf(found, decisions),
          calculations,
        });
      }
      if (o.file !== undefined) {
        // Loaded here: the other ways of using the command start faster without the typesetter.
        const { makeFile } = await import('@coveline/file');
        const { pdf } = await makeFile({
          project,
          revisionId: revision.id,
          model,
          outcome,
          review: found,
          decisions,
          date: o.date,
        });
        await writeOut(o.file, pdf);
      }
      if (o.json !== '-')
        await print(reviewText({ project, label: revision.label, review: found, decisions }));
    });
}

interface Opened {
  readonly project: Project;
  readonly revision: Revision;
  readonly model: string;
}

async function open(path: string, o: ReviewOptions): Promise<Opened> {
  const isFolder = await stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
  if (!isFolder) return ofModel(path, o);
  if (o.up ?? o.unit)
    throw new UsageError('--up and --unit are for model files; a project says them itself.');
  const { project, models } = await readProjectFolder(path);
  const ids = project.revisions.map((r) => r.id);
  const revision =
    o.revision === undefined ? project.revisions.at(-1) : project.revisions.find((r) => r.id === o.revision);
  if (!revision) {
    throw new UsageError(
      ids.length === 0
        ? `The project in "${path}" has no revision: add a model to its project.json.`
        : `The project has no revision "${o.revision}"; it has ${ids.join(', ')}.`,
    );
  }
  return { project, revision, model: models.get(revision.id)! };
}

/** A model on its own is a project with one revision and a default brief. */
function ofModel(path: string, { up = 'z', unit, revision }: ReviewOptions): Opened {
  if (revision !== undefined)
    throw new UsageError('--revision is for project folders; a model file is one revision.');
  const file = basename(path);
  const parsed = parseProject({
    schema: 'coveline.project/1',
    name: basename(file, extname(file)) || file,
    revisions: [{ id: 'A', label: 'Revision A', file, up, ...(unit && { unit }) }],
  });
  if (!parsed.ok) throw new UsageError(parsed.errors[0]);
  return { project: parsed.project, revision: parsed.project.revisions[0], model: path };
}

function parseDate(text: string): string {
  if (/^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(Date.parse(text))) return text;
  throw new UsageError(`--date takes a day such as 2027-01-31; got "${text}".`);
}
