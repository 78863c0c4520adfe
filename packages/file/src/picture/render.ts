/** Pictures of a model without a graphics card: the same bytes every time. */
import type { Model, Vec3 } from '@coveline/model';
import { type Drawing, type Tree, treeOf } from '@coveline/survey';
import { type Camera, projectionOf } from './camera.ts';
import { type Image, shrink, toPng } from './image.ts';
import { layTriangles, strokeLines } from './overlay.ts';
import { type Sign, toneOf } from './palette.ts';
import { takeSamples } from './samples.ts';
import { shade } from './shade.ts';
import { drawBadge } from './sign.ts';

export interface PictureMark {
  readonly sign: Sign;
  /** Where the badge points to, mm. */
  readonly at_mm: Vec3;
  readonly drawings: readonly Drawing[];
}

export interface PictureRequest {
  readonly camera: Camera;
  /** Width and height in pixels. */
  readonly size: readonly [number, number];
  /** Indices of parts that stand out. */
  readonly highlighted?: ReadonlySet<number>;
  readonly marks?: readonly PictureMark[];
}

/** Samples a pixel along each side. */
const fineness = 2;

/** A picture as PNG bytes. `model` with +Z up, as surveyed. */
export function renderPicture(model: Model, request: PictureRequest): Uint8Array {
  return toPng(renderImage(model, treeOf(model), request));
}

export function renderImage(model: Model, tree: Tree, request: PictureRequest): Image {
  const { camera, size, highlighted = new Set<number>(), marks = [] } = request;
  const [width, height] = [Math.round(size[0]), Math.round(size[1])];
  const samples = takeSamples(model, tree, camera, width * fineness, height * fineness);
  const fine = shade(model, camera, samples, highlighted);
  const fineProjection = projectionOf(camera, samples.width, samples.height);
  for (const mark of marks) {
    for (const { triangles } of mark.drawings)
      if (triangles) layTriangles(fine, samples, fineProjection, camera, triangles, toneOf[mark.sign]);
  }
  const image = shrink(fine, fineness);
  const projection = projectionOf(camera, width, height);
  for (const mark of marks) {
    for (const { lines } of mark.drawings)
      if (lines) strokeLines(image, samples, projection, camera, lines, toneOf[mark.sign]);
  }
  for (const mark of marks) {
    const [x, y] = projection.toPixel(mark.at_mm);
    drawBadge(image, mark.sign, x, y);
  }
  return image;
}
