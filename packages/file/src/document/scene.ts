/** The machine as it is drawn again and again: its tree, the index of its parts, and overviews drawn once. */
import { bounds, type Model, type Vec3 } from '@coveline/model';
import { type Place, type SurveyOutcome, type Tree, treeOf } from '@coveline/survey';
import { type Camera, cameraOnBox } from '../picture/camera.ts';
import type { Image } from '../picture/image.ts';
import { directionOf } from '../picture/place-view.ts';
import { renderImage } from '../picture/render.ts';
import { placesById } from './places.ts';

export interface Overview {
  readonly camera: Camera;
  readonly image: Image;
}

export interface Scene {
  readonly model: Model;
  readonly tree: Tree;
  readonly outcome: SurveyOutcome;
  readonly places: ReadonlyMap<string, Place>;
  readonly partIndex: ReadonlyMap<string, number>;
  readonly bounds: readonly [Vec3, Vec3];
  readonly front: Overview;
  readonly back: Overview;
}

export const overviewSize = [300, 300] as const;

export function newScene(model: Model, outcome: SurveyOutcome): Scene {
  const tree = treeOf(model);
  const box = bounds(model);
  const overview = (azimuth: number): Overview => {
    const camera = cameraOnBox(box[0], box[1], directionOf(azimuth, 28), overviewSize);
    return { camera, image: renderImage(model, tree, { camera, size: overviewSize }) };
  };
  return {
    model,
    tree,
    outcome,
    places: placesById(outcome.result),
    partIndex: new Map(model.parts.map((part, i) => [part.id, i])),
    bounds: box,
    front: overview(-35),
    back: overview(145),
  };
}
