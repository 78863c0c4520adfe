/** What is seen at each sample of a picture, before any colour: the first surface along every ray. */
import type { Model, Vec3 } from '@coveline/model';
import { firstHit, type Hit, newHit, type Tree } from '@coveline/survey';
import { type Camera, projectionOf } from './camera.ts';
import { cornerNormals } from './normals.ts';
import { dot } from './vector.ts';

type Triple = [number, number, number];

export interface Samples {
  readonly width: number;
  readonly height: number;
  /** Distance behind the plane of the target, mm; Infinity where nothing is seen. */
  readonly depth: Float64Array;
  /** Index of the part, -1 for none. */
  readonly part: Int32Array;
  /** CAD face within the part, -1 where the model has none. */
  readonly face: Int32Array;
  /** xyz of the smooth normal, turned towards the eye. */
  readonly normal: Float32Array;
  /** 1 where material was cut open and its inside is seen. */
  readonly cut: Uint8Array;
}

/**
 * Casts a ray through every other sample of every other row and through those between them where their
 * neighbours see different things; the rest lie on one smooth surface and are interpolated.
 */
export function takeSamples(
  model: Model,
  tree: Tree,
  camera: Camera,
  width: number,
  height: number,
): Samples {
  const samples: Samples = {
    width,
    height,
    depth: new Float64Array(width * height).fill(Infinity),
    part: new Int32Array(width * height).fill(-1),
    face: new Int32Array(width * height).fill(-1),
    normal: new Float32Array(width * height * 3),
    cut: new Uint8Array(width * height),
  };
  const cast = caster(model, tree, camera, samples);
  for (let y = 0; y < height; y += 2) for (let x = 0; x < width; x += 2) cast(x, y);
  for (let y = 0; y < height; y += 2)
    for (let x = 1; x < width; x += 2) if (!between(samples, x, y, 1, 0)) cast(x, y);
  for (let y = 1; y < height; y += 2)
    for (let x = 0; x < width; x++) if (!between(samples, x, y, 0, 1)) cast(x, y);
  return samples;
}

function caster(model: Model, tree: Tree, camera: Camera, out: Samples): (x: number, y: number) => void {
  const { width, height } = out;
  const { axes, scale } = projectionOf(camera, width, height);
  const { right, up, forward } = axes;
  const reach = reachOf(tree, camera);
  const back = camera.cutBefore_mm ?? reach;
  const hit = newHit();
  const behind = newHit();
  const o: Triple = [0, 0, 0];
  const seen: Triple = [0, 0, 0];
  const n: Triple = [0, 0, 0];
  return (x, y) => {
    const across = (x + 0.5 - width / 2) / scale;
    const upwards = (height / 2 - y - 0.5) / scale;
    for (let k = 0; k < 3; k++)
      o[k] = camera.target[k] + right[k] * across + up[k] * upwards - forward[k] * back;
    if (!firstHit(tree, o[0], o[1], o[2], forward[0], forward[1], forward[2], back + reach, hit)) return;
    const i = y * width + x;
    for (let k = 0; k < 3; k++) seen[k] = o[k] + forward[k] * hit.t;
    smoothNormal(model, tree, hit, seen, n);
    out.depth[i] = hit.t - back;
    out.part[i] = hit.part;
    const faces = model.shapes[model.parts[hit.part].shape].cad?.faceOfTriangle;
    out.face[i] = faces ? faces[hit.triangle - tree.start[hit.part]] : -1;
    if (camera.cutBefore_mm !== undefined && startsInside(tree, o, forward, hit, behind)) {
      const material = leavesMaterial(tree, hit.slot, forward) ? hit : behind;
      out.part[i] = material.part;
      out.face[i] = -1;
      out.depth[i] = -back;
      out.cut[i] = 1;
      out.normal.set([-forward[0], -forward[1], -forward[2]], i * 3);
      return;
    }
    const flip = dot(n, forward) > 0 ? -1 : 1;
    out.normal[i * 3] = n[0] * flip;
    out.normal[i * 3 + 1] = n[1] * flip;
    out.normal[i * 3 + 2] = n[2] * flip;
  };
}

/** Far enough from the target to start before and to end behind everything. */
function reachOf({ box }: Tree, { target }: Camera): number {
  const far = (axis: number): number =>
    Math.max(Math.abs(box[axis] - target[axis]), Math.abs(box[axis + 3] - target[axis]));
  return Math.hypot(far(0), far(1), far(2)) + 1;
}

/**
 * Whether a ray starts in material. The way back to the eye is asked too, because where two parts touch the way
 * forward may name the part behind first.
 */
