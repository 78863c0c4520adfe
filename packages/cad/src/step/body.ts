/** One body: from its text, through the kernel, to a shape. */
import type { Shape } from '@coveline/model';
import type { TopoDS_Shape } from 'replicad-opencascadejs';
import { shapeHash } from '../hash.ts';
import { openEdges, signedVolume } from '../mesh/check.ts';
import type { Kernel } from './kernel.ts';
import { type Tessellation, tessellation, triangulate } from './tessellate.ts';

export interface BodyReading {
  readonly shape?: Shape;
  /** What the kernel lost or had to bend, each a clause to put behind the body's name. */
  readonly losses: readonly string[];
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

/** Throws what the kernel throws; `kernelFailure` tells it in words. */
export function readBody(oc: Kernel, request: BodyRequest): BodyReading {
  const losses: string[] = [];
  oc.FS.writeFile(path, request.text);
  const reader = new oc.STEPControl_Reader();
  try {
    const status = reader.ReadFile(path);
    if (status !== oc.IFSelect_ReturnStatus.IFSelect_RetDone) {
      return { losses: ['the kernel could not parse it'], deviation_mm: 0 };
    }
    const progress = new oc.Message_ProgressRange();
    reader.TransferRoots(progress);
    progress.delete();
    if (reader.NbShapes() === 0) return { losses: ['the kernel made no shape of it'], deviation_mm: 0 };
    const whole = reader.OneShape();
    const shape = shapeFrom(oc, whole, request, losses);
    whole.delete();
    return shape;
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

function shapeFrom(oc: Kernel, whole: TopoDS_Shape, request: BodyRequest, losses: string[]): BodyReading {
  const deviation_mm = Math.max(request.deviation_mm, diagonal(oc, whole) * finestPart);
  let found: Tessellation | undefined;
  let open = 0;
  for (const part of attempts) {
    oc.BRepTools.Clean(whole, true);
    triangulate(oc, whole, deviation_mm * part, request.angle_rad);
    const next = tessellation(oc, whole);
    const nextOpen = openEdges(next.triangles, next.positions.length / 3);
    if (found && nextOpen >= open && next.bareFaces >= found.bareFaces) continue;
    found = next;
    open = nextOpen;
    if (found.bareFaces === 0 && (open === 0 || !request.solid)) break;
  }
  if (!found || found.triangles.length === 0) {
    return { losses: [...losses, 'nothing of it is left'], deviation_mm };
  }
  if (request.solid && open === 0 && signedVolume(found.positions, found.triangles) < 0) {
    losses.push('it was written inside out, so its faces were turned over');
    found = tessellation(oc, whole.Reversed());
  }
  losses.push(...lossesOf(oc, whole, request, found, open));
  const { positions, triangles, cad } = found;
  return {
    shape: { positions, triangles, cad, hash: shapeHash(positions, triangles, cad) },
    losses,
    deviation_mm,
  };
}

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
  if (found.bareFaces > 0) losses.push(`${found.bareFaces} of its faces could not be covered with triangles`);
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
  if (gap > gap_mm) losses.push(`its faces and edges miss each other by up to ${gap.toPrecision(2)} mm`);
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
