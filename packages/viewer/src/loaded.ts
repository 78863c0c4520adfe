import { bounds, type Model, type Vec3 } from '@coveline/model';
import { Vector3 } from 'three';
import { partBoxes } from './geometry/part-boxes.ts';
import { PartLayer } from './parts/part-layer.ts';
import { PartPicker } from './pick/part-picker.ts';
import { Section } from './section/section.ts';
import type { Stage } from './stage.ts';

/** Everything that belongs to one model and goes with it. */
export interface Loaded {
  readonly model: Model;
  readonly partIndex: ReadonlyMap<string, number>;
  readonly boxes: Float64Array;
  readonly bounds: readonly [Vec3, Vec3];
  readonly radius: number;
  readonly parts: PartLayer;
  readonly picker: PartPicker;
  readonly section: Section;
}

/** Puts the model's middle at the origin of the scene and builds its layers. */
export function load(stage: Stage, model: Model): Loaded {
  const box = bounds(model);
  const [low, high] = box;
  stage.origin = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
  const radius = Math.max(1, Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) / 2);
  const boxes = partBoxes(model);
  const parts = new PartLayer(stage, model);
  return {
    model,
    partIndex: new Map(model.parts.map((part, index) => [part.id, index])),
    boxes,
    bounds: box,
    radius,
    parts,
    picker: new PartPicker(model, boxes, stage.origin),
    section: new Section(stage, parts.solid.geometry, new Vector3(), radius),
  };
}

export function unload(loaded: Loaded | null): void {
  loaded?.section.dispose();
  loaded?.parts.dispose();
}
