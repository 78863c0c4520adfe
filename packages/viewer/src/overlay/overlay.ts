import type { Vec3 } from '@coveline/model';
import { type Camera, Vector3 } from 'three';
import type { Stage } from '../stage.ts';

/** Something flat that stands at a point of the model: a sign or a few words. */
export interface Pinned {
  readonly id: string;
  readonly at: Vec3;
  readonly element: HTMLElement;
  /** Signs give way to earlier ones that they would cover; words never do. */
  readonly yields: boolean;
}

/** Signs nearer to each other than this on the screen would cover each other. */
const room_px = 22;

/** Keeps HTML elements over their points of the model. Nobody needs them to use the view: the lists say the same. */
export class Overlay {
  private readonly layer: HTMLElement;
  private readonly stage: Stage;
  private readonly groups = new Map<string, readonly Pinned[]>();

  constructor(host: HTMLElement, stage: Stage) {
    this.stage = stage;
    this.layer = document.createElement('div');
    this.layer.className = 'view-overlay';
    this.layer.setAttribute('aria-hidden', 'true');
    Object.assign(this.layer.style, {
      position: 'absolute',
      inset: '0',
      overflow: 'hidden',
      pointerEvents: 'none',
    });
    host.append(this.layer);
  }

  /** Replaces one group, such as the signs of places or the words of a measurement. */
  set(group: string, pinned: readonly Pinned[]): void {
    for (const { element } of this.groups.get(group) ?? []) element.remove();
    this.groups.set(group, pinned);
    for (const { element } of pinned) {
      Object.assign(element.style, { position: 'absolute', left: '0', top: '0' });
      this.layer.append(element);
    }
    this.stage.requestRender();
  }

  update(camera: Camera): void {
    const taken: { x: number; y: number }[] = [];
    const point = new Vector3();
    for (const pinned of this.groups.values()) {
      for (const { at, element, yields } of pinned) {
        point.copy(this.stage.toScene(at)).project(camera);
        const x = ((point.x + 1) / 2) * this.stage.width;
        const y = ((1 - point.y) / 2) * this.stage.height;
        const inside = point.z > -1 && point.z < 1 && Math.abs(point.x) < 1.05 && Math.abs(point.y) < 1.05;
        const covered =
          yields && taken.some((t) => Math.abs(t.x - x) < room_px && Math.abs(t.y - y) < room_px);
        element.style.visibility = inside && !covered ? 'visible' : 'hidden';
        if (!inside || covered) continue;
        if (yields) taken.push({ x, y });
        element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
      }
    }
  }

  dispose(): void {
    this.layer.remove();
  }
}
