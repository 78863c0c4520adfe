/**
 * Rays and nearest points on the benchmark machine, beside Embree in the same run where Debian's libembree-dev and g++
 * are present, and beside three-mesh-bvh where it is installed. Needs `npm run build:node` first.
 *
 *   node bench/rays.mjs [triangles] [--assert]
 *
 * Sets of rays: O from anywhere in any direction; P hemispheres of 64 from surface points; S as O, 20 mm long; D straight
 * down on a grid. Times are sums over slices of the rays, of each the fastest of the repeats, for a busy machine slows
 * some of them. With --assert the run fails below 0.55 of Embree for first hits and 0.4 for any hit.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { placedPositions } from '@coveline/model';
import { anyHits, buildTree, closestPoints, firstHits, pointLength, rayLength } from '@coveline/survey';
import { machine } from './machine.mjs';

const size = Number(process.argv.slice(2).find((a) => !a.startsWith('--')) ?? 1_000_000);
const mustReach = process.argv.includes('--assert');
const wanted = { first: 0.55, any: 0.4 };
const raysInSet = 1 << 16;
const slice = 1 << 8;
const repeats = 12;

const model = machine(size);
const started = performance.now();
const tree = buildTree(model);
const build_s = (performance.now() - started) / 1000;
const triangles = tree.triangle.length;
const used_MB = tree.kernel.memory.buffer.byteLength / 1e6;
console.log(
  `${triangles} triangles, ${model.parts.length} parts, seed 1; build ${build_s.toFixed(2)} s, ${used_MB.toFixed(0)} MB reserved`,
);

let state = 7;
/** Mulberry32 (from memory). */
function next() {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
}

function direction() {
  for (;;) {
    const d = [next() * 2 - 1, next() * 2 - 1, next() * 2 - 1];
    const l = Math.hypot(...d);
    if (l < 1 && l > 0.01) return d.map((c) => c / l);
  }
}

const { box, corners } = tree;
const somewhere = () => [0, 1, 2].map((k) => box[k] + (box[k + 3] - box[k]) * next());

function fill(ray) {
  const rays = new Float64Array(raysInSet * rayLength);
  for (let i = 0; i < raysInSet; i++) rays.set(ray(i), i * rayLength);
  return rays;
}

/** Point and normal in the middle of a triangle. */
function middle(slot) {
  const c = corners.subarray(slot * 9, slot * 9 + 9);
  const u = [c[3] - c[0], c[4] - c[1], c[5] - c[2]];
  const v = [c[6] - c[0], c[7] - c[1], c[8] - c[2]];
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
  const l = Math.hypot(...n) || 1;
  return { at: [0, 1, 2].map((k) => (c[k] + c[k + 3] + c[k + 6]) / 3), n: n.map((x) => x / l) };
}

const side = Math.sqrt(raysInSet);
const sets = {
  O: fill(() => [...somewhere(), ...direction(), 0, 1e30]),
  P: fill((i) => {
    const { at, n } = middle(Math.floor((Math.floor(i / 64) * 64 * triangles) / raysInSet));
    const d = direction();
    const up = d[0] * n[0] + d[1] * n[1] + d[2] * n[2] < 0 ? -1 : 1;
    return [...at.map((c, k) => c + n[k] * 0.01), ...d.map((c) => c * up), 0, 1e30];
  }),
  S: fill(() => [...somewhere(), ...direction(), 0, 20]),
  D: fill((i) => [
    box[0] + ((box[3] - box[0]) * (i % side)) / side,
    box[1] + ((box[4] - box[1]) * Math.floor(i / side)) / side,
    box[5] + 100,
    ...[0, 0, -1, 0, 1e30],
  ]),
};

function fastest(work) {
  let best = Infinity;
  let result;
  for (let k = 0; k < repeats; k++) {
    const from = performance.now();
    result = work();
    best = Math.min(best, performance.now() - from);
  }
  return { seconds: best / 1000, result };
}

function ours() {
  return Object.values(sets).map((rays) => {
    const slices = raysInSet / slice;
    const first = new Float64Array(slices).fill(Infinity);
    const any = new Float64Array(slices).fill(Infinity);
    let [hits, blocked, sum] = [0, 0, 0];
    for (let k = 0; k < repeats; k++) {
      [hits, blocked, sum] = [0, 0, 0];
      for (let s = 0; s < slices; s++) {
        const some = rays.subarray(s * slice * rayLength, (s + 1) * slice * rayLength);
        const begun = performance.now();
        const { t } = firstHits(tree, some);
        const between = performance.now();
        const met = anyHits(tree, some);
        any[s] = Math.min(any[s], performance.now() - between);
        first[s] = Math.min(first[s], between - begun);
        for (const d of t) {
          if (d === Infinity) continue;
          hits++;
          sum += d;
        }
        for (const b of met) blocked += b;
      }
    }
    const total = (times) => times.reduce((a, b) => a + b, 0) / 1000;
    return { first_s: total(first), any_s: total(any), hits, blocked, sum };
  });
}

