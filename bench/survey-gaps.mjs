/**
 * Narrow gaps on shapes that are hard on the method: a lattice of cubes, huge plates, a huge tray, a thin dish, many
 * parts that run through each other. Processor time and peak memory of one case a process. Needs `npm run build:node`.
 *
 *   node bench/survey-gaps.mjs [lattice | plates | tray | dish | machine] …
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { defaultSettings, measureNarrowGaps, treeOf } from '@coveline/survey';
import { machine } from './machine.mjs';

const sides = [
  [0, 3, 2, 1],
  [4, 5, 6, 7],
  [0, 1, 5, 4],
  [1, 2, 6, 5],
  [2, 3, 7, 6],
  [3, 0, 4, 7],
];
const corners = ([x, y, z], [u, v, w]) => [z, w].flatMap((h) => [x, y, h, u, y, h, u, v, h, x, v, h]);
const shape = (positions, faces, hash) => ({
  positions: Float64Array.from(positions),
  triangles: Uint32Array.from(faces.flatMap(([a, b, c, d]) => [a, b, c, a, c, d])),
  hash,
});
const box = (low, high) => shape(corners(low, high), sides, `box ${low} ${high}`);
const at = (x, y, z) => Float64Array.of(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, x, y, z, 1);

function placed(one, placements) {
  const parts = placements.map((placement, i) => ({
    id: `p${i}`,
    name: `p${i}`,
    assembly: [],
    shape: 0,
    placement,
  }));
  return { shapes: [one], parts, unit: 'mm', deviation_mm: 0, notes: [] };
}

/** 1600 cubes of 20 mm, half a millimetre apart. */
function lattice() {
  const places = Array.from({ length: 1600 }, (_, i) => at((i % 40) * 20.5, Math.floor(i / 40) * 20.5, 0));
  return placed(box([0, 0, 0], [20, 20, 20]), places);
}

/** Two plates of 30 x 20 m, half a millimetre apart. */
function plates() {
  return placed(box([0, 0, 0], [30_000, 20_000, 10]), [at(0, 0, 0), at(0, 0, 10.5)]);
}

/** An empty tray of 20 x 10 m with walls of 2 mm. */
function tray() {
  const inner = sides.filter((_, k) => k !== 1).map((face) => [...face].reverse().map((v) => v + 8));
  const rim = [0, 1, 2, 3].map((k) => [4 + k, 4 + ((k + 1) % 4), 12 + ((k + 1) % 4), 12 + k]);
  const positions = [
    ...corners([-2, -2, -2], [20_002, 10_002, 50]),
    ...corners([0, 0, 0], [20_000, 10_000, 50]),
  ];
  return placed(shape(positions, [...sides.filter((_, k) => k !== 1), ...inner, ...rim], 'tray'), [
    at(0, 0, 0),
  ]);
}

/** A dish 3.5 m across, of sheet of 2 mm. */
function dish() {
  const radius = 4000;
  const [rings, segments] = [40, 256];
  const slope = Math.asin(1750 / radius) / rings;
  const positions = [];
  const ring = (r, i) => {
    for (let s = 0; s < segments; s++) {
      const a = (2 * Math.PI * s) / segments;
      positions.push(
        r * Math.sin(slope * i) * Math.cos(a),
        r * Math.sin(slope * i) * Math.sin(a),
        -r * Math.cos(slope * i),
      );
    }
  };
  for (let i = 0.01; i <= rings; i++) ring(radius + 2, i);
  ring(radius + 2, rings);
  for (let i = rings; i >= 0; i--) ring(radius, Math.max(0.01, i));
  const count = positions.length / 3 / segments;
  const faces = [];
  for (let k = 0; k < count; k++) {
    for (let s = 0; s < segments; s++) {
      const [p, q] = [k * segments, ((k + 1) % count) * segments];
      const t = (s + 1) % segments;
      faces.push([p + s, p + t, q + t, q + s]);
    }
  }
  return placed(shape(positions, faces, 'dish'), [at(0, 0, 0)]);
}

const cases = { lattice, plates, tray, dish, machine: () => machine(100_000) };
const [name, ...others] = process.argv.slice(2);

if (name && others.length === 0) {
  const model = cases[name]();
  const triangles = model.parts.reduce((n, { shape: s }) => n + model.shapes[s].triangles.length / 3, 0);
  treeOf(model);
  const before = process.cpuUsage();
  const { measure } = measureNarrowGaps(model, defaultSettings);
  const { user, system } = process.cpuUsage(before);
  const peak = Math.round(process.resourceUsage().maxRSS / 1024);
  console.log(
    `${name}: ${triangles} triangles, ${((user + system) / 1e6).toFixed(1)} s, ${peak} MB at most, ${measure.places.length} gaps, ${measure.joints.length} joints`,
  );
} else {
  for (const one of name ? [name, ...others] : Object.keys(cases)) {
    spawnSync(process.execPath, [fileURLToPath(import.meta.url), one], { stdio: 'inherit' });
  }
}
