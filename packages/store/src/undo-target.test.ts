import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LogStep, undoTargets } from './undo-target.ts';

const step = (seq: number, kind: LogStep['kind'], target: number | null = null): LogStep => ({
  seq,
  kind,
  target,
});

test.each<[string, LogStep[], { undo: number | null; redo: number | null }]>([
  ['nothing done', [], { undo: null, redo: null }],
  ['two done', [step(1, 'do'), step(2, 'do')], { undo: 2, redo: null }],
  ['one taken back', [step(1, 'do'), step(2, 'do'), step(3, 'undo', 2)], { undo: 1, redo: 2 }],
  ['done again', [step(1, 'do'), step(2, 'undo', 1), step(3, 'redo', 1)], { undo: 1, redo: null }],
  ['something new closes redo', [step(1, 'do'), step(2, 'undo', 1), step(3, 'do')], { undo: 3, redo: null }],
])('%s', (_, steps, expected) => {
  expect(undoTargets(steps)).toEqual(expected);
});

/** The oracle: an editor that keeps two stacks of values and no log. */
test('follows an editor with two stacks through any sequence (fast-check prints its seed)', () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom('do', 'undo', 'redo'), { maxLength: 60 }), (wishes) => {
      const steps: LogStep[] = [];
      let past: number[] = [];
      let future: number[] = [];
      wishes.forEach((kind, i) => {
        const targets = undoTargets(steps);
        expect(targets).toEqual({ undo: past.at(-1) ?? null, redo: future.at(-1) ?? null });
        if (kind === 'do') {
          steps.push(step(i, 'do'));
          past = [...past, i];
          future = [];
        } else if (kind === 'undo' && targets.undo !== null) {
          steps.push(step(i, 'undo', targets.undo));
          future = [...future, past.at(-1)!];
          past = past.slice(0, -1);
        } else if (kind === 'redo' && targets.redo !== null) {
          steps.push(step(i, 'redo', targets.redo));
          past = [...past, future.at(-1)!];
          future = future.slice(0, -1);
        }
      });
    }),
  );
});
