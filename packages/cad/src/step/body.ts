/** One body: from its text, through the kernel, to a shape. */
import type { Shape } from '@coveline/model';
import type { TopoDS_Shape } from 'replicad-opencascadejs';
import { shapeHash } from '../hash.ts';
import { openEdges, signedVolume } from '../mesh/check.ts';
import { finerFaces } from './finerFaces.ts';
import type { Kernel } from './kernel.ts';
import { type Tessellation, tessellation } from './tessellate.ts';
import { triangulate } from './triangulate.ts';

export interface BodyReading {
  readonly shape?: Shape;
  /** What the kernel lost or had to bend, each a clause to put behind the body's name. */
  readonly losses: readonly string[];
  /** Repairs too small to matter, in the same form. */
  readonly remarks: readonly string[];
  /** Deviation that was asked of the kernel for this body, mm. */
  readonly deviation_mm: number;
}

export interface BodyRequest {
  readonly text: Uint8Array;
  readonly solid: boolean;
  /** Faces that the text gives the body. */
  readonly faces: number;
  readonly deviation_mm: number;
  readonly angle_rad: number;
}

const path = '/body.step';

/**
 * A deviation finer than this part of the body's diagonal is not asked for: a 10 m frame gets 0.2 mm, where 0.1 mm
 * would double its triangles for nothing that a survey can see.
 */
const finestPart = 2e-5;
/** Faces and edges that miss each other by more than this are told, mm. Sound exports stay far under it. */
const gap_mm = 0.05;
/** Holes with less area than this are slivers that the mesher overlooked, mm². */
const sliver_mm2 = 0.1;

/** Throws what the kernel throws; `kernelFailure` tells it in words. */
export function readBody(oc: Kernel, request: BodyRequest): BodyReading {
  oc.FS.writeFile(path, request.text);
  const reader = new oc.STEPControl_Reader();
  try {
    const status = reader.ReadFile(path);
    if (status !== oc.IFSelect_ReturnStatus.IFSelect_RetDone) {
      return failed('the kernel could not parse it');
    }
    const progress = new oc.Message_ProgressRange();
    reader.TransferRoots(progress);
    progress.delete();
    if (reader.NbShapes() === 0) return failed('the kernel made no shape of it');
    const whole = reader.OneShape();
    const reading = shapeFrom(oc, whole, request);
    whole.delete();
    return reading;
  } finally {
    reader.delete();
    oc.FS.unlink(path);
  }
}

/**
 * Now and then the kernel's mesher leaves a face bare because its outline, drawn in straight pieces, crosses itself.
 * Finer pieces cure most of these, so the body is tried again as a whole with this part of the deviation.
 */
const attempts = [1, 0.3, 0.1];

function shapeFrom(oc: Kernel, whole: TopoDS_Shape, request: BodyRequest): BodyReading {
  const losses: string[] = [];
  const deviation_mm = Math.max(request.deviation_mm, diagonal(oc, whole) * finestPart);
  let found: Tessellation | undefined;
  let finer: ReadonlyMap<number, number> = new Map();
  for (const part of attempts) {
    const own_mm = deviation_mm * part;
    triangulate(oc, whole, own_mm, request.angle_rad);
    const next = tessellation(oc, whole, request.solid);
    if (found && bareness(next) >= bareness(found)) continue;
    found = next;
    finer = finerFaces(next, own_mm);
    if (finer.size > 0) {
      triangulate(oc, whole, own_mm, request.angle_rad, finer);
      const close = tessellation(oc, whole, request.solid, finer);
      if (bareness(close) <= bareness(found)) found = close;
      else finer = new Map();
    }
    if (found.bareFaces === 0 && found.filled.holes === 0) break;
  }
  if (!found || found.triangles.length === 0) {
    return failed('nothing of it is left');
  }
  const open = openEdges(found.triangles, found.positions.length / 3);
  if (request.solid && open === 0 && signedVolume(found.positions, found.triangles) < 0) {
    losses.push('it was written inside out, so its faces were turned over');
    found = tessellation(oc, whole.Reversed(), request.solid, finer);
  }
  losses.push(...lossesOf(oc, whole, request, found, open));
  const { positions, triangles, cad, filled } = found;
  const repair = `the mesher left ${filled.holes} ${filled.holes === 1 ? 'hole' : 'holes'} in it, closed here with ${rounded(filled.area_mm2)} mm² of flat triangles (widest ${rounded(filled.widest_mm)} mm)`;
  const remarks: string[] = [];
  if (filled.holes > 0) (filled.area_mm2 < sliver_mm2 ? remarks : losses).push(repair);
  return {
    shape: { positions, triangles, cad, hash: shapeHash(positions, triangles, cad) },
    losses,
    remarks,
    deviation_mm,
  };
}

/** How much a tessellation leaves out: what had to be filled, mm², and the faces that it could not cover. */
const bareness = ({ filled, bareFaces }: Tessellation): number => filled.area_mm2 + bareFaces;

const failed = (why: string): BodyReading => ({ losses: [why], remarks: [], deviation_mm: 0 });

const rounded = (x: number) => Number(x.toPrecision(2));

function lossesOf(
  oc: Kernel,
  whole: TopoDS_Shape,
  request: BodyRequest,
  found: Tessellation,
  open: number,
): string[] {
  const losses: string[] = [];
  const faces = found.cad.faces.length;
  if (faces < request.faces) losses.push(`${request.faces - faces} of its ${request.faces} faces are lost`);
  if (found.bareFaces > 0 && found.filled.holes === 0) {
    losses.push(`${found.bareFaces} of its faces could not be covered with triangles`);
  }
  if (request.solid && open > 0) {
    losses.push(`its surface does not close: ${open} edges of the triangle mesh have no neighbour`);
  }
  if (!request.solid) {
    const free = found.cad.edges.filter((edge) => edge.turn === 'open').length;
    losses.push(
      `it is a surface without thickness${free > 0 ? ` and with ${free} free edges` : ''}, so what is inside is a guess`,
    );
  }
  const gap = oc.BRep_Tool.MaxTolerance(whole, oc.TopAbs_ShapeEnum.TopAbs_VERTEX);
  if (gap > diagonal(oc, whole)) losses.push('its faces and edges miss each other by more than its own size');
  else if (gap > gap_mm) losses.push(`its faces and edges miss each other by up to ${rounded(gap)} mm`);
  return losses;
}

function diagonal(oc: Kernel, shape: TopoDS_Shape): number {
  const box = new oc.Bnd_Box();
  oc.BRepBndLib.Add(shape, box, false);
  if (box.IsVoid()) return 0;
  const low = box.CornerMin();
  const high = box.CornerMax();
  const out = Math.hypot(high.X() - low.X(), high.Y() - low.Y(), high.Z() - low.Z());
  for (const used of [low, high, box]) used.delete();
  return out;
}
