import { describe, expect, it } from 'vitest';
import { findCalculation } from '../registry.ts';

const reason = (name: string, inputs: Record<string, number | string | readonly number[]>) => {
  const started = performance.now();
  const outcome = findCalculation(name)!.evaluate(inputs);
  // Ten seconds are far above what any of them may take and far below a hang.
  expect(performance.now() - started).toBeLessThan(10_000);
  return outcome.kind === 'refused' ? outcome.reason : 'done';
};

describe('sizes that would hang or overflow get a sentence', () => {
  it('a list of a million values', () => {
    const many = new Array<number>(1_000_000).fill(1);
    expect(reason('iso-class-evaluation', { averages_1m3: many, limit_1m3: 10 })).toContain(
      'expected at most 50000',
    );
  });

  it('the longest list that is taken', () => {
    const many = Array.from({ length: 50_000 }, (_, i) => i);
    expect(reason('iso-class-evaluation', { averages_1m3: many, limit_1m3: 10 })).toBe('done');
    expect(reason('lethality-of-cycle', { times_min: many, temperatures_degC: many.map(() => 100) })).toBe(
      'done',
    );
    expect(reason('compare-two-means', { first: many, second: many })).toContain('take too long');
  });

  it('a network in which everything is joined to everything', () => {
    const n = 1500;
    const lines = [
      '[JUNCTIONS]',
      ...Array.from({ length: n }, (_, i) => `N${i} 0 0.1`),
      '[RESERVOIRS]',
      'R 10',
      '[PIPES]',
      'P R N0 1 50 0.1 0',
    ];
    let state = 1;
    for (let i = 0; i < 6 * n; i++) {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      lines.push(`p${i} N${i % n} N${Math.floor((state / 2 ** 32) * n)} 5 50 0.1 0`);
    }
    lines.push('[OPTIONS]', 'Headloss D-W', 'Units CMH');
    expect(reason('cleaning-circuit', { network: lines.join('\n') })).toContain('too large and entangled');
  });

  it('a profile of a million points a nanometre apart', () => {
    const file = Array.from({ length: 1_000_000 }, (_, i) => i % 2).join('\n');
    expect(reason('roughness-of-profile', { file, spacing_um: 0.001 })).toContain('thin it out');
  });
});
