import type { Model } from '@coveline/model';
import type { Control } from '../result.ts';
import { step } from '../stopped.ts';
import { boxesMeet, growByTriangle, partBoxes } from '../tree/boxes.ts';
import { partAt } from '../tree/inside.ts';
import { firstAlong, newHit, newRay } from '../tree/ray.ts';
import { following } from '../weld/pair.ts';
import { weldOf } from '../weld/weld.ts';
import { type Eye, look, newSight, open } from './look.ts';
import { mark, newMarks } from './marks.ts';
import type { WallMarks } from './wall-mesh.ts';

/** Where to look closer: triangles (model order) that face or meet something, and the places where they do. */
export interface Seeds {
  readonly candidate: Uint8Array;
  readonly marks: WallMarks;
}

/** More crossings than this on one edge only repeat what is known. */
const mostCrossings = 64;

/** A first look from every triangle, at points `spacing` mm apart on large ones, and along edges that enter other parts. */
export function findSeeds(model: Model, eye: Eye, spacing_mm: number, control: Control): Seeds {
  const { start } = eye.material.tree;
  const seeds: Seeds = {
    candidate: new Uint8Array(start[model.parts.length]),
    marks: { seen: newMarks(spacing_mm), unseen: newMarks(spacing_mm) },
  };
  const boxes = partBoxes(eye.material.tree);
  for (let p = 0; p < model.parts.length; p++) {
    const others: number[] = [];
    for (let o = 0; o < model.parts.length; o++)
      if (o !== p && boxesMeet(boxes, p * 6, boxes, o * 6, 0)) others.push(o);
    if (others.length === 0) continue;
    followEdges(model, eye, p, others, boxes, seeds);
    if (liesInside(eye, p)) eye.sunken[p] = 1;
  }
  for (let p = 0; p < model.parts.length; p++) {
    step(control, 'narrow gaps', (0.5 * p) / model.parts.length);
    lookAround(eye, p, spacing_mm, seeds);
    markNeighbours(model, eye, p, spacing_mm, seeds);
  }
  return seeds;
}

function lookAround(eye: Eye, part: number, spacing_mm: number, { candidate, marks }: Seeds): void {
  const { start } = eye.material.tree;
  const sight = newSight();
  const missed: number[] = [];
  for (let t = start[part]; t < start[part + 1]; t++) {
    missed.length = 0;
    let seen = false;
    spread(eye, t, spacing_mm, (x, y, z, nx, ny, nz) => {
      look(eye, part, t, x, y, z, nx, ny, nz, sight);
      if (sight.state === open) {
        missed.push(x, y, z);
        return;
      }
      seen = true;
      mark(marks.seen, x, y, z);
      if (sight.triangle >= 0) candidate[sight.triangle] = 1;
    });
    if (!seen) continue;
    candidate[t] = 1;
    for (let i = 0; i < missed.length; i += 3) mark(marks.unseen, missed[i], missed[i + 1], missed[i + 2]);
  }
}

/** Marks the points of triangles that see nothing but lie beside some that do. */
function markNeighbours(
  model: Model,
  eye: Eye,
  part: number,
  spacing_mm: number,
  { candidate, marks }: Seeds,
): void {
  const { start } = eye.material.tree;
  const { twin } = weldOf(model.shapes[model.parts[part].shape]);
  const done = new Uint8Array(twin.length / 3);
  for (let h = 0; h < twin.length; h++) {
    const o = twin[h] < 0 ? -1 : (twin[h] / 3) | 0;
    if (o < 0 || done[o] || candidate[start[part] + o] || !candidate[start[part] + ((h / 3) | 0)]) continue;
    done[o] = 1;
    spread(eye, start[part] + o, spacing_mm, (x, y, z) => mark(marks.unseen, x, y, z));
  }
}

