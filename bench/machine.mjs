/**
 * An invented machine of closed, overlapping parts for benchmarks: a frame of hollow square tube, shelves, trays,
 * pipes, vessels and bolts in 1.5 x 0.9 x 1.3 m. Seeded: the same machine for the same arguments. Millimetres, +Z up.
 */

/** Mulberry32, a small seeded generator (from memory). */
function random(seed) {
  return () => {
    seed = (seed + 0x6d2b79f5) | 0;
    let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Solid of revolution of a closed profile of [radius, height], counter-clockwise; radius 0 on the axis only. */
function revolved(profile, segments) {
  const positions = [];
  const triangles = [];
  const rings = profile.map(([r, z]) => {
    const start = positions.length / 3;
    for (let s = 0; s < (r === 0 ? 1 : segments); s++) {
      const a = (2 * Math.PI * s) / segments;
      positions.push(r * Math.cos(a), r * Math.sin(a), z);
    }
    return (s) => (r === 0 ? start : start + (s % segments));
  });
  for (let k = 0; k < rings.length; k++) {
    const [low, high] = [rings[k], rings[(k + 1) % rings.length]];
    for (let s = 0; s < segments; s++) {
      const [a, b, c, d] = [low(s), low(s + 1), high(s + 1), high(s)];
      if (a !== b) triangles.push(a, b, c);
      if (c !== d) triangles.push(a, c, d);
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** Profile with its sides cut into pieces of about equal number, so that facets can be as small as asked. */
function divided(profile, pieces) {
  return profile.flatMap(([r, z], k) => {
    const [r2, z2] = profile[(k + 1) % profile.length];
    if (r === 0 && r2 === 0) return [[r, z]];
    return Array.from({ length: pieces }, (_, p) => [
      r + ((r2 - r) * p) / pieces,
      z + ((z2 - z) * p) / pieces,
    ]);
  });
}

/** A revolved square: with four segments, a tube or tray of square section. */
function placement({ turn = 0, tilt = 0, move }) {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [ct, st] = [Math.cos(tilt), Math.sin(tilt)];
  return Float64Array.from([ct * c, s, -st * c, 0, -ct * s, c, st * s, 0, st, 0, ct, 0, ...move, 1]);
}

const parts = 437;

/** A model of about `triangles` triangles (within 7 %), in 437 parts. */
export function machine(triangles, seed = 1) {
  // Rounding to whole segments and pieces, and the sides on an axis, cost triangles: ask for as many more.
  let asked = triangles;
  for (let k = 0; k < 6; k++) {
    const made = built(asked, seed, true).triangles;
    if (Math.abs(made / triangles - 1) < 0.03) break;
    asked *= triangles / made;
  }
  return built(asked, seed, false).model;
}

/** Triangles of a revolved profile: none on the axis, one a segment where it ends there, else two. */
function count(profile, segments) {
  return profile.reduce((n, [r], k) => {
    const [r2] = profile[(k + 1) % profile.length];
    return n + segments * ((r > 0 ? 1 : 0) + (r2 > 0 ? 1 : 0));
  }, 0);
}

function built(triangles, seed, onlyCount) {
  const next = random(seed);
  const shapes = [];
  const placed = [];
  let made = 0;
  const add = (name, profile, square, at) => {
    const share = triangles / parts;
    const segments = square ? 4 : Math.max(12, Math.round(Math.sqrt(share) / 2) * 2);
    const pieces = Math.max(1, Math.round(share / (2 * segments * profile.length)));
    const cut = divided(profile, pieces);
    made += count(cut, segments);
    shapes.push(onlyCount ? {} : { ...revolved(cut, segments), hash: `bench-${shapes.length}` });
    const id = `${name} ${placed.length}`;
    placed.push({ id, name: id, assembly: [], shape: shapes.length - 1, placement: placement(at) });
  };
  const vessel = (r, h, wall) => [
    [0, -wall],
    [r + wall, -wall],
    [r + wall, h],
    [r, h],
    [r, 0],
    [0, 0],
  ];
  const tube = (r, h, wall) => [
    [r, 0],
    [r + wall, 0],
    [r + wall, h],
    [r, h],
  ];
  const bar = (r, h) => [
    [0, 0],
    [r, 0],
    [r, h],
    [0, h],
  ];
  const sealed = (r, h, wall) => [
    [0, 0],
    [r, 0],
    [r, h],
    [0, h],
    [0, h - wall],
    [r - wall, h - wall],
    [r - wall, wall],
    [0, wall],
  ];
  const somewhere = () => [next() * 1500, next() * 900, 100 + next() * 1200];
  for (let k = 0; k < parts; k++) {
    const kind = k % 7;
    const at = { turn: next() * 6.28, tilt: (next() - 0.5) * 0.1, move: somewhere() };
    if (kind === 0) add('leg', sealed(40, 1000, 3), true, { ...at, tilt: next() < 0.5 ? Math.PI / 2 : 0 });
    else if (kind === 1) add('tray', vessel(60 + next() * 120, 10 + next() * 40, 1.5), true, at);
    else if (kind === 2)
      add('pipe', tube(15 + next() * 20, 300, 1.5), false, { ...at, tilt: Math.PI / 2 + at.tilt });
    else if (kind === 3) add('pot', vessel(30 + next() * 60, 50 + next() * 100, 2), false, at);
    else if (kind === 4) add('plate', bar(80 + next() * 120, 4), true, at);
    else if (kind === 5) add('bolt', bar(5 + next() * 5, 20), false, { ...at, tilt: next() * 3 });
    else add('drum', bar(40 + next() * 60, 200), false, { ...at, tilt: Math.PI / 2 });
  }
  return { triangles: made, model: { shapes, parts: placed, unit: 'mm', deviation_mm: 0, notes: [] } };
}
