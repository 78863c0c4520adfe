/** Results of samples: judged one by one against their limit, and as a trend of their point. */
import { samplingLimitById } from '@coveline/catalogue';
import { censoredNormal, shewhartChart } from '@coveline/engineering';
import type { SampleResult } from '@coveline/project';
import type { Working } from '@coveline/quantity';
import { verdictOn } from './points.ts';

export interface JudgedResult {
  readonly result: SampleResult;
  readonly verdict: 'pass' | 'alert' | 'act' | 'notShown';
  readonly reason: string;
}

export interface Trend {
  readonly point: string;
  readonly of: SampleResult['of'];
  /** In the order of their dates. */
  readonly results: readonly JudgedResult[];
  /** Null while there are too few results for limits from data. */
  readonly chart: TrendChart | null;
  /** Why there is no chart, or what it rests on; one sentence each. */
  readonly notes: readonly string[];
}

export interface TrendChart {
  /** Limits on the decimal logarithm of the results, from the first of them. */
  readonly mean: number;
  readonly upper: number;
  /** Index of the first result that breaks a run rule; null for none. */
  readonly firstAlarm: number | null;
  readonly alarms: readonly { readonly index: number; readonly rules: string }[];
  readonly working: Working;
}

/** Limits of a chart come from so many first results: fewer say little about their spread. Common practice. */
export const baseline = 8;

/** One trend a point and kind of test, by point and kind; ids and dates order what was noted. */
export function trendsOf(results: readonly SampleResult[]): readonly Trend[] {
  const groups = new Map<string, SampleResult[]>();
  for (const r of results) {
    const key = `${r.point}\n${r.of}`;
    groups.set(key, [...(groups.get(key) ?? []), r]);
  }
  return [...groups.keys()].sort().map((key) => trendOf(groups.get(key)!));
}

function trendOf(group: readonly SampleResult[]): Trend {
  const sorted = [...group].sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.id < b.id ? -1 : 1));
  const judged = sorted.map((result): JudgedResult => {
    const limit = samplingLimitById.get(result.limit);
    return limit
      ? { result, ...verdictOn(limit, result.value, result.detectionLimit) }
      : { result, verdict: 'notShown', reason: `The catalogue has no limit "${result.limit}".` };
  });
  const { chart, notes } = chartOf(sorted);
  const { point, of } = sorted[0];
  return { point, of, results: judged, chart, notes };
}

function chartOf(sorted: readonly SampleResult[]): Pick<Trend, 'chart' | 'notes'> {
  const numbers = sorted.map(logOf);
  const known = numbers.filter((n) => n !== null);
  if (known.length < sorted.length)
    return {
      chart: null,
      notes: ['A result without a number and without a detection limit cannot be drawn.'],
    };
  if (known.length < baseline + 1)
    return {
      chart: null,
      notes: [
        `Limits from data need ${baseline} results and one to hold against them; there are ${known.length}.`,
      ],
    };
  const first = known.slice(0, baseline);
  const spread = spreadOf(first);
  if (typeof spread === 'string') return { chart: null, notes: [spread] };
  const values = known.map((n) => n.log);
  const run = shewhartChart.run(
    { values, target: spread.mean, deviation: spread.deviation },
    {
      values: 'decimal logarithms; below detection half of the limit',
      target: `mean of the first ${baseline}`,
      deviation: `spread of the first ${baseline}`,
    },
  );
  if (run.kind === 'refused') return { chart: null, notes: [`${run.reason}.`] };
  const rules = run.tables?.[0].rows ?? [];
  const alarms = rules.flatMap((row, index) => (row[2] === '' ? [] : [{ index, rules: String(row[2]) }]));
  return {
    chart: {
      mean: spread.mean,
      upper: run.values.upper,
      firstAlarm: run.values.firstAlarm === 0 ? null : run.values.firstAlarm - 1,
      alarms,
      working: run.working,
    },
    notes: [
      `Limits from the first ${baseline} results.`,
      ...(known.some((n) => n.below) ? ['Results below detection are drawn at half of their limit.'] : []),
    ],
  };
}

interface Log {
  readonly log: number;
  readonly below: boolean;
}

/** A count of zero is below one; its logarithm is that of a half. */
function logOf({ value, detectionLimit }: SampleResult): Log | null {
  if (value !== null && value > 0) return { log: Math.log10(value), below: false };
  const limit = detectionLimit ?? (value === 0 ? 1 : null);
  return limit === null || limit <= 0 ? null : { log: Math.log10(limit / 2), below: true };
}

/** Mean and standard deviation of the baseline: by maximum likelihood where some are below detection. */
function spreadOf(first: readonly Log[]): { readonly mean: number; readonly deviation: number } | string {
  const found = first.filter((n) => !n.below).map((n) => n.log);
  const below = first.filter((n) => n.below);
  if (below.length === 0) {
    const mean = found.reduce((a, b) => a + b, 0) / found.length;
    const variance = found.reduce((a, b) => a + (b - mean) ** 2, 0) / (found.length - 1);
    return variance > 0
      ? { mean, deviation: Math.sqrt(variance) }
      : 'The first results are all equal: they have no spread to take limits from.';
  }
  if (new Set(found).size < 2)
    return 'Nearly all of the first results are below detection: there is no spread to take limits from.';
  const fit = censoredNormal.run({ found, limits: below.map((n) => n.log + Math.log10(2)) });
  return fit.kind === 'refused'
    ? `${fit.reason}.`
    : { mean: fit.values.mean, deviation: fit.values.deviation };
}
