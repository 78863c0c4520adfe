/** The calculations that are kept with a machine, worked out anew: as JSON and in words. */
import { runAgain } from '@coveline/engineering';
import type { KeptCalculation } from '@coveline/project';
import { formatQuantity } from '@coveline/quantity';

/** One of `calculations` in `coveline.review/1`. */
export function keptJson({ gave, ...kept }: KeptCalculation) {
  const { run, gives, refusal, changed } = runAgain({ ...kept, gave });
  const outcome = run?.outcome.kind === 'done' ? run.outcome : null;
  return {
    ...kept,
    understood: run?.understood ?? [],
    result: gives,
    refusal,
    ...(gave !== undefined && { gave }),
    changed,
    ...(outcome && { working: outcome.working, warnings: outcome.warnings, tables: outcome.tables }),
  };
}

/** "  Dead leg of the sampling branch: 2.5", with what it gave before where that differs. */
export function keptLine(kept: KeptCalculation): string {
  const { run, refusal, changed } = runAgain(kept);
  const result = run?.outcome.kind === 'done' ? run.outcome.working.result : null;
  const now = result
    ? `${result.name} ${result.text ?? formatQuantity(result.value, result.unit)}`
    : `no number. ${refusal}`;
  const before = kept.gave ? formatQuantity(kept.gave.value, kept.gave.unit) : 'no number';
  return `  ${kept.title}: ${now}${changed ? ` (when it was kept: ${before})` : ''}`;
}
