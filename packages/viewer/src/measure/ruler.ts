import type { Model } from '@coveline/model';
import { BufferAttribute, BufferGeometry, LineBasicMaterial, LineSegments, type Vector3 } from 'three';
import type { Overlay } from '../overlay/overlay.ts';
import type { Hit, PartPicker } from '../pick/part-picker.ts';
import { snap } from '../pick/snap.ts';
import type { Stage } from '../stage.ts';
import { type MeasuredPoint, type Measurement, measurement } from './measurement.ts';

/** Picks snap to a vertex that is within this distance on the screen. */
const snapReach_px = 12;

/** Two picks, one distance. */
export class Ruler {
  active = false;
  private first: { point: MeasuredPoint; scene: Vector3 } | null = null;
  private readonly line: LineSegments<BufferGeometry, LineBasicMaterial>;
  private readonly stage: Stage;
  private readonly overlay: Overlay;
  private readonly done: (m: Measurement | null) => void;

  constructor(stage: Stage, overlay: Overlay, done: (m: Measurement | null) => void) {
    this.stage = stage;
    this.overlay = overlay;
    this.done = done;
    this.line = new LineSegments(new BufferGeometry(), new LineBasicMaterial({ depthTest: false }));
    this.line.renderOrder = 20;
    this.line.visible = false;
    this.line.frustumCulled = false;
    stage.scene.add(this.line);
  }

  /** `perPixel_mm`: size of a pixel at the picked depth. */
  pick(
    model: Model,
    picker: PartPicker,
    hit: Hit,
    perPixel_mm: number,
    words: (m: Measurement) => string,
  ): void {
    const { point, snapped } = snap(hit.point, picker.corners(hit), perPixel_mm * snapReach_px);
    const { cad } = model.shapes[model.parts[hit.part].shape];
    const plane = cad?.faces[cad.faceOfTriangle[hit.triangle]]?.kind === 'plane';
    const picked: MeasuredPoint = { at: this.stage.toModel(point), snapped, plane };
    if (!this.first) {
      this.clear();
      this.first = { point: picked, scene: point };
      this.overlay.set('ruler', [pin('first', picked, '1')]);
      this.done(null);
      return;
    }
    const result = measurement(this.first.point, picked, model.deviation_mm);
    const ends = new Float32Array([...this.first.scene.toArray(), ...point.toArray()]);
    this.line.geometry.dispose();
    this.line.geometry = new BufferGeometry().setAttribute('position', new BufferAttribute(ends, 3));
    this.line.material.color.setRGB(...this.stage.sheet.waterRim);
    this.line.visible = true;
    this.overlay.set('ruler', [pin('length', picked, words(result))]);
    this.first = null;
    this.stage.requestRender();
    this.done(result);
  }

  clear(): void {
    this.first = null;
    this.line.visible = false;
    this.overlay.set('ruler', []);
    this.stage.requestRender();
  }

  dispose(): void {
    this.line.removeFromParent();
    this.line.geometry.dispose();
    this.line.material.dispose();
  }
}

function pin(id: string, point: MeasuredPoint, text: string) {
  const element = document.createElement('div');
  const words = document.createElement('span');
  words.className = 'view-tag';
  words.textContent = text;
  element.append(words);
  return { id, at: point.at, element, yields: false };
}
