/** From samples to colours: light, highlighted parts, cut material, and the lines that an engineer would draw. */
import type { Model } from '@coveline/model';
import { axesOf, type Camera } from './camera.ts';
import { blend, type Image, newImage } from './image.ts';
import { mix, type Rgb, tones } from './palette.ts';
import type { Samples } from './samples.ts';
import { along, unit } from './vector.ts';

/** Two CAD faces that meet at less than this look like one. */
const creaseOfFaces = Math.cos((12 * Math.PI) / 180);
/** The same without CAD faces, where the triangles of a curve turn from one to the next. */
const creaseOfTriangles = Math.cos((38 * Math.PI) / 180);

/** Colours of all samples; the parts in `highlighted` keep their strength, all others step back when there are any. */
export function shade(model: Model, camera: Camera, s: Samples, highlighted: ReadonlySet<number>): Image {
  const image = newImage(s.width, s.height);
  const { right, up, forward } = axesOf(camera);
  const light = unit(along(along(along([0, 0, 0], forward, -0.75), up, 0.75), right, -0.45));
  const bases = model.parts.map((part, p) => baseTone(part.color, highlighted.size > 0, highlighted.has(p)));
  for (let i = 0; i < s.part.length; i++) {
    const p = s.part[i];
    if (p < 0) {
      image.rgb.set(tones.paper, i * 3);
      continue;
    }
    const n = i * 3;
    const x = s.normal[n];
    const y = s.normal[n + 1];
    const z = s.normal[n + 2];
    const lit = Math.max(0, x * light[0] + y * light[1] + z * light[2]);
    const facing = Math.abs(x * forward[0] + y * forward[1] + z * forward[2]);
    const strength = 0.58 + 0.34 * lit + 0.1 * facing;
    const base = s.cut[i] ? mix(tones.cut, bases[p], 0.25) : bases[p];
    for (let k = 0; k < 3; k++) image.rgb[n + k] = Math.min(255, base[k] * strength);
  }
  drawLines(image, s, camera.span_mm / s.width);
  return image;
}

function baseTone(color: readonly number[] | undefined, anyHighlighted: boolean, highlighted: boolean): Rgb {
  const own: Rgb = color ? [color[0] * 255, color[1] * 255, color[2] * 255] : tones.steel;
  if (highlighted) return mix(own, tones.highlight, 0.6);
  return mix(own, tones.paper, anyHighlighted ? 0.45 : 0.15);
}

/** Outlines where one part hides another, creases where two faces of a part meet. */
function drawLines(image: Image, s: Samples, pixel_mm: number): void {
  const { width, height } = s;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const sideways = x + 1 < width ? border(s, i, i + 1, pixel_mm) : 0;
      const downwards = y + 1 < height ? border(s, i, i + width, pixel_mm) : 0;
      const strength = Math.max(sideways, downwards);
      if (strength === 0) continue;
      blend(image, i, tones.ink, strength);
      if (sideways >= outline) blend(image, i + 1, tones.ink, sideways);
      if (downwards >= outline) blend(image, i + width, tones.ink, downwards);
    }
  }
}

const outline = 0.7;
const crease = 0.5;

function border(s: Samples, a: number, b: number, pixel_mm: number): number {
  if (s.part[a] !== s.part[b]) return outline;
  if (s.part[a] < 0) return 0;
  if (s.cut[a] !== s.cut[b]) return outline;
  const turn =
    s.normal[a * 3] * s.normal[b * 3] +
    s.normal[a * 3 + 1] * s.normal[b * 3 + 1] +
    s.normal[a * 3 + 2] * s.normal[b * 3 + 2];
  const jump = Math.abs(s.depth[a] - s.depth[b]);
  if (s.face[a] !== s.face[b]) return turn < creaseOfFaces || jump > 12 * pixel_mm ? crease : 0;
  if (s.face[a] < 0 && turn < creaseOfTriangles) return crease;
  return jump > 40 * pixel_mm ? outline : 0;
}
