import { bounds, type Model, type Vec3 } from '@coveline/model';
import { Box3, Vector3 } from 'three';
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

/** Box around the named parts; around all that are shown when none is named, and the whole model when none is shown. */
export function boxOf(stage: Stage, loaded: Loaded, parts: readonly string[]): Box3 {
  const { boxes, bounds: whole, partIndex, model, parts: layer } = loaded;
  const named = parts.map((id) => partIndex.get(id)).filter((i) => i !== undefined);
  const shown = [...model.parts.keys()].filter((i) => layer.state(i) === 'shown');
  const box = new Box3();
  for (const i of named.length > 0 ? named : shown) {
    const [a, b, c, d, e, f] = boxes.subarray(i * 6, i * 6 + 6);
    box.expandByPoint(stage.toScene([a, b, c])).expandByPoint(stage.toScene([d, e, f]));
  }
  return box.isEmpty() ? new Box3(stage.toScene(whole[0]), stage.toScene(whole[1])) : box;
}

export function unload(loaded: Loaded | null): void {
  loaded?.section.dispose();
  loaded?.parts.dispose();
}
