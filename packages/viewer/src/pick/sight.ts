import { type Plane, Ray, type Vector3 } from 'three';
import type { PartPicker } from './part-picker.ts';

/** Points are lifted off the surface that they lie on, mm. */
const lift_mm = 0.6;

/** Looks from points of the machine towards where a camera could be. */
export class Sight {
  private readonly picker: PartPicker;
  private readonly visible: (part: number) => boolean;
  private readonly kept: Plane | null;
  private readonly ray = new Ray();

  constructor(picker: PartPicker, visible: (part: number) => boolean, kept: Plane | null) {
    this.picker = picker;
    this.visible = visible;
    this.kept = kept;
  }

  /** True when nothing stands between the point and the far end of that direction. */
  isFree(point: Vector3, direction: Vector3): boolean {
    return this.picker.first(this.from(point, direction), this.visible, this.kept) === null;
  }

  /** Every part that hides one of the points from that direction. */
  inFront(points: readonly Vector3[], direction: Vector3): number[] {
    const found = new Set<number>();
    const left = (part: number) => this.visible(part) && !found.has(part);
    for (const point of points) {
      let hit = this.picker.first(this.from(point, direction), left, this.kept);
      while (hit) {
        found.add(hit.part);
        hit = this.picker.first(this.ray, left, this.kept);
      }
    }
    return [...found];
  }

  private from(point: Vector3, direction: Vector3): Ray {
    return this.ray.set(point.clone().addScaledVector(direction, lift_mm), direction);
  }
}
