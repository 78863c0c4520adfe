/** A survey in a folder: `survey.json` (the public part), `fields.bin` and `drawings.bin` (packed numbers). */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Drawing, MeasureName, SurveyOutcome } from '@coveline/survey';
import { packFloats, unpackFloats } from './pack-floats.ts';
import { replaceFile } from './replace-file.ts';
import type { SiteSurveyResult } from './request.ts';

export type Fields = Partial<Record<MeasureName, Float32Array>>;

export const outcomeFiles = {
  survey: 'survey.json',
  fields: 'fields.bin',
  drawings: 'drawings.bin',
} as const;

/** With the site that the survey went by. */
export interface SiteSurveyOutcome extends SurveyOutcome {
  readonly result: SiteSurveyResult;
}

/** Replaces what is there. */
export function writeOutcome(folder: string, { result, fields, drawings }: SiteSurveyOutcome): void {
  replaceFile(join(folder, outcomeFiles.fields), packFloats(fields));
  replaceFile(join(folder, outcomeFiles.drawings), packFloats(Object.fromEntries(drawings)));
  replaceFile(join(folder, outcomeFiles.survey), JSON.stringify(result));
}

export async function readOutcome(folder: string): Promise<SiteSurveyOutcome> {
  const [survey, fields, drawings] = await Promise.all([
    readFile(join(folder, outcomeFiles.survey), 'utf8'),
    readFile(join(folder, outcomeFiles.fields)),
    readFile(join(folder, outcomeFiles.drawings)),
  ]);
  return {
    result: JSON.parse(survey) as SiteSurveyResult,
    fields: decodeFields(fields),
    drawings: decodeDrawings(drawings),
  };
}

/** From the bytes of `fields.bin`. */
export function decodeFields(bytes: Uint8Array): Fields {
  return unpackFloats(bytes) as Fields;
}

/** From the bytes of `drawings.bin`. */
export function decodeDrawings(bytes: Uint8Array): Map<string, Drawing> {
  return new Map(Object.entries(unpackFloats(bytes) as Record<string, Drawing>));
}
