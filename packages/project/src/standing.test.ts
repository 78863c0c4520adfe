import { expect, test } from 'vitest';
import { type Decision, decision } from './schema.ts';
import { isDecided, standingOf } from './standing.ts';

const concession = (more: Partial<Extract<Decision, { kind: 'concession' }>> = {}): Decision =>
  decision.parse({
    kind: 'concession',
    reason: 'The guide needs it.',
    because: 'function',
    controlMeasures: [{ what: 'Wipe it.' }],
    grantedBy: 'R. Example',
    until: '2026-12-31',
    ...more,
  });

test.each([
  [undefined, 'open'],
  [concession(), 'awaitsApproval'],
  [concession({ approvedBy: 'S. Sample' }), 'stands'],
  [concession({ approvedBy: 'S. Sample', until: '2026-11-25' }), 'stands'],
  [concession({ approvedBy: 'S. Sample', until: '2026-11-24' }), 'ended'],
  [concession({ approvedBy: 'S. Sample', reviewOn: '2026-11-01' }), 'reviewDue'],
  [decision.parse({ kind: 'change' }), 'stands'],
] as const)('%#: %s', (d, standing) => {
  expect(standingOf(d, '2026-11-25')).toBe(standing);
});

test('what has ended is to be decided again, what waits is not', () => {
  expect((['open', 'ended', 'stands', 'awaitsApproval', 'reviewDue'] as const).map(isDecided)).toEqual([
    false,
    false,
    true,
    true,
    true,
  ]);
});

test('nobody approves their own concession', () => {
  const own = decision.safeParse({ ...concession(), approvedBy: ' r. example' });
  expect(own.success).toBe(false);
});
