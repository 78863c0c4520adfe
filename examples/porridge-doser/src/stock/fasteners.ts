/** Fasteners with the nominal dimensions of their standards (from memory), threads drawn as plain cylinders. */
import { draw, drawPolysides, type Shape3D } from 'replicad';
import { alongZ, rod, turnedDrawing, turnedPart } from './solids.ts';

/** Across flats, head height, nut height and washer by nominal diameter: ISO 4017, ISO 4032, ISO 7089; from memory. */
const sizes = {
  6: { flats: 10, head: 4, nut: 5.2, washer: [12, 1.6] },
  8: { flats: 13, head: 5.3, nut: 6.8, washer: [16, 1.6] },
  10: { flats: 16, head: 6.4, nut: 8.4, washer: [20, 2] },
  12: { flats: 18, head: 7.5, nut: 10.8, washer: [24, 2.5] },
  16: { flats: 24, head: 10, nut: 14.8, washer: [30, 3] },
} as const;

export type Thread = keyof typeof sizes;

function hexagon(flats: number, height: number): Shape3D {
  return alongZ(drawPolysides(flats / Math.sqrt(3), 6), 0, height);
}

/** Head above z = 0, shank below. */
export function hexBolt(thread: Thread, length: number): Shape3D {
  const { flats, head } = sizes[thread];
  return hexagon(flats, head).fuse(rod(thread, length, [0, 0, -length]));
}

/** Stands on z = 0. */
export function hexNut(thread: Thread): Shape3D {
  const { flats, nut } = sizes[thread];
  return hexagon(flats, nut).cut(rod(thread, nut));
}

export function nutHeight(thread: Thread): number {
  return sizes[thread].nut;
}

export function washer(thread: Thread): Shape3D {
  const [outside, height] = sizes[thread].washer;
  return turnedPart([
    [thread / 2, 0],
    [outside / 2, 0],
    [outside / 2, height],
    [thread / 2, height],
  ]);
}

/** Closed, smooth and round outside: nothing to hold on to and nothing to run into. Stands on z = 0. */
export function domedNut(thread: Thread): Shape3D {
  const radius = (sizes[thread].flats / 2) * 1.15;
  const collar = sizes[thread].nut * 0.7;
  return turnedDrawing(
    draw([0, 0])
      .hLineTo(radius)
      .vLineTo(collar)
      .threePointsArcTo([0, collar + radius], dome(radius, collar))
      .close(),
  );
}

function dome(radius: number, collar: number): [number, number] {
  return [radius * Math.SQRT1_2, collar + radius * Math.SQRT1_2];
}
