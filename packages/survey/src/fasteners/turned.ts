/**
 * Turned bodies without a hexagon or a recess, from CAD faces: rods that could be threaded, small domed ones that could
 * be cap nuts, stepped ones that could be screws without a drive. Their shape alone says none of this, so it is weak.
 */
import type { CadFace, Shape } from '@coveline/model';
import { cross, dot, minus } from '../hollows/vector.ts';
import { weldOf } from '../weld/weld.ts';
import { type Around, type Axis, around } from './axis.ts';
import { isDomed } from './dome.ts';
import { drawnWithoutHole } from './hexagon-heads.ts';
import type { LocalFasteners, LocalHead, LocalThread } from './local.ts';
import { roundsAbout } from './rounds.ts';
import { shanksOf } from './shank.ts';

/** Larger ones are not fasteners of a food machine: M64 (common practice). */
const mostRadius_mm = 32;
const mostFaces = 30;
const sameAxis = 1e-3;

export function fromTurned(shape: Shape): LocalFasteners {
  const none: LocalFasteners = { heads: [], threads: [] };
  const { cad } = shape;
  if (!cad || cad.faces.length > mostFaces) return none;
  const cylinders = cad.faces.filter((f) => f.kind === 'cylinder' && f.hollow === false);
  const widest = cylinders.sort((a, b) => b.radius_mm! - a.radius_mm!)[0];
  if (!widest?.axis || widest.radius_mm! > mostRadius_mm) return none;
  const axis: Axis = widest.axis;
  if (!cad.faces.every((face) => isAbout(face, axis))) return none;
  const radius_mm = widest.radius_mm!;
  const near = around(weldOf(shape), axis, radius_mm);
  let [from, to] = [Infinity, -Infinity];
  for (let i = 2; i < near.corners.length; i += 3) {
    from = Math.min(from, near.corners[i]);
    to = Math.max(to, near.corners[i]);
  }
  const common = { ...axis, from, to, radius_mm, by: 'cad', weak: true } as const;
  const domes = ([1, -1] as const).filter((side) => isDomed(near, side, side > 0 ? to : from, radius_mm));
  if (domes.length === 1 && to - from < 3 * radius_mm) {
    const head: LocalHead = {
      ...common,
      kind: 'domedNut',
      diameter_mm: 2 * radius_mm,
      caveats: [drawnWithoutHole],
    };
    return { heads: [head], threads: [] };
  }
  const stepped = steppedOf(near, axis, radius_mm);
  if (stepped) return stepped;
  const isRod = cylinders.length === 1 && domes.length === 0 && cad.faces.every((f) => f.hollow !== true);
  if (!isRod) return none;
  const thread: LocalThread = { ...common, inside: false, caveats: [] };
  return { heads: [], threads: [thread] };
}

/** A head without a drive on a longer stem: a screw, a rivet, or any stepped pin. */
function steppedOf(near: Around, axis: Axis, radius_mm: number): LocalFasteners | undefined {
  const rounds = roundsAbout(near, radius_mm * 1.01, new Set());
  const [wide] = rounds.filter((r) => !r.hollow && r.radius_mm > 0.97 * radius_mm);
  if (!wide || rounds.some((r) => r.hollow)) return undefined;
  const shanks = shanksOf(near, rounds, { from: wide.from, to: wide.to, half_mm: radius_mm });
  if (shanks.length !== 1 || Math.abs(shanks[0].end - shanks[0].at) < wide.to - wide.from) return undefined;
  const [{ at, end, side, radius_mm: stem_mm }] = shanks;
  const common = { ...axis, by: 'cad', weak: true, caveats: [] } as const;
  const domed = isDomed(near, side > 0 ? -1 : 1, side > 0 ? wide.from : wide.to, radius_mm);
  const { from, to } = wide;
  const kind = domed ? 'dome' : 'cylinder';
  return {
    heads: [{ ...common, kind, diameter_mm: 2 * radius_mm, from, to, radius_mm }],
    threads: [
      { ...common, from: Math.min(at, end), to: Math.max(at, end), radius_mm: stem_mm, inside: false },
    ],
  };
}

function isAbout(face: CadFace, axis: Axis): boolean {
  if (face.kind === 'sphere') return true;
  if (face.kind === 'freeform' || !face.axis) return false;
  const turn = cross(face.axis.direction, axis.direction);
  if (dot(turn, turn) > sameAxis ** 2) return false;
  if (face.kind === 'plane') return true;
  const aside = cross(minus(face.axis.origin, axis.origin), axis.direction);
  return dot(aside, aside) < 1e-4;
}
