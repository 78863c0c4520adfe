/**
 * Drawings with known gaps and joints. Lengths in mm, areas in cm2; `s` scales a drawing but not the width of its gap.
 * All values follow from the drawing.
 */
import type { Model } from '@coveline/model';
import { assemble, motion, together } from '../../shapes/assemble.ts';
import { box } from '../../shapes/box.ts';
import { cylinder } from '../../shapes/cylinder.ts';
import type { Mesh } from '../../shapes/mesh.ts';
import { prism } from '../../shapes/prism.ts';
import { revolve } from '../../shapes/revolve.ts';
import { difference } from '../../shapes/solid.ts';

export interface KnownGap {
  readonly parts: string;
  readonly width: number;
  readonly widest?: number;
  readonly depth?: number;
  readonly mouth?: number;
  readonly area: number;
}

export interface KnownJoint {
  readonly parts: string;
  /** Of all joints of these parts together. */
  readonly length: number;
  readonly area?: number;
  readonly flush?: boolean;
}

export interface Case {
  readonly name: string;
  readonly model: (s: number) => Model;
  readonly gaps: (s: number) => readonly KnownGap[];
  readonly joints: (s: number) => readonly KnownJoint[];
}

const none = () => [];
const segments = 96;
/** Perimeter and area of a polygon over those of its circle. */
const roundness = (segments / Math.PI) * Math.sin(Math.PI / segments);

function plates(w: number): Case {
  return {
    name: `two plates ${w} apart`,
    model: (s) =>
      assemble({
        low: box([0, 0, 0], [120 * s, 80 * s, 8]),
        high: box([0, 0, 8 + w], [120 * s, 80 * s, 15]),
      }),
    gaps: (s) => [
      { parts: 'high,low', width: w, widest: w, depth: 40 * s, mouth: 400 * s, area: 96 * s * s },
    ],
    joints: none,
  };
}

function wedge(from: number, to: number): Case {
  return {
    name: `a wedge that opens from ${from} to ${to}`,
    model: (s) =>
      upright(
        box([0, 0, -6], [100 * s, 60 * s, 0]),
        prism(
          [
            [0, from],
            [100 * s, to],
            [100 * s, 20 * s + to],
            [0, 20 * s + to],
          ],
          -60 * s,
          0,
        ),
      ),
    gaps: (s) => [
      { parts: 'high,low', width: from, widest: to, depth: 30 * s, mouth: 320 * s, area: 60 * s * s },
    ],
    joints: none,
  };
}

/** Lower solid as drawn, and an upper one whose outline is turned up: y becomes z. */
function upright(low: Mesh, outline: Mesh): Model {
  const positions = outline.positions.slice();
  for (let i = 0; i < positions.length; i += 3) {
    positions[i + 1] = -outline.positions[i + 2];
    positions[i + 2] = outline.positions[i + 1];
  }
  return assemble({ low, high: { positions, triangles: outline.triangles } });
}

function slot(w: number, d: number): Case {
  return {
    name: `a slot ${w} wide and ${d} deep within one part`,
    model: (s) =>
      assemble({
        block: prism(
          [
            [0, 0],
            [40, 0],
            [40, 20 + d * s],
            [20 + w / 2, 20 + d * s],
            [20 + w / 2, 20],
            [20 - w / 2, 20],
            [20 - w / 2, 20 + d * s],
            [0, 20 + d * s],
          ],
          0,
          60 * s,
        ),
      }),
    gaps: (s) => [
      { parts: 'block', width: w, widest: w, depth: d * s, mouth: 60 * s + 2 * d * s, area: 0.6 * s * d * s },
    ],
    joints: none,
  };
}

function keyway(w: number): Case {
  return {
    name: `a keyway ${w} wide with closed ends`,
    model: (s) =>
      assemble({
        shaft: difference(
          box([0, 0, 0], [80 * s, 30, 20 * s]),
          box([15 * s, 15 - w / 2, 12 * s], [65 * s, 15 + w / 2, 21 * s]),
        ),
      }),
    gaps: (s) => [{ parts: 'shaft', width: w, depth: 8 * s, mouth: 50 * s, area: 4 * s * s }],
    joints: none,
  };
}

