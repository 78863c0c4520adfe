/** Opening angles of doors against closed forms, and against boxes that are tested for overlap angle by angle. */
import { transformPoint, type Vec3 } from '@coveline/model';
import { type Clearance, type Door, defaultSettings, measureClearances, type Site } from '@coveline/survey';
import { describe, expect, test } from 'vitest';
import { assemble, motion } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import { identity, type Mesh, movedModel, type Placement, transformed } from '../../shapes/mesh.ts';

const deg = 180 / Math.PI;

/** Opens about the z axis; everything is moved as a whole. */
function open(
  parts: Record<string, Mesh>,
  {
    by = identity,
    walls = [],
    doorParts = ['door'],
  }: Partial<Pick<Site, 'walls'>> & {
    by?: Placement;
    doorParts?: readonly string[];
  } = {},
): Clearance {
  const model = movedModel(assemble(parts), by);
  const zero = transformPoint(by, [0, 0, 0]);
  const z = transformPoint(by, [0, 0, 1]);
  const axis: Vec3 = [z[0] - zero[0], z[1] - zero[1], z[2] - zero[2]];
  const door: Door = { id: 'door 1', parts: doorParts, hinge: { at_mm: zero, axis } };
  const { places } = measureClearances(model, defaultSettings, {
    floor_mm: -1e6,
    walls,
    doors: [door],
  }).measure;
  const found = places.find((p) => p.kind === 'door');
  if (!found) throw new Error('No door was found.');
  return found;
}

const turns = [
  { name: 'upright', by: identity },
  { name: 'leaning', by: motion([300, -70, 1000], [1, 2, 0.3], 40) },
  { name: 'lying, hinge the other way round', by: motion([5, 6, 7], [1, 0, 0.1], 183) },
] as const;

describe.each(turns)('$name', ({ by }) => {
  describe.each([60, 600, 1800])('door %i mm wide', (w) => {
    const t = w / 30;
    const door = box([0, 0, 0], [w, t, 2 * w]);
    /** The shut door lies against it on the side that it does not open to. */
    const frame = box([0.9 * w, -t, 0], [1.2 * w, 0, 2 * w]);

    test('nothing in the way: half a turn', () => {
      const place = open({ door, frame }, { by });
      expect(place.opens_deg).toBeCloseTo(180, 9);
      expect(place.strikes).toEqual([]);
      expect(place.caveats).toBeUndefined();
    });

    test.each([0.1, 0.5, 0.9])('a wall at %f of its width stops its front corner', (share) => {
      const d = share * w;
      const wall = box([-d - w, -2 * w, -w], [-d, 2 * w, 3 * w]);
      const place = open({ door, frame, wall }, { by });
      // The corner (w, t) turns on a circle of radius R; it starts at the angle atan(t / w).
      const expected = (Math.acos(-d / Math.hypot(w, t)) - Math.atan2(t, w)) * deg;
      expect(Math.abs((place.opens_deg ?? 0) - expected)).toBeLessThan(0.01);
      expect(place.strikes).toEqual(['wall']);
    });

    test('a thin post stops its face, not its edge', () => {
      const r = w / 200;
      for (const [rho, psi] of [
        [0.3 * w, 50],
        [0.77 * w, 120],
      ]) {
        const post = cylinder(
          r,
          0.5 * w,
          96,
          motion([rho * Math.cos(psi / deg), rho * Math.sin(psi / deg), w]),
        );
        const place = open({ door, frame, post }, { by });
        const expected = psi - Math.asin((t + r) / rho) * deg;
        expect(Math.abs((place.opens_deg ?? 0) - expected)).toBeLessThan(0.1);
        expect(place.strikes).toEqual(['post']);
      }
    });
  });

  test('the thin edge of a level sheet is struck by the front corner of the leaf between the points of both', () => {
    const door = box([0, 0, 0], [600, 20, 1000]);
    const frame = box([500, -20, 0], [700, 0, 1000]);
    const sheet = box([-900, -900, 503.3], [-301, 900, 503.9]);
    const place = open({ door, frame, sheet }, { by });
    const expected = (Math.acos(-301 / Math.hypot(600, 20)) - Math.atan2(20, 600)) * deg;
    expect(Math.abs((place.opens_deg ?? 0) - expected)).toBeLessThan(0.5);
    expect(place.strikes).toEqual(['sheet']);
  });
});

test('walls and the floor of the site stop a door as parts do', () => {
  const door = box([0, 0, 0], [600, 20, 1000]);
  const frame = box([500, -20, 0], [700, 0, 1000]);
  const walls = [{ id: 'east wall', at_mm: [-300, 0, 0] as Vec3, into: [2, 0, 0] as Vec3 }];
  const place = open({ door, frame }, { walls });
  const expected = (Math.acos(-300 / Math.hypot(600, 20)) - Math.atan2(20, 600)) * deg;
  expect(place.opens_deg).toBeCloseTo(expected, 6);
  expect(place.strikes).toEqual(['east wall']);

  // A flap with its hinge along x at 400 mm, shut upright, frame behind it; it falls forward and down to the floor.
  const flap = box([0, 0, 400], [500, 20, 1000]);
  const behind = box([0, -20, 500], [500, 0, 1000]);
  const { places } = measureClearances(assemble({ flap, behind }), defaultSettings, {
    floor_mm: 0,
    walls: [],
    doors: [{ id: 'flap', parts: ['flap'], hinge: { at_mm: [0, 0, 400], axis: [1, 0, 0] } }],
  }).measure;
  const swing = places.find((p) => p.kind === 'door');
  // The top front corner (20, 600) from the hinge comes down to -400.
  const angle = (Math.acos(-400 / Math.hypot(600, 20)) - Math.atan2(20, 600)) * deg;
  expect(swing?.opens_deg).toBeCloseTo(angle, 6);
  expect(swing?.strikes).toEqual(['floor']);
});