function startsInside(tree: Tree, o: Vec3, d: Vec3, ahead: Hit, behind: Hit): boolean {
  if (leavesMaterial(tree, ahead.slot, d)) return true;
  return (
    firstHit(tree, o[0], o[1], o[2], -d[0], -d[1], -d[2], Infinity, behind) &&
    leavesMaterial(tree, behind.slot, [-d[0], -d[1], -d[2]])
  );
}

/** Whether a ray that starts inside material meets the triangle from behind. */
function leavesMaterial({ corners }: Tree, slot: number, d: readonly [number, number, number]): boolean {
  const c = slot * 9;
  const ux = corners[c + 3] - corners[c];
  const uy = corners[c + 4] - corners[c + 1];
  const uz = corners[c + 5] - corners[c + 2];
  const vx = corners[c + 6] - corners[c];
  const vy = corners[c + 7] - corners[c + 1];
  const vz = corners[c + 8] - corners[c + 2];
  return d[0] * (uy * vz - uz * vy) + d[1] * (uz * vx - ux * vz) + d[2] * (ux * vy - uy * vx) > 0;
}

const w: Triple = [0, 0, 0];

/** Writes the normal at a point of a triangle, blended from its corners, in the frame of the model. */
function smoothNormal(
  model: Model,
  { corners, start }: Tree,
  { part, triangle, slot }: Hit,
  p: Triple,
  out: Triple,
): void {
  const { shape, placement: m } = model.parts[part];
  const normals = cornerNormals(model.shapes[shape]);
  const c = slot * 9;
  const at = (triangle - start[part]) * 9;
  weights(corners, c, p, w);
  const [wa, wb, wc] = w;
  const x = normals[at] * wa + normals[at + 3] * wb + normals[at + 6] * wc;
  const y = normals[at + 1] * wa + normals[at + 4] * wb + normals[at + 7] * wc;
  const z = normals[at + 2] * wa + normals[at + 5] * wb + normals[at + 8] * wc;
  out[0] = m[0] * x + m[4] * y + m[8] * z;
  out[1] = m[1] * x + m[5] * y + m[9] * z;
  out[2] = m[2] * x + m[6] * y + m[10] * z;
  const length = Math.hypot(out[0], out[1], out[2]) || 1;
  out[0] /= length;
  out[1] /= length;
  out[2] /= length;
}

/** Writes the barycentric weights of a point in the plane of a triangle; thirds for a triangle without area. */
function weights(corners: Float64Array, c: number, p: Triple, out: Triple): void {
  const ux = corners[c + 3] - corners[c];
  const uy = corners[c + 4] - corners[c + 1];
  const uz = corners[c + 5] - corners[c + 2];
  const vx = corners[c + 6] - corners[c];
  const vy = corners[c + 7] - corners[c + 1];
  const vz = corners[c + 8] - corners[c + 2];
  const qx = p[0] - corners[c];
  const qy = p[1] - corners[c + 1];
  const qz = p[2] - corners[c + 2];
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;
  const qu = qx * ux + qy * uy + qz * uz;
  const qv = qx * vx + qy * vy + qz * vz;
  const det = uu * vv - uv * uv;
  const b = det > 0 ? (vv * qu - uv * qv) / det : 1 / 3;
  const t = det > 0 ? (uu * qv - uv * qu) / det : 1 / 3;
  out[0] = 1 - b - t;
  out[1] = b;
  out[2] = t;
}

/** Interpolates a sample from its two neighbours along x or y; false when they do not lie on one smooth surface. */
function between(s: Samples, x: number, y: number, stepX: number, stepY: number): boolean {
  if (x + stepX >= s.width || y + stepY >= s.height) return false;
  const a = (y - stepY) * s.width + x - stepX;
  const b = (y + stepY) * s.width + x + stepX;
  if (s.part[a] !== s.part[b] || s.face[a] !== s.face[b] || s.cut[a] !== s.cut[b]) return false;
  if (s.part[a] < 0) return true;
  const alike =
    s.normal[a * 3] * s.normal[b * 3] +
    s.normal[a * 3 + 1] * s.normal[b * 3 + 1] +
    s.normal[a * 3 + 2] * s.normal[b * 3 + 2];
  if (alike < 0.97) return false;
  const i = y * s.width + x;
  s.depth[i] = (s.depth[a] + s.depth[b]) / 2;
  s.part[i] = s.part[a];
  s.face[i] = s.face[a];
  s.cut[i] = s.cut[a];
  for (let k = 0; k < 3; k++) s.normal[i * 3 + k] = (s.normal[a * 3 + k] + s.normal[b * 3 + k]) / 2;
  return true;
}
