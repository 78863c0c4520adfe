import type { TopoDS_Face, TopoDS_Shape } from 'replicad-opencascadejs';
import type { Kernel } from './kernel.ts';

/**
 * Hands over the faces of a shape, each once whatever its orientation (a face between two solids is met twice), in the
 * order that numbers them in `CadTopology`. They are released when `use` returns.
 */
export function withFaces<T>(oc: Kernel, shape: TopoDS_Shape, use: (faces: readonly TopoDS_Face[]) => T): T {
  const { TopAbs_FACE, TopAbs_SHAPE } = oc.TopAbs_ShapeEnum;
  const faces: TopoDS_Face[] = [];
  const byHash = new Map<number, TopoDS_Face[]>();
  const walk = new oc.TopExp_Explorer(shape, TopAbs_FACE, TopAbs_SHAPE);
  for (; walk.More(); walk.Next()) {
    const face = oc.TopoDS.Face(walk.Current());
    const key = oc.ReplicadShapeHasher.HashCode(face, 2_147_483_647);
    const alike = byHash.get(key) ?? [];
    if (alike.some((other) => other.IsSame(face))) {
      face.delete();
      continue;
    }
    byHash.set(key, [...alike, face]);
    faces.push(face);
  }
  walk.delete();
  try {
    return use(faces);
  } finally {
    for (const face of faces) face.delete();
  }
}
