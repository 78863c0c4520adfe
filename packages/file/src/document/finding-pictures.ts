/** Two pictures of a finding: its place from near, and where on the machine that is. */
import type { Vec3 } from '@coveline/model';
import type { Finding } from '@coveline/review';
import type { Drawing, Place } from '@coveline/survey';
import { projectionOf } from '../picture/camera.ts';
import { copyImage, toPng } from '../picture/image.ts';
import { viewOfPlace } from '../picture/place-view.ts';
import { renderImage } from '../picture/render.ts';
import { drawDot } from '../picture/sign.ts';
import type { Scene } from './scene.ts';
import { signOf } from './words.ts';

export interface FindingPictures {
  readonly close: Uint8Array;
  readonly overview: Uint8Array;
  readonly cutOpen: boolean;
  /** How many of the finding's places the close-up frames. */
  readonly shown: number;
}

const closeSize = [560, 400] as const;
/** Places that lie further apart than this are not shown in one close-up: the gravest is. */
const oneView_mm = 420;
/** Points on a place that are tried for being in sight. */
const mostPoints = 24;

export function drawFinding(scene: Scene, finding: Finding): FindingPictures {
  const places = finding.places.flatMap((id) => scene.places.get(id) ?? []);
  const framed = placesInView(places);
  const drawings = places.flatMap((place) => scene.outcome.drawings.get(place.id) ?? []);
  const bounds = framed.length > 0 ? boundsOf(framed) : finding.bounds_mm;
  const at: Vec3 = framed[0]?.at_mm ?? finding.at_mm;
  const highlighted = new Set(partsOf(scene, finding.parts));
  // A hollow is seen by nobody: the body that encloses it is shown.
  const asBody = framed.length === 0 || isClosedHollow(scene, framed[0]);
  const points = asBody
    ? partsOf(scene, framed[0]?.parts ?? finding.parts).flatMap((part) => surfacePoints(scene, part))
    : framed.flatMap((place) => pointsOf(scene.outcome.drawings.get(place.id), place.at_mm));
  const enough = asBody ? 0.15 : 0.45;
  const camera = viewOfPlace(
    scene.tree,
    { bounds_mm: bounds, points: thinned(points, at), enough },
    closeSize,
  );
  const sign = signOf(finding.measure);
  const close = renderImage(scene.model, scene.tree, {
    camera,
    size: closeSize,
    highlighted,
    marks: [{ sign, at_mm: markAt(points, at), drawings }],
  });
  const whole = camera.direction[1] >= 0 ? scene.front : scene.back;
  const overview = copyImage(whole.image);
  const [x, y] = projectionOf(whole.camera, overview.width, overview.height).toPixel(at);
  drawDot(overview, sign, x, y, 6);
  return {
    close: toPng(close),
    overview: toPng(overview),
    cutOpen: camera.cutBefore_mm !== undefined,
    shown: framed.length,
  };
}

/** The first place, and those that fit into one view with it, in their order. */
function placesInView(places: readonly Place[]): readonly Place[] {
  const framed: Place[] = [];
  for (const place of places) {
    if (framed.length === 0 || diagonal(boundsOf([...framed, place])) <= oneView_mm) framed.push(place);
  }
  return framed;
}

function boundsOf(places: readonly Place[]): readonly [Vec3, Vec3] {
  const edge = (side: 0 | 1, axis: number): number =>
    (side === 0 ? Math.min : Math.max)(...places.map((p) => p.bounds_mm[side][axis]));
  return [
    [edge(0, 0), edge(0, 1), edge(0, 2)],
    [edge(1, 0), edge(1, 1), edge(1, 2)],
  ];
}

function diagonal([low, high]: readonly [Vec3, Vec3]): number {
  return Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
}

/** Middles of the triangles and points of the lines that a measure drew. */
function pointsOf(drawing: Drawing | undefined, otherwise: Vec3): Vec3[] {
  const points: Vec3[] = [];
  const t = drawing?.triangles ?? new Float32Array(0);
  for (let i = 0; i + 8 < t.length; i += 9)
    points.push([
      (t[i] + t[i + 3] + t[i + 6]) / 3,
      (t[i + 1] + t[i + 4] + t[i + 7]) / 3,
      (t[i + 2] + t[i + 5] + t[i + 8]) / 3,
    ]);
  for (const line of drawing?.lines ?? [])
    for (let i = 3; i + 2 < line.length; i += 3)
      points.push([
        (line[i - 3] + line[i]) / 2,
        (line[i - 2] + line[i + 1]) / 2,
        (line[i - 1] + line[i + 2]) / 2,
      ]);
  return points.length > 0 ? points : [otherwise];
}

function partsOf({ partIndex }: Scene, ids: readonly string[]): number[] {
  return ids.flatMap((id) => partIndex.get(id) ?? []);
}

function isClosedHollow({ outcome }: Scene, { id }: Place): boolean {
  return outcome.result.measures.hollows?.closed.some((hollow) => hollow.id === id) ?? false;
}

/** Middles of some of a part's triangles. */
function surfacePoints({ tree }: Scene, part: number): Vec3[] {
  const points: Vec3[] = [];
  const [from, to] = [tree.start[part], tree.start[part + 1]];
  const step = Math.max(1, Math.ceil((to - from) / mostPoints));
  for (let t = from; t < to; t += step) {
    const c = tree.slotOf[t] * 9;
    const middle = (axis: number): number =>
      (tree.corners[c + axis] + tree.corners[c + 3 + axis] + tree.corners[c + 6 + axis]) / 3;
    points.push([middle(0), middle(1), middle(2)]);
  }
  return points;
}

function thinned(points: readonly Vec3[], otherwise: Vec3): readonly Vec3[] {
  if (points.length === 0) return [otherwise];
  const step = Math.max(1, Math.ceil(points.length / mostPoints));
  return points.filter((_, i) => i % step === 0);
}

/** The point of the place that is nearest to its middle: a middle may lie in the air. */
function markAt(points: readonly Vec3[], middle: Vec3): Vec3 {
  let best = middle;
  let least = Infinity;
  for (const p of points) {
    const d = Math.hypot(p[0] - middle[0], p[1] - middle[1], p[2] - middle[2]);
    if (d < least) {
      least = d;
      best = p;
    }
  }
  return best;
}