function boltInPlate(clearance: number): Case {
  return {
    name: `a bolt with ${clearance} clearance in a plate`,
    model: (s) => {
      const plate = difference(
        box([-30 * s, -30 * s, 0], [30 * s, 30 * s, 12 * s]),
        cylinder(5 * s + clearance, 14 * s, segments, motion([0, 0, -s])),
      );
      return assemble({ plate, bolt: cylinder(5 * s, 40 * s, segments, motion([0, 0, -14 * s])) });
    },
    gaps: (s) => [
      {
        parts: 'bolt,plate',
        // Facets of shaft and bore stand opposite each other.
        width: clearance * Math.cos(Math.PI / segments),
        depth: 6 * s,
        mouth: 4 * Math.PI * (5 * s + clearance / 2) * roundness,
        area: (2 * Math.PI * (5 * s + clearance / 2) * 12 * s * roundness) / 100,
      },
    ],
    joints: none,
  };
}

function bush(w: number): Case {
  return {
    name: `a bush ${w} off its shaft, on a shoulder`,
    model: (s) =>
      assemble({
        // Shaft with a collar on which the bush stands.
        shaft: revolve(
          [
            [0, 0],
            [16 * s, 0],
            [16 * s, 10 * s],
            [8 * s, 10 * s],
            [8 * s, 40 * s],
            [0, 40 * s],
          ],
          segments,
        ),
        bush: revolve(
          [
            [8 * s + w, 10 * s],
            [16 * s, 10 * s],
            [16 * s, 30 * s],
            [8 * s + w, 30 * s],
          ],
          segments,
        ),
      }),
    gaps: (s) => [
      {
        parts: 'bush,shaft',
        width: w * Math.cos(Math.PI / segments),
        depth: 20 * s,
        mouth: 2 * Math.PI * (8 * s + w / 2) * roundness,
        area: (2 * Math.PI * (8 * s + w / 2) * 20 * s * roundness) / 100,
      },
    ],
    // Outer and inner border of the ring on which it stands.
    joints: (s) => [
      {
        parts: 'bush,shaft',
        length: 2 * Math.PI * (16 * s + 8 * s + w) * roundness,
        area: (Math.PI * ((16 * s) ** 2 - (8 * s + w) ** 2)) / 100,
      },
    ],
  };
}

const groove: Case = {
  name: 'a ring groove',
  model: (s) =>
    assemble({
      flange: revolve(
        [
          [10 * s, 0],
          [40 * s, 0],
          [40 * s, 12],
          [20 * s + 2.4, 12],
          [20 * s + 2.4, 12 - 2 * s],
          [20 * s, 12 - 2 * s],
          [20 * s, 12],
          [10 * s, 12],
        ],
        segments,
      ),
    }),
  gaps: (s) => [
    {
      parts: 'flange',
      width: 2.4 * Math.cos(Math.PI / segments),
      depth: 2 * s,
      mouth: 2 * Math.PI * (20 * s + 1.2),
      area: (2 * Math.PI * (20 * s + 1.2) * 2 * s) / 100,
    },
  ],
  joints: none,
};

const stack: Case = {
  name: 'five sheets 0.4 apart',
  model: (s) =>
    assemble(
      Object.fromEntries(
        [0, 1, 2, 3, 4].map((k) => [`s${k}`, box([0, 0, 1.4 * k], [60 * s, 50 * s, 1.4 * k + 1])]),
      ),
    ),
  gaps: (s) =>
    [0, 1, 2, 3].map((k) => ({
      parts: `s${k},s${k + 1}`,
      width: 0.4,
      widest: 0.4,
      depth: 25 * s,
      mouth: 220 * s,
      area: 30 * s * s,
    })),
  joints: none,
};

const lattice: Case = {
  name: 'nine cubes 0.5 apart',
  model: (s) =>
    assemble(
      Object.fromEntries(
        [0, 1, 2].flatMap((i) =>
          [0, 1, 2].map((j) => {
            const pitch = 20 * s + 0.5;
            return [
              `c${i}${j}`,
              box([i * pitch, j * pitch, 0], [i * pitch + 20 * s, j * pitch + 20 * s, 20 * s]),
            ];
          }),
        ),
      ),
    ),
  gaps: (s) =>
    [0, 1, 2].flatMap((i) =>
      [0, 1].flatMap((j) =>
        [`c${i}${j},c${i}${j + 1}`, `c${j}${i},c${j + 1}${i}`].map((parts) => ({
          parts,
          width: 0.5,
          widest: 0.5,
          depth: 10 * s,
          area: 4 * s * s,
        })),
      ),
    ),
  joints: none,
};

