import { findCalculation } from '../registry.ts';
import type { CalculationEntry } from './calculation.ts';
import { runFromText, type TypedRun } from './from-text.ts';
import { refusalSentence } from './refusal-sentence.ts';

/** The number that a calculation gave. */
export interface Gave {
  readonly value: number;
  readonly unit: string;
}

/** What somebody typed into a calculation and what came out then. */
export interface TypedCalculation {
  /** Name in the registry. */
  readonly calculation: string;
  readonly inputs: Readonly<Record<string, string>>;
  /** BCP 47, of the numbers in the texts. */
  readonly locale: string;
  /** Null: there was no number. Absent: not known. */
  readonly gave?: Gave | null | undefined;
}

/** A typed calculation with what it gives now. */
export interface RunAgain {
  /** Null when there is no calculation of this name. */
  readonly entry: CalculationEntry | null;
  readonly run: TypedRun | null;
  readonly gives: Gave | null;
  /** In place of a number, one sentence. */
  readonly refusal: string | null;
  /** Whether it gives something else than it gave. */
  readonly changed: boolean;
}

/**
 * Relative: above what another processor rounds differently (some 1e-12), below the last digit that is printed.
 */
const sameWithin = 1e-6;

/** Runs a calculation that was typed before. Every mistake in it comes back as `refusal`. */
export function runAgain(typed: TypedCalculation): RunAgain {
  const entry = findCalculation(typed.calculation);
  if (entry === undefined)
    return {
      entry: null,
      run: null,
      gives: null,
      refusal: `There is no calculation “${typed.calculation}”; what was typed is kept.`,
      changed: differs(typed.gave, null),
    };
  return againstBefore(entry, runFromText(entry, typed.inputs, { locale: typed.locale }), typed.gave);
}

/** A run beside what the same calculation gave before. */
export function againstBefore(
  entry: CalculationEntry,
  run: TypedRun,
  gave: TypedCalculation['gave'],
): RunAgain {
  const { outcome } = run;
  const result = outcome.kind === 'done' ? outcome.working.result : null;
  const gives = result && { value: result.value, unit: result.unit };
  return { entry, run, gives, refusal: refusalSentence(entry, run), changed: differs(gave, gives) };
}

function differs(before: TypedCalculation['gave'], now: Gave | null): boolean {
  if (before === undefined) return false;
  if (before === null || now === null) return before !== now;
  if (before.unit !== now.unit) return true;
  return (
    Math.abs(before.value - now.value) > sameWithin * Math.max(Math.abs(before.value), Math.abs(now.value))
  );
}
