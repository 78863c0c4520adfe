import type { Model, Vec3 } from '@coveline/model';
import { BufferAttribute, BufferGeometry, DoubleSide, Matrix4, type Plane, Ray, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';

export interface Hit {
  /** Index of the part in the model. */
  readonly part: number;
  /** Index of the triangle within the part. */
  readonly triangle: number;
  readonly distance: number;
  /** In the frame of the scene. */
  readonly point: Vector3;
  readonly normal: Vector3;
}

/**
 * Finds what a ray meets first. One tree per shape, built when a ray first comes near one of its parts, so that
 * opening a large model costs nothing here.
 */
export class PartPicker {
  private readonly trees = new Map<number, MeshBVH>();
  private readonly toScene: Matrix4[];
  private readonly toShape: Matrix4[];
  private readonly model: Model;
  private readonly boxes: Float64Array;
  private readonly origin: Vec3;

  /** `boxes`: see `partBoxes`, model frame. */
  constructor(model: Model, boxes: Float64Array, origin: Vec3) {
    this.model = model;
    this.boxes = boxes;
    this.origin = origin;
    const shift = new Matrix4().makeTranslation(-origin[0], -origin[1], -origin[2]);
    this.toScene = model.parts.map((part) =>
      new Matrix4().fromArray(Array.from(part.placement)).premultiply(shift),
    );
    this.toShape = this.toScene.map((m) => m.clone().invert());
  }

  /** `ray` in the frame of the scene; `kept` is a section plane whose positive side is left standing. */
  first(ray: Ray, visible: (part: number) => boolean, kept: Plane | null): Hit | null {
    const [near, far] = keptInterval(ray, kept);
    if (near >= far) return null;
    const candidates: { part: number; enter: number }[] = [];
    for (let part = 0; part < this.model.parts.length; part++) {
      if (!visible(part)) continue;
      const enter = this.enters(ray, part);
      if (enter !== null && enter < far) candidates.push({ part, enter });
    }
    candidates.sort((a, b) => a.enter - b.enter);
    let best: Hit | null = null;
    const local = new Ray();
    for (const { part, enter } of candidates) {
      if (best && enter > best.distance) break;
      local.copy(ray).applyMatrix4(this.toShape[part]);
      const hit = this.tree(this.model.parts[part].shape).raycastFirst(
        local,
        DoubleSide,
        near,
        best?.distance ?? far,
      );
      if (!hit) continue;
      best = {
        part,
        triangle: hit.faceIndex!,
        distance: hit.distance,
        point: hit.point.clone().applyMatrix4(this.toScene[part]),
        normal: hit.face!.normal.clone().transformDirection(this.toScene[part]),
      };
    }
    return best;
  }

  /** Corners of a triangle in the frame of the scene. */
  corners(hit: Hit): [Vector3, Vector3, Vector3] {
    const { positions, triangles } = this.model.shapes[this.model.parts[hit.part].shape];
    const corner = (k: number) => {
      const v = triangles[hit.triangle * 3 + k] * 3;
      return new Vector3(positions[v], positions[v + 1], positions[v + 2]).applyMatrix4(
        this.toScene[hit.part],
      );
    };
    return [corner(0), corner(1), corner(2)];
  }

  /** Distance at which the ray enters the part's box, 0 from inside, null when it passes by. */
  private enters(ray: Ray, part: number): number | null {
    let from = 0;
    let to = Infinity;
    const start = ray.origin.toArray();
    const along = ray.direction.toArray();
    for (let k = 0; k < 3; k++) {
      const low = this.boxes[part * 6 + k] - this.origin[k] - 1e-6;
      const high = this.boxes[part * 6 + 3 + k] - this.origin[k] + 1e-6;
      if (along[k] === 0) {
        if (start[k] < low || start[k] > high) return null;
        continue;
      }
      const a = (low - start[k]) / along[k];
      const b = (high - start[k]) / along[k];
      from = Math.max(from, Math.min(a, b));
      to = Math.min(to, Math.max(a, b));
    }
    return from <= to ? from : null;
  }

  private tree(shape: number): MeshBVH {
    const known = this.trees.get(shape);
    if (known) return known;
    const { positions, triangles } = this.model.shapes[shape];
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(positions), 3));
    geometry.setIndex(new BufferAttribute(triangles, 1));
    const tree = new MeshBVH(geometry, { indirect: true });
    this.trees.set(shape, tree);
    return tree;
  }
}

/** The stretch of a ray on the side of the plane that is left standing. */
function keptInterval(ray: Ray, kept: Plane | null): [number, number] {
  if (!kept) return [0, Infinity];
  const height = kept.distanceToPoint(ray.origin);
  const rise = kept.normal.dot(ray.direction);
  if (Math.abs(rise) < 1e-12) return height >= 0 ? [0, Infinity] : [1, 0];
  const crossing = -height / rise;
  return rise > 0 ? [Math.max(0, crossing), Infinity] : [0, crossing];
}