const several: Case = {
  name: 'two plates side by side over a third',
  model: (s) =>
    assemble({
      base: box([0, 0, -5], [100 * s, 60 * s, 0]),
      left: box([0, 0, 0.8], [45 * s, 60 * s, 6]),
      right: box([55 * s, 0, 0.8], [100 * s, 60 * s, 6]),
    }),
  gaps: (s) =>
    ['left', 'right'].map((name) => ({
      parts: `base,${name}`,
      width: 0.8,
      depth: 22.5 * s,
      mouth: 210 * s,
      area: 27 * s * s,
    })),
  joints: none,
};

const washer: Case = {
  name: 'a plate held off by a washer',
  model: (s) =>
    assemble({
      base: box([-50 * s, -40 * s, -6], [50 * s, 40 * s, 0]),
      washer: cylinder(10 * s, 1.5, segments),
      plate: box([-50 * s, -40 * s, 1.5], [50 * s, 40 * s, 8]),
    }),
  gaps: (s) => [
    {
      parts: 'base,plate',
      width: 1.5,
      area: (8000 * s * s - Math.PI * (10 * s) ** 2 * roundness) / 100,
    },
  ],
  joints: (s) =>
    ['base,washer', 'plate,washer'].map((parts) => ({
      parts,
      length: 20 * Math.PI * s * roundness,
      area: (Math.PI * 100 * s * s) / 100,
      flush: false,
    })),
};

const lap: Case = {
  name: 'a lap joint of two sheets',
  model: (s) =>
    assemble({
      low: box([0, 0, 0], [60 * s, 40 * s, 2]),
      high: box([40 * s, 0, 2], [100 * s, 40 * s, 4]),
    }),
  gaps: none,
  joints: (s) => [{ parts: 'high,low', length: 120 * s, area: 8 * s * s }],
};

const seam: Case = {
  name: 'two plates edge to edge',
  model: (s) =>
    assemble({
      left: box([0, 0, 0], [50 * s, 80 * s, 6]),
      right: box([50 * s, 0, 0], [90 * s, 80 * s, 6]),
    }),
  gaps: none,
  joints: (s) => [{ parts: 'left,right', length: 2 * (80 * s + 6), area: 4.8 * s, flush: true }],
};

const sunk: Case = {
  name: 'a block sunk into a plate',
  model: (s) =>
    assemble({
      plate: box([0, 0, 0], [100 * s, 80 * s, 10]),
      block: box([20 * s, 20 * s, 6], [70 * s, 60 * s, 30]),
    }),
  gaps: none,
  joints: (s) => [{ parts: 'block,plate', length: 180 * s, area: 0, flush: false }],
};

const through: Case = {
  name: 'a pin through a plate',
  model: (s) =>
    assemble({
      plate: box([-20 * s, -20 * s, 0], [20 * s, 20 * s, 8 * s]),
      pin: cylinder(5 * s, 30 * s, segments, motion([0, 0, -10 * s])),
    }),
  gaps: none,
  joints: (s) => [{ parts: 'pin,plate', length: 20 * Math.PI * s * roundness, area: 0 }],
};

const free: Case = {
  name: 'plates just too far apart, a sheet and a square corner',
  model: (s) =>
    assemble({
      plates: together(
        box([0, 0, 0], [40 * s, 40 * s, 5]),
        box([0, 0, 8.05], [40 * s, 40 * s, 12]),
        box([100 * s, 0, 0], [140 * s, 40 * s, 1]),
      ),
      corner: prism(
        [
          [200 * s, 0],
          [240 * s, 0],
          [240 * s, 10],
          [200 * s + 10, 10],
          [200 * s + 10, 40 * s],
          [200 * s, 40 * s],
        ],
        0,
        60 * s,
      ),
    }),
  gaps: none,
  joints: none,
};

export const cases: readonly Case[] = [
  ...[0.05, 0.3, 1.2, 2.8].map(plates),
  wedge(0.5, 2.5),
  slot(0.6, 4),
  slot(2.2, 20),
  keyway(1.5),
  ...[0.1, 0.5].map(boltInPlate),
  bush(0.4),
  groove,
  stack,
  lattice,
  several,
  washer,
  lap,
  seam,
  sunk,
  through,
  free,
];