test('knuckles that turn about a pin in them do not strike it; a leaf left out of the door does, and a caveat says so', () => {
  const door = box([0, 0, 0], [600, 20, 1000]);
  const frame = box([500, -20, 0], [700, 0, 1000]);
  const pin = cylinder(8, 1000, 24);
  const knuckle = cylinder(12, 300, 20, motion([0, 0, 100]));
  const turning = open({ door, frame, pin, knuckle }, { doorParts: ['door', 'knuckle'] });
  expect(turning.opens_deg).toBeCloseTo(180, 6);
  const leaf = box([30, 20, 100], [80, 23, 300]);
  const stuck = open({ door, frame, pin, knuckle, leaf }, { doorParts: ['door', 'knuckle'] });
  expect(stuck.opens_deg).toBeLessThan(1);
  expect(stuck.caveats?.[0]).toMatch(/perhaps that belongs to the door/);
});

test('a gasket that is drawn uncompressed, 1 mm inside the door, does not hold it', () => {
  const door = box([0, 0, 0], [600, 20, 1000]);
  const gasket = box([10, -4, 10], [590, 1, 990]);
  const frame = box([0, -30, 0], [600, -4, 1000]);
  expect(open({ door, gasket, frame }).opens_deg).toBeCloseTo(180, 6);
});

/** Mulberry32, a small seeded generator (from memory). */
function random(seed: number): () => number {
  let s = seed;
  return () => {
    s = (s + 0x6d2b79f5) | 0;
    let t = Math.imul(s ^ (s >>> 15), 1 | s);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

interface Oriented {
  readonly middle: Vec3;
  readonly axes: readonly Vec3[];
  readonly half: Vec3;
}

function oriented(low: Vec3, high: Vec3, by: Placement): Oriented {
  const zero = transformPoint(by, [0, 0, 0]);
  const axes = [0, 1, 2].map((k): Vec3 => {
    const e = transformPoint(by, [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]);
    return [e[0] - zero[0], e[1] - zero[1], e[2] - zero[2]];
  });
  return {
    middle: transformPoint(by, [0, 1, 2].map((k) => (low[k] + high[k]) / 2) as unknown as Vec3),
    axes,
    half: [0, 1, 2].map((k) => (high[k] - low[k]) / 2) as unknown as Vec3,
  };
}

const dot = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** Two boxes overlap when no axis parts them: faces of either, and the products of their edges (Gottschalk 1996). */
function boxesOverlap(a: Oriented, b: Oriented): boolean {
  const between: Vec3 = [0, 1, 2].map((k) => b.middle[k] - a.middle[k]) as unknown as Vec3;
  const axes = [...a.axes, ...b.axes, ...a.axes.flatMap((x) => b.axes.map((y) => cross(x, y)))];
  return axes.every((axis) => {
    if (Math.hypot(...axis) < 1e-9) return true;
    const reach = (o: Oriented) => o.axes.reduce((sum, e, k) => sum + o.half[k] * Math.abs(dot(e, axis)), 0);
    return Math.abs(dot(between, axis)) <= reach(a) + reach(b);
  });
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])(
  'random boxes around a door, seed %i: within 0.5 degrees of the oracle',
  (seed) => {
    const next = random(seed);
    const low: Vec3 = [10, -10, 0];
    const high: Vec3 = [500, 10, 400];
    const parts: Record<string, Mesh> = { door: box(low, high) };
    const obstacles: [string, Oriented][] = [];
    for (let k = 0; k < 5; k++) {
      const a = ((next() - 0.5) * 2 * Math.PI * 0.8 + Math.PI) % (2 * Math.PI);
      const rho = 150 + next() * 400;
      const size: Vec3 = [5 + next() * 60, 5 + next() * 60, 5 + next() * 60];
      const by = motion(
        [rho * Math.cos(a), rho * Math.sin(a), next() * 450 - 25],
        [next() - 0.5, next() - 0.5, next() - 0.5],
        next() * 180,
      );
      const minus: Vec3 = [-size[0], -size[1], -size[2]];
      parts[`box ${k}`] = transformed(box(minus, size), by);
      obstacles.push([`box ${k}`, oriented(minus, size, by)]);
    }
    const swing = (sense: number) => {
      for (let a = 0; a < 180; a += 0.05) {
        const leaf = oriented(low, high, motion([0, 0, 0], [0, 0, 1], sense * a));
        const struck = obstacles.filter(([, o]) => boxesOverlap(leaf, o));
        if (struck.length > 0) return { a, struck: struck.map(([id]) => id) };
      }
      return { a: 180, struck: [] };
    };
    const [one, other] = [swing(1), swing(-1)];
    const expected = other.a > one.a ? other : one;
    const place = open(parts);
    expect(Math.abs((place.opens_deg ?? 0) - expected.a)).toBeLessThan(0.5);
    if (expected.struck.length > 0) expect(expected.struck).toContain(place.strikes?.[0]);
  },
);
