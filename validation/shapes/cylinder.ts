import { type Mesh, type Placement, transformed } from './mesh.ts';
import { revolve } from './revolve.ts';

/** Upright cylinder from height 0 to `height`, then placed. */
export function cylinder(radius: number, height: number, segments: number, placement?: Placement): Mesh {
  const upright = revolve(
    [
      [0, 0],
      [radius, 0],
      [radius, height],
      [0, height],
    ],
    segments,
  );
  return placement ? transformed(upright, placement) : upright;
}
