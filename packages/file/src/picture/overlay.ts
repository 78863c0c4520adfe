/** Surfaces and lines that a measure drew, laid over what is seen where nothing hides them. */
import type { Camera, Projection } from './camera.ts';
import { blend, type Image } from './image.ts';
import { mix, type Rgb, tones } from './palette.ts';
import type { Samples } from './samples.ts';

/**
 * Lays free triangles (xyz per corner, mm) over an image of the size of the samples. A surface that coincides with a
 * wall wins over it.
 */
export function layTriangles(
  image: Image,
  s: Samples,
  { toPixel }: Projection,
  camera: Camera,
  triangles: Float32Array,
  tone: Rgb,
): void {
  const { width, height } = s;
  const pixel = camera.span_mm / width;
  const tolerance = Math.max(0.3, 2 * pixel);
  const nearest = -(camera.cutBefore_mm ?? Infinity);
  const covered = new Uint8Array(width * height);
  for (let t = 0; t + 8 < triangles.length; t += 9) {
    const a = toPixel([triangles[t], triangles[t + 1], triangles[t + 2]]);
    const b = toPixel([triangles[t + 3], triangles[t + 4], triangles[t + 5]]);
    const c = toPixel([triangles[t + 6], triangles[t + 7], triangles[t + 8]]);
    const area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    if (!(Math.abs(area) > 1e-12)) continue;
    const fromX = Math.max(0, Math.floor(Math.min(a[0], b[0], c[0])));
    const toX = Math.min(width - 1, Math.ceil(Math.max(a[0], b[0], c[0])));
    const fromY = Math.max(0, Math.floor(Math.min(a[1], b[1], c[1])));
    const toY = Math.min(height - 1, Math.ceil(Math.max(a[1], b[1], c[1])));
    for (let y = fromY; y <= toY; y++) {
      for (let x = fromX; x <= toX; x++) {
        const px = x + 0.5;
        const py = y + 0.5;
        const u = ((b[0] - px) * (c[1] - py) - (b[1] - py) * (c[0] - px)) / area;
        const v = ((c[0] - px) * (a[1] - py) - (c[1] - py) * (a[0] - px)) / area;
        const w = 1 - u - v;
        if (u < -1e-9 || v < -1e-9 || w < -1e-9) continue;
        const depth = u * a[2] + v * b[2] + w * c[2];
        const i = y * width + x;
        if (depth > nearest && depth < s.depth[i] + tolerance) covered[i] = 1;
      }
    }
  }
  paintCovered(image, covered, tone);
}

function paintCovered(image: Image, covered: Uint8Array, tone: Rgb): void {
  const { width, height } = image;
  const rim = mix(tone, tones.ink, 0.35);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      if (!covered[i]) continue;
      const inside =
        x > 1 && x < width - 2 && y > 1 && y < height - 2
          ? covered[i - 2] & covered[i + 2] & covered[i - 2 * width] & covered[i + 2 * width]
          : 1;
      blend(image, i, inside ? tone : rim, inside ? 0.62 : 0.9);
    }
  }
}

/**
 * Strokes lines (xyz per point, mm) into the finished image; where something hides them they are only hinted at.
 * The samples may be finer than the image.
 */
export function strokeLines(
  image: Image,
  s: Samples,
  { toPixel }: Projection,
  camera: Camera,
  lines: readonly Float32Array[],
  tone: Rgb,
): void {
  const seen = new Float32Array(image.width * image.height);
  const hidden = new Float32Array(image.width * image.height);
  const factor = s.width / image.width;
  const tolerance = Math.max(0.5, (3 * camera.span_mm) / image.width);
  const nearest = -(camera.cutBefore_mm ?? Infinity) - tolerance;
  for (const line of lines) {
    for (let i = 3; i + 2 < line.length; i += 3) {
      const a = toPixel([line[i - 3], line[i - 2], line[i - 1]]);
      const b = toPixel([line[i], line[i + 1], line[i + 2]]);
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      const steps = Math.min(4000, Math.max(1, Math.ceil(length)));
      for (let k = 0; k <= steps; k++) {
        const f = k / steps;
        const x = a[0] + (b[0] - a[0]) * f;
        const y = a[1] + (b[1] - a[1]) * f;
        const depth = a[2] + (b[2] - a[2]) * f;
        if (!(x >= 0 && y >= 0 && x < image.width && y < image.height) || depth < nearest) continue;
        const sample = Math.floor(y * factor) * s.width + Math.floor(x * factor);
        if (depth <= s.depth[sample] + tolerance) stamp(seen, image, x, y, 1.5);
        else if (k % 6 < 3) stamp(hidden, image, x, y, 0.7);
      }
    }
  }
  for (let i = 0; i < seen.length; i++) {
    if (hidden[i] > 0) blend(image, i, tone, hidden[i] * 0.55);
    if (seen[i] > 0) blend(image, i, tone, seen[i]);
  }
}

/** Raises coverage to that of a disc with the given radius in pixels. */
function stamp(mask: Float32Array, { width, height }: Image, x: number, y: number, radius: number): void {
  const reach = Math.ceil(radius + 1);
  const [cx, cy] = [Math.floor(x), Math.floor(y)];
  for (let py = Math.max(0, cy - reach); py <= Math.min(height - 1, cy + reach); py++) {
    for (let px = Math.max(0, cx - reach); px <= Math.min(width - 1, cx + reach); px++) {
      const cover = radius + 0.5 - Math.hypot(px + 0.5 - x, py + 0.5 - y);
      const i = py * width + px;
      if (cover > mask[i]) mask[i] = Math.min(1, cover);
    }
  }
}
