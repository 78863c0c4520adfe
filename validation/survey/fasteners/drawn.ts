/** Fasteners and what only looks like one, drawn exactly by the CAD kernel, along +z with the head above z = 0. */
import { readModel } from '@coveline/cad';
import type { Model, Placement, Shape } from '@coveline/model';
import { draw, drawPolysides, exportSTEP, makeBox, makeCylinder, type Shape3D, setOC } from 'replicad';
import init from 'replicad-opencascadejs';

export async function startDrawing(): Promise<void> {
  setOC(
    (await init({ stdin: () => null, stdout: () => {}, stderr: () => {} })) as Parameters<typeof setOC>[0],
  );
}

/** Across flats, head, nut height, socket head and socket by nominal diameter: ISO 4017, 4032, 4762; from memory. */
export const sizes = {
  4: { flats: 7, head: 2.8, nut: 3.2, socketHead: 7, socket: 3, pitch: 0.7 },
  8: { flats: 13, head: 5.3, nut: 6.8, socketHead: 13, socket: 6, pitch: 1.25 },
  20: { flats: 30, head: 12.5, nut: 18, socketHead: 30, socket: 17, pitch: 2.5 },
} as const;
export type Size = keyof typeof sizes;

export const rod = (d: number, length: number, z = 0): Shape3D => makeCylinder(d / 2, length, [0, 0, z]);
export const hexagon = (flats: number, height: number, z = 0): Shape3D =>
  drawPolysides(flats / Math.sqrt(3), 6)
    .sketchOnPlane('XY', z)
    .extrude(height) as Shape3D;
const box = (x: number, y: number, z0: number, z1: number): Shape3D =>
  makeBox([-x / 2, -y / 2, z0], [x / 2, y / 2, z1]);

/** Cap of a sphere over a circle of the given radius at height z. */
const cap = (radius: number, height: number, z: number): Shape3D => {
  const R = (radius ** 2 + height ** 2) / (2 * height);
  const mid = Math.sqrt(R * R - radius ** 2 / 4) - (R - height);
  return draw([0, z - 0.01])
    .hLineTo(radius)
    .vLineTo(z)
    .threePointsArcTo([0, z + height], [radius / 2, z + mid])
    .close()
    .sketchOnPlane('XZ')
    .revolve([0, 0, 1]) as Shape3D;
};

export const hexBolt = (d: Size, length: number) =>
  hexagon(sizes[d].flats, sizes[d].head).fuse(rod(d, length, -length));
/** `crown`: height of the dome over the width across flats. */
export const domedBolt = (d: Size, length: number, crown = 0.25) => {
  const { flats, head } = sizes[d];
  return hexBolt(d, length).fuse(cap(0.49 * flats, crown * flats, head));
};
export const hexNut = (d: Size) => hexagon(sizes[d].flats, sizes[d].nut).cut(rod(d, sizes[d].nut));
/** Hexagon with a half sphere above and a blind hole from below. */
export const capNut = (d: Size) => {
  const { flats, nut } = sizes[d];
  return hexagon(flats, nut)
    .fuse(cap(0.48 * flats, 0.48 * flats, nut))
    .cut(rod(d, nut));
};
const screw = (d: Size, length: number) => rod(sizes[d].socketHead, d).fuse(rod(d, length, -length));
export const socketScrew = (d: Size, length: number) =>
  screw(d, length).cut(hexagon(sizes[d].socket, d, d / 2));
export const setScrew = (d: Size, length: number) =>
  rod(d, length).cut(hexagon(0.5 * d, d, length - 0.5 * d));
export const slotScrew = (d: Size, length: number) =>
  screw(d, length).cut(box(4 * d, 0.25 * d, d / 2, 2 * d));
export const crossScrew = (d: Size, length: number) =>
  screw(d, length).cut(box(d, 0.25 * d, d / 2, 2 * d).fuse(box(0.25 * d, d, d / 2, 2 * d)));

export const hexBar = (flats: number, length: number) => hexagon(flats, length);
export const hexCup = (flats: number, height: number) =>
  hexagon(flats, height).cut(hexagon(flats - 4, height, 3));
export const hexSleeve = (flats: number, height: number) =>
  hexagon(flats, height).cut(rod(0.92 * flats, height));
export const hexBlock = (flats: number, height: number) => hexagon(flats, height);
export const steppedPin = (d: number) => rod(d, 3 * d).fuse(rod(1.6 * d, 0.6 * d));
/** Twelve flats about a shaft. */
export const knob = (d: number) =>
  (
    drawPolysides(d / 2 / Math.cos(Math.PI / 12), 12)
      .sketchOnPlane('XY')
      .extrude(0.6 * d) as Shape3D
  ).fuse(rod(0.4 * d, d, -d));
/** A hexagonal pocket in a plate, as it takes up a nut. */
export const pocketPlate = (flats: number) => box(5 * flats, 5 * flats, -10, 0).cut(hexagon(flats, 6, -6));
/** A square hole in a round body. */
export const squareSocket = (d: Size) => screw(d, 2 * d).cut(box(0.6 * d, 0.6 * d, d / 2, 2 * d));

/** Read back through STEP, as a file would be. */
export async function read(
  shapes: readonly { readonly shape: Shape3D; readonly name: string }[],
): Promise<Model> {
  const blob = exportSTEP([...shapes]);
  return readModel(new Uint8Array(await blob.arrayBuffer()), 'drawn.step');
}

export const placedAt = (model: Model, placement: Placement): Model => ({
  ...model,
  parts: model.parts.map((part) => ({ ...part, placement })),
});

/** The same model as a file of triangles would carry it, every vertex off by up to `noise_mm` in each coordinate. */
export function trianglesOnly(model: Model, noise_mm: number, seed: number): Model {
  const next = random(seed);
  const shapes = model.shapes.map(
    ({ positions, triangles, hash }): Shape => ({
      positions: positions.map((c) => c + noise_mm * (2 * next() - 1)),
      triangles,
      hash,
    }),
  );
  return { ...model, shapes, deviation_mm: 0 };
}

/** Uniform numbers in [0, 1): mulberry32. */
function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}
