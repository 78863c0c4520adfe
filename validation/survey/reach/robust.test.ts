/** What a person may rely on whatever the machine: same answer twice, a prompt stop, cells that follow the size, walls. */
import { Buffer } from 'node:buffer';
import { cpuUsage } from 'node:process';
import {
  defaultSettings,
  handOf,
  measureReach,
  reachOf,
  SurveyStopped,
  toolOf,
  treeOf,
} from '@coveline/survey';
import { expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import type { Mesh } from '../../shapes/mesh.ts';
import { difference } from '../../shapes/solid.ts';
import { asked, limbOf } from './asked.ts';

/** A cabinet with an opening of 100 mm, full of rods that stand `apart` mm from each other. */
function cabinet(side: number, apart: number, facets: number) {
  const parts: Record<string, Mesh> = {
    cabinet: difference(
      box([0, 0, 0], [side, side, side]),
      box([10, 10, 10], [side - 10, side - 10, side - 10]),
      box([side / 2 - 50, -1, side / 2 - 50], [side / 2 + 50, 20, side / 2 + 50]),
    ),
  };
  for (let x = apart; x < side - 20; x += apart) {
    for (let y = apart; y < side - 20; y += apart) {
      parts[`rod ${x} ${y}`] = cylinder(8, side - 60, facets, motion([x, y, 30]));
    }
  }
  return assemble(parts);
}

test('a cabinet full of rods: the same bytes twice', () => {
  const bytes = (): string => {
    const model = cabinet(500, 60, 24);
    const reach = reachOf(model, defaultSettings);
    return [handOf(defaultSettings), toolOf(defaultSettings)]
      .map((limb) => {
        const { measure, field, drawings } = measureReach(reach, limb, defaultSettings);
        if (limb.kind === 'hand') {
          expect(measure.places.length).toBeGreaterThan(20);
        }
        const lines = [...drawings].map(([id, { triangles, lines }]) => [
          id,
          Buffer.from(new Float32Array(triangles ?? []).buffer).toString('base64'),
          lines?.map((line) => [...line]),
        ]);
        return JSON.stringify(measure) + Buffer.from(field.buffer).toString('base64') + JSON.stringify(lines);
      })
      .join();
  };
  expect(bytes()).toBe(bytes());
}, 120_000);

test('a stop is asked for at least every 100 ms of work, and ends it', () => {
  const model = cabinet(900, 75, 48);
  treeOf(model);
  let last = 0;
  let longest_ms = 0;
  let longestAt = 0;

  let steps = 0;
  const onProgress = (_: string, done: number): void => {
    const { user, system } = cpuUsage();
    const now = (user + system) / 1000;
    if (last > 0 && now - last > longest_ms) {
      longest_ms = now - last;
      longestAt = done;
    }
    last = now;
    steps++;
  };
  const reach = reachOf(model, defaultSettings, { onProgress });
  for (const limb of [handOf(defaultSettings), toolOf(defaultSettings)]) {
    measureReach(reach, limb, defaultSettings, { onProgress });
  }
  // The processor time counts the compiler's threads and the collector's as well.
  expect(longest_ms, `before ${longestAt} of the work`).toBeLessThan(100);
  for (const share of [0.05, 0.3, 0.6, 0.95]) {
    let left = Math.floor(share * steps);
    const aborting = new AbortController();
    const control = {
      signal: aborting.signal,
      onProgress: () => {
        if (left-- === 0) aborting.abort();
      },
    };
    const run = (): void => {
      const all = reachOf(model, defaultSettings, control);
      measureReach(all, handOf(defaultSettings), defaultSettings, control);
      measureReach(all, toolOf(defaultSettings), defaultSettings, control);
    };
    expect(run).toThrow(SurveyStopped);
  }
}, 240_000);

test('a duct 20 m long: cells follow the size, and its middle is as far as it is', () => {
  const [long, side, wall, arm] = [20_000, 240, 5, 615];
  const duct = difference(
    box([0, -wall, -wall], [long, side + wall, side + wall]),
    box([-1, 0, 0], [long + 1, side, side]),
  );
  const { measure, notes } = asked(assemble({ duct }), limbOf(120, arm));
  expect(measure.resolution_mm).toBeGreaterThan(10);
  expect(measure.resolution_mm).toBeLessThan(16);
  expect(notes.join(' ')).toContain('instead of 10 mm');
  // As in a pocket: the touch gets r (2 - sqrt(3)) less far in than the arm, from both ends.
  const depth = arm - 60 * (2 - Math.sqrt(3));
  expect(Math.abs(measure.unreached_cm2 / ((4 * side * (long - 2 * depth)) / 100) - 1)).toBeLessThan(0.01);
  for (const { because } of measure.places) expect(because).toBe('far');
}, 120_000);

test('a part of 5 mm: a ball of 1 mm gets through an opening of 1.2 mm, and not through one of 0.8 mm', () => {
  const cup = (width: number): Mesh =>
    difference(
      box([0, 0, 0], [5, 5, 5]),
      box([0.5, 0.5, 0.5], [4.5, 4.5, 4.5]),
      box([2, 2, 4], [2 + width, 2 + width, 6]),
    );
  const inside_cm2 = (6 * 4 * 4) / 100;
  const wide = asked(assemble({ cup: cup(1.2) }), limbOf(1)).measure;
  expect(wide.resolution_mm).toBeLessThan(0.2);
  expect(wide.unreached_cm2).toBeLessThan(0.01 * inside_cm2);
  const narrow = asked(assemble({ cup: cup(0.8) }), limbOf(1)).measure;
  expect(narrow.unreached_cm2).toBeGreaterThan(0.9 * inside_cm2);
  expect(narrow.unreached_cm2).toBeLessThan(1.01 * inside_cm2);
}, 120_000);

test('a thin baffle before a plate keeps the fingers off, though the plate is well within their length', () => {
  const [side, gap] = [300, 12];
  const model = assemble({
    plate: box([-50, -50, -5], [side + 50, side + 50, 0]),
    baffle: box([0, 0, gap], [side, side, gap + 0.5]),
  });
  const { measure } = asked(model, limbOf(120));
  // Behind the baffle all of its back, and of the plate what no line past the edge gets to: a ball that keeps 60 mm from
  // both, with 60 mm of touch and half a cell, sees up to (60 + 60 + 5) / 60 of its height, 26 mm in at most.
  const whole_cm2 = side ** 2 / 100;
  const hidden_cm2 = (side - 2 * 26) ** 2 / 100;
  expect(measure.unreached_cm2).toBeGreaterThan(whole_cm2 * 0.97 + hidden_cm2);
  expect(measure.unreached_cm2).toBeLessThan(2 * whole_cm2 * 1.02);
  expect(new Set(measure.places.flatMap(({ parts }) => parts))).toEqual(new Set(['plate', 'baffle']));
}, 120_000);
