import { basename } from 'node:path';
import { type FileSurveyRequest, SurveyLimitError, surveyFile } from '@coveline/compute';
import type { LengthUnit, UpAxis } from '@coveline/model';
import type { MeasureName } from '@coveline/survey';
import { Command } from 'commander';
import {
  measures,
  parseMeasures,
  parsePositive,
  parseTilt,
  parseTiltRange,
  parseUnit,
  parseUp,
} from './options.ts';
import { print, writeJson } from './output.ts';
import { progressOn } from './progress.ts';
import { surveyJson } from './survey-json.ts';
import { surveyText } from './survey-text.ts';

interface SurveyOptions {
  readonly up: UpAxis;
  readonly unit?: LengthUnit;
  readonly tilt?: { axis: 'x' | 'y'; deg: number };
  readonly tiltRange?: number;
  readonly sealedBelow?: number;
  readonly measures?: MeasureName[];
  readonly deviation?: number;
  readonly timeLimit: number;
  readonly memoryLimit: number;
  readonly json?: string;
  readonly quiet?: boolean;
}

export function surveyCommand(): Command {
  return new Command('survey')
    .summary('measure a model: what holds liquid, what is flat, sharp, narrow or hollow')
    .description(
      'Reads a model and measures its geometry. STEP files keep their faces, so that radii and edges are exact;\n' +
        'for STL, OBJ, 3MF and GLB they are estimated from triangles, and the result says so.',
    )
    .argument('<model>', 'STEP, STL, OBJ, 3MF or GLB file')
    .option('--up <axis>', 'axis of the file that points up: x, y, z, -x, -y, -z', parseUp, 'z')
    .option('--unit <unit>', 'unit of files that carry none: mm, cm, m, in (default: mm)', parseUnit)
    .option('--tilt <axis:deg>', 'turn the whole machine, e.g. x:3 for 3 degrees about its x axis', parseTilt)
    .option(
      '--tilt-range <deg>',
      'standing liquid also at the worst tilt within this much either way, and at the best one (slower)',
      parseTiltRange,
    )
    .option(
      '--sealed-below <mm>',
      'close seams and tunnels narrower than this for standing liquid, and tell what that adds (slower)',
      parsePositive('--sealed-below', 'mm'),
    )
    .option('--measures <a,b>', `only these of ${measures.join(', ')}`, parseMeasures)
    .option(
      '--deviation <mm>',
      'largest distance between a curved face and its triangles (default: 0.1)',
      parsePositive('--deviation', 'mm'),
    )
    .option('--time-limit <s>', 'give up after this time', parsePositive('--time-limit', 's'), 600)
    .option('--memory-limit <MB>', 'give up at this memory', parsePositive('--memory-limit', 'MB'), 8000)
    .option('--json <file>', 'write everything as JSON (coveline.survey/1); - for standard output')
    .option('--quiet', 'no progress')
    .addHelpText(
      'after',
      `
Examples
  coveline survey doser.step
  coveline survey doser.step --up y --json doser.json
  coveline survey tray.stl --unit in --tilt x:2 --measures standingLiquid --json -
  coveline survey doser.step --measures standingLiquid --tilt-range 1 --sealed-below 0.5

Lengths are in mm, areas in cm2, volumes in mL, angles in degrees. The largest five of each kind are printed.
Exit codes: 0 done, 2 wrong usage, 3 the file could not be read, 4 a limit was hit, 1 a fault of ours.
A survey supports a decision; it does not take it.`,
    )
    .action(async (path: string, o: SurveyOptions) => {
      const progress = progressOn(process.stderr, o.quiet ?? false);
      const request: FileSurveyRequest = {
        path,
        up: o.up,
        ...(o.unit && { unit: o.unit }),
        ...(o.tilt && { tilt: o.tilt }),
        ...(o.tiltRange && { tiltRange: { range_deg: o.tiltRange } }),
        ...(o.sealedBelow && { settings: { sealedBelow_mm: o.sealedBelow } }),
        ...(o.measures && { measures: o.measures }),
        ...(o.deviation && { deviation_mm: o.deviation }),
      };
      const limits = { time_s: o.timeLimit, memory_MB: o.memoryLimit };
      let stopped: SurveyLimitError | undefined;
      const done = await surveyFile(request, { onProgress: progress.update, limits })
        .catch((error: unknown) => {
          if (!(error instanceof SurveyLimitError)) throw error;
          stopped = error;
          return error.partial;
        })
        .finally(progress.end);
      const json = surveyJson(basename(path), done);
      if (o.json !== undefined) await writeJson(o.json, json);
      if (o.json !== '-') await print(surveyText(json));
      // What was finished is told first; the exit code says that it is not all.
      if (stopped) throw stopped;
    });
}
