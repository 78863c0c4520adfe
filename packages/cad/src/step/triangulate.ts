/** Lays triangles on a kernel shape: one deviation for all of it, a finer one where it is asked for. */
import type { TopoDS_Face, TopoDS_Shape } from 'replicad-opencascadejs';
import type { Kernel } from './kernel.ts';
import { withFaces } from './withFaces.ts';

/**
 * Meshes the shape in place, from nothing. `deviation_mm`: largest distance of a triangle from its face; `angle_rad`:
 * between neighbours; `finer`: deviation of single faces by number, mm.
 *
 * The kernel keeps triangles that are finer than what it is asked for, and takes over the points of an edge from the
 * face that has them. So the single faces come first, the finest of them before the others, and the whole shape last:
 * every edge is cut once, as its finest face needs it, and the mesh stays closed.
 */
export function triangulate(
  oc: Kernel,
  shape: TopoDS_Shape,
  deviation_mm: number,
  angle_rad: number,
  finer: ReadonlyMap<number, number> = new Map(),
): void {
  oc.BRepTools.Clean(shape, true);
  if (finer.size > 0) {
    const finestFirst = [...finer].sort(([, a], [, b]) => a - b);
    withFaces(oc, shape, (faces) => {
      for (const [number, own] of finestFirst) mesh(oc, faces[number], own, angle_rad);
    });
  }
  mesh(oc, shape, deviation_mm, angle_rad);
}

function mesh(oc: Kernel, shape: TopoDS_Shape | TopoDS_Face, deviation_mm: number, angle_rad: number): void {
  new oc.BRepMesh_IncrementalMesh(shape, deviation_mm, false, angle_rad, false).delete();
}