/** Points of a triangle, about `spacing` mm apart and at least one, with its normal. */
function spread(
  { material }: Eye,
  t: number,
  spacing_mm: number,
  visit: (x: number, y: number, z: number, nx: number, ny: number, nz: number) => void,
): void {
  const { corners: c, slotOf } = material.tree;
  const i = slotOf[t] * 9;
  const ux = c[i + 3] - c[i];
  const uy = c[i + 4] - c[i + 1];
  const uz = c[i + 5] - c[i + 2];
  const vx = c[i + 6] - c[i];
  const vy = c[i + 7] - c[i + 1];
  const vz = c[i + 8] - c[i + 2];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const twice = Math.sqrt(nx * nx + ny * ny + nz * nz);
  if (twice === 0) return;
  const count = 1 + Math.floor(twice / (2 * spacing_mm * spacing_mm));
  for (let k = 0; k < count; k++) {
    let a = 1 / 3;
    let b = 1 / 3;
    if (count > 1) {
      // Evenly, by the additive recurrence of the plastic number.
      a = (0.5 + k * 0.7548776662466927) % 1;
      b = (0.5 + k * 0.5698402909980532) % 1;
      if (a + b > 1) {
        a = 1 - a;
        b = 1 - b;
      }
    }
    const x = c[i] + a * ux + b * vx;
    const y = c[i + 1] + a * uy + b * vy;
    const z = c[i + 2] + a * uz + b * vz;
    visit(x, y, z, nx / twice, ny / twice, nz / twice);
  }
}

/** Whether a part that no edge crosses lies in another's material as a whole, by its first corner. */
function liesInside({ material }: Eye, part: number): boolean {
  const { corners, slotOf, start } = material.tree;
  if (start[part] === start[part + 1]) return false;
  const i = slotOf[start[part]] * 9;
  const holder = partAt(material, corners[i], corners[i + 1], corners[i + 2]);
  return holder >= 0 && holder !== part;
}

const box = new Float64Array(6);

/** Edges that pass through another part's surface: there the two surfaces meet at an angle. */
function followEdges(
  model: Model,
  eye: Eye,
  part: number,
  others: readonly number[],
  boxes: Float64Array,
  { candidate, marks }: Seeds,
): void {
  const { tree } = eye.material;
  const { corners: c, slotOf, start } = tree;
  const { twin } = weldOf(model.shapes[model.parts[part].shape]);
  const ray = newRay();
  const hit = newHit();
  ray.skipPart = part;
  ray.skipUntil = Infinity;
  for (let t = 0; 3 * t < twin.length; t++) {
    box.fill(Infinity, 0, 3).fill(-Infinity, 3, 6);
    const slot = slotOf[start[part] + t];
    growByTriangle(box, 0, c, slot);
    if (!others.some((o) => boxesMeet(box, 0, boxes, o * 6, 0))) continue;
    for (let h = 3 * t; h < 3 * t + 3; h++) {
      if (twin[h] > h) continue;
      const a = slot * 9 + 3 * (h % 3);
      const b = slot * 9 + 3 * (following(h) % 3);
      ray.ox = c[a];
      ray.oy = c[a + 1];
      ray.oz = c[a + 2];
      ray.dx = c[b] - c[a];
      ray.dy = c[b + 1] - c[a + 1];
      ray.dz = c[b + 2] - c[a + 2];
      ray.tMin = 0;
      ray.tMax = 1;
      for (let n = 0; n < mostCrossings && firstAlong(tree, ray, hit); n++) {
        ray.tMin = hit.t;
        eye.sunken[part] = 1;
        eye.sunken[hit.part] = 1;
        const beyond = twin[h] < 0 ? t : (twin[h] / 3) | 0;
        for (const crossed of [start[part] + t, start[part] + beyond, hit.triangle]) {
          candidate[crossed] = 1;
          eye.crossed[crossed] = 1;
        }
        // Two surfaces that cross part what is seen from what is not.
        mark(marks.unseen, ray.ox + hit.t * ray.dx, ray.oy + hit.t * ray.dy, ray.oz + hit.t * ray.dz);
        mark(marks.seen, ray.ox + hit.t * ray.dx, ray.oy + hit.t * ray.dy, ray.oz + hit.t * ray.dz);
      }
    }
  }
}
