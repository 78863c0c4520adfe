/** Parallel projection: lengths can be read off a picture, and nothing near grows out of proportion. */
import type { Vec3 } from '@coveline/model';
import { along, cross, dot, subtract, unit } from './vector.ts';

export interface Camera {
  /** What stands in the middle of the picture, mm. */
  readonly target: Vec3;
  /** From the eye into the scene; any length but zero. */
  readonly direction: Vec3;
  /** Width of what is seen, mm. */
  readonly span_mm: number;
  /** Everything nearer to the eye than this distance before the target is cut away, mm. */
  readonly cutBefore_mm?: number;
}

/** Right-handed axes of a camera, each of length 1. */
export interface Axes {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly forward: Vec3;
}

export function axesOf({ direction }: Camera): Axes {
  const forward = unit(direction);
  const upright = Math.abs(forward[2]) < 0.999;
  const right = unit(cross(forward, upright ? [0, 0, 1] : [0, 1, 0]));
  return { right, up: cross(right, forward), forward };
}

/** From mm to pixels of a picture with the given size: x to the right, y down, depth from the plane of the target. */
export interface Projection {
  readonly axes: Axes;
  readonly scale: number;
  readonly toPixel: (p: Vec3) => readonly [number, number, number];
}

export function projectionOf(camera: Camera, width: number, height: number): Projection {
  const axes = axesOf(camera);
  const scale = width / camera.span_mm;
  return {
    axes,
    scale,
    toPixel: (p) => {
      const d = subtract(p, camera.target);
      return [
        width / 2 + dot(d, axes.right) * scale,
        height / 2 - dot(d, axes.up) * scale,
        dot(d, axes.forward),
      ];
    },
  };
}

/** Camera that shows a box whole, with a margin. */
export function cameraOnBox(
  low: Vec3,
  high: Vec3,
  direction: Vec3,
  size: readonly [number, number],
  margin = 1.08,
): Camera {
  const target: Vec3 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  const { right, up } = axesOf({ target, direction, span_mm: 1 });
  let wide = 0;
  let tall = 0;
  for (let corner = 0; corner < 8; corner++) {
    const p: Vec3 = [
      corner & 1 ? high[0] : low[0],
      corner & 2 ? high[1] : low[1],
      corner & 4 ? high[2] : low[2],
    ];
    const d = subtract(p, target);
    wide = Math.max(wide, Math.abs(dot(d, right)));
    tall = Math.max(tall, Math.abs(dot(d, up)));
  }
  const span_mm = 2 * margin * Math.max(wide, (tall * size[0]) / size[1], 1e-3);
  return { target, direction, span_mm };
}

/** Where the eye of a camera looks from, at a distance. */
export function eyeOf(camera: Camera, distance: number): Vec3 {
  return along(camera.target, axesOf(camera).forward, -distance);
}
