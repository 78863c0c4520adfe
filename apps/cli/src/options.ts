/** Reads the values of options; a wrong one is a `UsageError` that says what was expected. */
import type { LengthUnit, UpAxis } from '@coveline/model';
import type { MeasureName } from '@coveline/survey';
import { UsageError } from './failure.ts';

const upAxes: readonly UpAxis[] = ['x', 'y', 'z', '-x', '-y', '-z'];
const units: readonly LengthUnit[] = ['mm', 'cm', 'm', 'in'];

/** The measures that this version computes. */
export const measures: readonly MeasureName[] = [
  'standingLiquid',
  'flatFaces',
  'insideCorners',
  'narrowGaps',
  'hollows',
  'fasteners',
];

function oneOf<T extends string>(option: string, allowed: readonly T[]) {
  return (text: string): T => {
    const found = allowed.find((value) => value === text);
    if (found === undefined) {
      throw new UsageError(`${option} takes one of ${allowed.join(', ')}; "${text}" is none of them.`);
    }
    return found;
  };
}

export const parseUp = oneOf('--up', upAxes);
export const parseUnit = oneOf('--unit', units);

/** "standingLiquid,hollows" */
export function parseMeasures(text: string): MeasureName[] {
  return text.split(',').map((name) => oneOf('--measures', measures)(name.trim()));
}

/** "x:3" turns the machine by 3 degrees about its horizontal x axis. */
export function parseTilt(text: string): { axis: 'x' | 'y'; deg: number } {
  const [axis, angle = ''] = text.split(':');
  const deg = Number(angle);
  if ((axis !== 'x' && axis !== 'y') || angle.trim() === '' || !Number.isFinite(deg) || Math.abs(deg) > 180) {
    throw new UsageError(
      `--tilt takes an axis and an angle, such as x:3 or y:-1.5, from -180 to 180 degrees; got "${text}".`,
    );
  }
  return { axis, deg };
}

/** An angle above 0 and at most 45 degrees. */
export function parseTiltRange(text: string): number {
  const deg = Number(text);
  if (text.trim() === '' || !(deg > 0 && deg <= 45)) {
    throw new UsageError(`--tilt-range takes an angle above 0 and at most 45 degrees; got "${text}".`);
  }
  return deg;
}

/** A number above zero. */
export function parsePositive(option: string, unit: string) {
  return (text: string): number => {
    const value = Number(text);
    if (text.trim() === '' || !Number.isFinite(value) || value <= 0) {
      throw new UsageError(`${option} takes a number above 0 in ${unit}; got "${text}".`);
    }
    return value;
  };
}
