export type {
  CadEdge,
  CadFace,
  CadTopology,
  EdgeTurn,
  FaceKind,
  LengthUnit,
  Model,
  ModelNote,
  Part,
  Placement,
  Shape,
  Vec3,
} from './model.ts';
export { decodeModel, encodeModel } from './pack.ts';
export {
  type FloatsAt,
  floatsBegin,
  floatsPrelude,
  packFloats,
  unpackFloats,
  withFloats,
} from './pack-floats.ts';
export { bounds, orient, placedPositions, transformPoint, triangleCount, type UpAxis } from './place.ts';