/** The same by Embree, or null with a sentence. */
function embree() {
  const out = fileURLToPath(new URL('out/', import.meta.url));
  mkdirSync(out, { recursive: true });
  const program = `${out}embree`;
  const source = fileURLToPath(new URL('embree.cpp', import.meta.url));
  if (!existsSync('/usr/include/embree3/rtcore.h')) {
    console.log('Embree is left out: Debian’s libembree-dev is not installed.');
    return null;
  }
  const made = spawnSync('g++', ['-O3', '-march=native', '-o', program, source, '-lembree3'], {
    encoding: 'utf8',
  });
  if (made.status !== 0) {
    console.log(
      `Embree is left out: its program could not be built (${made.error?.message ?? made.stderr.trim()}).`,
    );
    return null;
  }
  const xyz = model.parts.map((_, p) => placedPositions(model, p));
  const vertices = xyz.reduce((n, a) => n + a.length / 3, 0);
  const index = new Uint32Array(triangles * 3);
  let at = 0;
  let base = 0;
  for (const [p, { shape }] of model.parts.entries()) {
    for (const v of model.shapes[shape].triangles) index[at++] = v + base;
    base += xyz[p].length / 3;
  }
  const bytes = (array) => Buffer.from(array.buffer, array.byteOffset, array.byteLength);
  const flat = xyz.map((a) => bytes(Float32Array.from(a)));
  writeFileSync(
    `${out}mesh.bin`,
    Buffer.concat([bytes(Int32Array.of(vertices, triangles)), ...flat, bytes(index)]),
  );
  const rays = Object.values(sets).map(bytes);
  writeFileSync(`${out}rays.bin`, Buffer.concat([bytes(Int32Array.of(rays.length, raysInSet)), ...rays]));
  const run = spawnSync(program, [`${out}mesh.bin`, `${out}rays.bin`, `${repeats}`, `${slice}`], {
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`The Embree program failed: ${run.stderr}`);
  return JSON.parse(run.stdout);
}

/** First hits per second of three-mesh-bvh on set P, or null where it is not installed. */
async function meshBvh() {
  try {
    const [{ MeshBVH }, three] = await Promise.all([import('three-mesh-bvh'), import('three')]);
    const geometry = new three.BufferGeometry();
    geometry.setAttribute('position', new three.BufferAttribute(Float32Array.from(corners), 3));
    const bvh = new MeshBVH(geometry, { strategy: 2 });
    const ray = new three.Ray();
    const n = 1 << 14;
    const step = raysInSet / n;
    const { seconds } = fastest(() => {
      for (let i = 0; i < n; i++) {
        const r = sets.P.subarray(i * step * rayLength);
        ray.origin.set(r[0], r[1], r[2]);
        ray.direction.set(r[3], r[4], r[5]);
        bvh.raycastFirst(ray, three.DoubleSide);
      }
    });
    return n / seconds;
  } catch (error) {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
    return null;
  }
}

const perSecond = (seconds, n = raysInSet) => `${(n / seconds / 1e6).toFixed(2)} M/s`;
const mine = ours();
const reference = embree();
if (reference) console.log(`Embree: build ${reference.build_s.toFixed(2)} s`);
let tooSlow = false;
for (const [k, name] of Object.keys(sets).entries()) {
  const row = [`${name}: first ${perSecond(mine[k].first_s)}`, `any ${perSecond(mine[k].any_s)}`];
  if (reference) {
    const other = reference.sets[k];
    const first = other.first_s / mine[k].first_s;
    const any = other.any_s / mine[k].any_s;
    tooSlow ||= first < wanted.first || any < wanted.any;
    row.push(`of Embree: first ${first.toFixed(2)}, any ${any.toFixed(2)}`);
    row.push(
      `hits ${mine[k].hits} and ${other.hits}, mean ${(mine[k].sum / mine[k].hits).toFixed(4)} and ${(other.sum / other.hits).toFixed(4)} mm`,
    );
  } else row.push(`hits ${mine[k].hits}`);
  console.log(row.join('; '));
}
const other = await meshBvh();
console.log(
  other === null
    ? 'three-mesh-bvh is left out: it is not installed.'
    : `P, three-mesh-bvh: first ${(other / 1e6).toFixed(2)} M/s, ${(raysInSet / mine[1].first_s / other).toFixed(1)} times slower`,
);
for (const reach of [3, 20]) {
  const points = new Float64Array(200_000 * pointLength);
  for (let i = 0; i < 200_000; i++) {
    const { at } = middle(Math.floor((i * triangles) / 200_000));
    points.set([...at.map((c) => c + next() * 2), reach], i * pointLength);
  }
  const { seconds } = fastest(() => closestPoints(tree, points));
  console.log(`nearest within ${reach} mm: ${perSecond(seconds, 200_000)}`);
}
if (mustReach && tooSlow) {
  console.error(`Below ${wanted.first} (first) or ${wanted.any} (any) of Embree.`);
  process.exit(1);
}
