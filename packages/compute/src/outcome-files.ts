/** A survey in a folder: `survey.json` (the public part), `fields.bin` and `drawings.bin` (packed numbers). */
import { open, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { floatsBegin, floatsPrelude, packFloats, unpackFloats, withFloats } from '@coveline/model';
import type { Drawing, MeasureName, SurveyOutcome } from '@coveline/survey';
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

/**
 * Some drawings out of `drawings.bin`, which holds tens of megabytes for a large machine: only their numbers are read.
 * `wanted` is asked in the order of the file, with the count of numbers of the drawing.
 */
export async function readDrawings(
  path: string,
  wanted: (id: string, floats: number) => boolean,
): Promise<Map<string, Drawing>> {
  const file = await open(path);
  try {
    const bytes = async (at: number, length: number): Promise<Uint8Array> => {
      const { buffer } = await file.read(new Uint8Array(length), 0, length, at);
      return buffer;
    };
    const begin = floatsBegin(await bytes(0, floatsPrelude));
    const text = Buffer.from(await bytes(floatsPrelude, begin - floatsPrelude)).toString();
    const found = new Map<string, Drawing>();
    for (const [id, packed] of Object.entries(JSON.parse(text) as Record<string, unknown>)) {
      const spans: (readonly [first: number, count: number])[] = [];
      withFloats(packed, (first, count) => {
        spans.push([first, count]);
        return new Float32Array(0);
      });
      if (
        !wanted(
          id,
          spans.reduce((sum, [, count]) => sum + count, 0),
        )
      )
        continue;
      // The arrays of one drawing lie one behind the other.
      const [from, to] = [
        spans[0]?.[0] ?? 0,
        spans.reduce((last, [first, n]) => Math.max(last, first + n), 0),
      ];
      const { buffer } = await bytes(begin + 4 * from, 4 * Math.max(0, to - from));
      found.set(
        id,
        withFloats(packed, (first, n) => new Float32Array(buffer, 4 * (first - from), n)) as Drawing,
      );
    }
    return found;
  } finally {
    await file.close();
  }
}
